import type { Signal } from '../gesture/bindings.ts';
import type { Touched } from '../gesture/touch.ts';

/** Less sure than this, a touch is shown and not taken: it is as near to meaning something else. */
export const LEAST_SURE = 0.15;

/**
 * What a touch on the two halves asks for: left goes back, right goes on, and a swipe goes where it points. Null where it
 * is none, not sure, or across the middle for all one can tell.
 * @param width of the pad, in millimetres
 */
export function signalOfTouch(touched: Touched, width: number): Signal | null {
  if (touched.kind === 'rejected' || touched.sureness < LEAST_SURE) return null;
  if (touched.kind === 'swipe left') return 'backward';
  if (touched.kind === 'swipe right') return 'forward';
  // Whoever hits the middle means neither half.
  if (Math.abs(touched.x - width / 2) < MIDDLE) return null;
  const isLeft = touched.x < width / 2;
  if (touched.kind === 'long press') return isLeft ? 'say again' : 'stand by';
  return isLeft ? 'backward' : 'forward';
}

/** Half of the strip between the halves, in millimetres. */
const MIDDLE = 3;
