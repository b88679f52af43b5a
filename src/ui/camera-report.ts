import type { CameraFailureCode } from '../gesture/camera-failures.ts';
import type { CameraState } from '../gesture/camera.ts';

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
      say('The camera sees again.');
      return;
    }
    const tell = (): void => {
      told = trouble;
      say(`${trouble} Go on by voice, touch or keys.`);
    };
    // A question that was answered with no is answered at once; the rest may mend itself.
    if (state.kind === 'failed' && state.failure.code === 'camera refused') tell();
    else timer = setTimeout(tell, PATIENCE_MS);
  };
}

const SAID: Readonly<Record<CameraFailureCode, string>> = {
  'page not secure': 'The camera cannot be used here.',
  'camera refused': 'The camera was refused.',
  'camera absent': 'There is no camera.',
  'camera busy': 'The camera cannot be opened.',
  'camera lost': 'The camera is lost.',
  'camera silent': 'The camera sends no pictures.',
  'watching stopped': 'Watching has stopped.',
  'watching unable': 'Gestures cannot be watched here.',
};

function troubleOf(state: Extract<CameraState, { kind: 'watching' | 'failed' }>): string | null {
  if (state.kind === 'failed') return SAID[state.failure.code];
  switch (state.trouble) {
    case null:
      return null;
    case 'covered':
      return 'The camera is covered.';
    case 'black':
      return 'The camera sees only black.';
    case 'frozen':
      return 'The camera’s picture stands still.';
    case 'slow':
      return 'The camera is too slow for gestures.';
  }
}
