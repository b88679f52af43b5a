import { Show, type JSX } from 'solid-js';
import type { CameraState } from '../../gesture/camera.ts';
import { cameraWords } from '../camera-words.ts';

/** The camera's state beside the microphone's, and its switch. It is off until somebody turns it on. */
export function CameraStrip(props: {
  readonly state: CameraState;
  readonly onStart: () => void;
  readonly onStop: () => void;
}): JSX.Element {
  const isOn = (): boolean => props.state.kind === 'watching' || props.state.kind === 'opening';
  return (
    <div class={`camera ${props.state.kind}`}>
      <span class="eye" role="status">
        {cameraWords(props.state)}
      </span>
      <Show
        when={isOn()}
        fallback={
          <button type="button" onClick={() => props.onStart()}>
            Turn the camera on
          </button>
        }
      >
        <button type="button" onClick={() => props.onStop()}>
          Turn the camera off
        </button>
      </Show>
      <Show when={isOn()}>
        <span class="why">
          Nod: affirm. Shake: negative. Wave right: next, left: back. Cover the lens: stand by. No picture is kept.
        </span>
      </Show>
    </div>
  );
}
