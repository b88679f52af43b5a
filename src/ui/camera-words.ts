/** The camera's state in words. */
import type { CameraState } from '../gesture/camera.ts';
import type { Trouble } from '../gesture/gesture.ts';

/** What keeps gestures from being seen, and the mend. */
export const TROUBLE_WORDS: Readonly<Record<Trouble, string>> = {
  covered: 'The lens is covered: no gesture is seen until it is free.',
  black: 'The picture is black: give it light, or open the lens.',
  frozen: 'The picture stands still: no gesture is seen until it moves again.',
  slow: 'Too few pictures a second for a nod. Give it more light, or close other programs.',
};

export function cameraWords(state: CameraState): string {
  switch (state.kind) {
    case 'off':
      return '○ Camera off';
    case 'opening':
      return '… Camera: allow it where the browser asks';
    case 'watching':
      return state.trouble === null ? '● Camera watches' : `◐ ${TROUBLE_WORDS[state.trouble]}`;
    case 'failed':
      return `✕ ${state.failure.sentence}`;
  }
}
