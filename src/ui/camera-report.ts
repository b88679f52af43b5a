import type { CameraState } from '../gesture/camera.ts';
import { cameraReport } from '../words/camera-report.ts';

/** A hand before the lens is often gone by then; the screen shows it meanwhile. */
const PATIENCE_MS = 3_000;

/**
 * Says that a camera that was asked for sees no gestures, and that it sees again: who nods has no eye on the screen.
 * @param say is given each text once
 */
export function createCameraReport(say: (text: string) => void): (state: CameraState) => void {
  let told: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  return (state) => {
    clearTimeout(timer);
    if (state.kind === 'off') told = null;
    if (state.kind === 'off' || state.kind === 'opening') return;
    const trouble = troubleOf(state);
    if (trouble === told) return;
    if (trouble === null) {
      told = null;
      say(cameraReport.seesAgain);
      return;
    }
    const tell = (): void => {
      told = trouble;
      say(cameraReport.goOnOtherwise(trouble));
    };
    // A question that was answered with no is answered at once; the rest may mend itself.
    if (state.kind === 'failed' && state.failure.code === 'camera refused') tell();
    else timer = setTimeout(tell, PATIENCE_MS);
  };
}

function troubleOf(state: Extract<CameraState, { kind: 'watching' | 'failed' }>): string | null {
  if (state.kind === 'failed') return cameraReport.failed[state.failure.code];
  return state.trouble === null ? null : cameraReport.trouble[state.trouble];
}
