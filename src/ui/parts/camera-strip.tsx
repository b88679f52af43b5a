import { Show, type JSX } from 'solid-js';
import type { CameraState } from '../../gesture/camera.ts';
import { camera } from '../../words/camera.ts';
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
            {camera.turnOn}
          </button>
        }
      >
        <button type="button" onClick={() => props.onStop()}>
          {camera.turnOff}
        </button>
      </Show>
      <Show when={isOn()}>
        <span class="why">{camera.whatGesturesMean}</span>
      </Show>
    </div>
  );
}
