/** The camera's state in words. */
import type { CameraState } from '../gesture/camera.ts';
import { camera } from '../words/camera.ts';

export function cameraWords(state: CameraState): string {
  switch (state.kind) {
    case 'off':
      return camera.off;
    case 'opening':
      return camera.opening;
    case 'watching':
      return state.trouble === null ? camera.watching : camera.troubled(camera.trouble[state.trouble]);
    case 'failed':
      return camera.failed(state.failure.sentence);
  }
}
