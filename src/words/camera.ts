/** The camera: its state, its switch, and what keeps gestures from being seen or taken. */
import { said } from './said.ts';

type Gesture = 'nod' | 'shake' | 'wave right' | 'wave left' | 'cover';

export const camera = said('camera', {
  trouble: {
    covered: 'The lens is covered: no gesture is seen until it is free.',
    black: 'The picture is black: give it light, or open the lens.',
    frozen: 'The picture stands still: no gesture is seen until it moves again.',
    slow: 'Too few pictures a second: only a covered lens is seen. Give it more light, or close other programs.',
  },
  off: '○ Camera off',
  opening: '… Camera: allow it where the browser asks',
  watching: '● Camera watches',
  troubled: (trouble: string) => `◐ ${trouble}`,
  failed: (sentence: string) => `✕ ${sentence}`,
  turnOn: 'Turn the camera on',
  turnOff: 'Turn the camera off',
  whatGesturesMean:
    'Nod: affirm. Shake: negative. Wave right: next, left: back. Cover the lens: stand by. No picture is kept.',
  /** @param what the meaning that the gesture would have had */
  notSure: (what: string) => `Not sure: ${what}? Once more, or say it.`,
  count: 'count',
  /** Whether the first wave before a camera was seen as it was made. */
  sides: {
    isSo: {
      'wave right': 'Seen: a wave to your right. Affirm or negative?',
      'wave left': 'Seen: a wave to your left. Affirm or negative?',
    },
    known: 'Left and right are known. Wave again.',
    changedOver: 'The picture is turned upside down. Wave again.',
  },
  notEnough: (gesture: Gesture) => `Say it, or tap: a ${gesture} is not enough here.`,
});
