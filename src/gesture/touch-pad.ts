import { afterTouch, type Touch, type Touched, type TouchInput } from './touch.ts';
import type { TouchThresholds } from './touch-thresholds.ts';

/**
 * Takes every contact on an element for the touches of a glove, but not those on a button in it. Nothing scrolls or zooms under them, and no click follows.
 * @param pixelsPerMm CSS pixels to a millimetre of this screen
 * @returns a function that stops listening
 */
export function watchTouch(
  pad: HTMLElement,
  bounds: TouchThresholds,
  pixelsPerMm: number,
  listener: (touched: Touched) => void,
): () => void {
  let touch: Touch = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listening = new AbortController();

  function take(input: TouchInput): void {
    const after = afterTouch(touch, input, bounds);
    touch = after.touch;
    clearTimeout(timer);
    if (after.wakeAt !== null)
      timer = setTimeout(
        () => take({ kind: 'time', at: performance.now() }),
        Math.max(0, after.wakeAt - performance.now()) + 1,
      );
    for (const touched of after.done) listener(touched);
  }

  const placed =
    (kind: 'down' | 'move') =>
    (event: PointerEvent): void => {
      // A pointer that only hovers touches nothing.
      if (kind === 'move' && event.buttons === 0) return;
      if (kind === 'down' && event.target instanceof Element && event.target.closest('button')) return;
      event.preventDefault();
      if (kind === 'down') pad.setPointerCapture(event.pointerId);
      const frame = pad.getBoundingClientRect();
      take({
        kind,
        id: event.pointerId,
        at: performance.now(),
        x: (event.clientX - frame.left) / pixelsPerMm,
        y: (event.clientY - frame.top) / pixelsPerMm,
        width: Math.max(event.width, event.height) / pixelsPerMm,
      });
    };
  const lifted =
    (kind: 'up' | 'cancel') =>
    (event: PointerEvent): void =>
      take({ kind, id: event.pointerId, at: performance.now() });

  const { signal } = listening;
  pad.style.touchAction = 'none';
  pad.addEventListener('pointerdown', placed('down'), { signal });
  pad.addEventListener('pointermove', placed('move'), { signal });
  pad.addEventListener('pointerup', lifted('up'), { signal });
  pad.addEventListener('pointercancel', lifted('cancel'), { signal });
  // Whose coming up goes elsewhere, as under a dialog of the system, is down no more. After an up it changes nothing.
  pad.addEventListener('lostpointercapture', lifted('cancel'), { signal });
  // A long press of a finger would open the menu of the system.
  pad.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
  return () => {
    clearTimeout(timer);
    listening.abort();
  };
}
