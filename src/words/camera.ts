/** The camera: its state, and what keeps gestures from being seen. */
import { said } from './said.ts';

export const camera = said('camera', {
  trouble: {
    covered: 'The lens is covered: no gesture is seen until it is free.',
    black: 'The picture is black: give it light, or open the lens.',
    frozen: 'The picture stands still: no gesture is seen until it moves again.',
    slow: 'Too few pictures a second for a nod. Give it more light, or close other programs.',
  },
  off: '○ Camera off',
  opening: '… Camera: allow it where the browser asks',
  watching: '● Camera watches',
  troubled: (trouble: string) => `◐ ${trouble}`,
  failed: (sentence: string) => `✕ ${sentence}`,
});
