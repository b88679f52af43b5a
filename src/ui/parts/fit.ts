import { createEffect, on, onCleanup, onMount } from 'solid-js';

/** What has to be in sight without scrolling: all that is asked, called or warned of. Notes and what is still to be decided may be scrolled to. */
const COUNTS =
  '.sentence, .fastener-number, .pass, .value, .reckoning, .question, .verdict, .trouble, .last-reading, .hazard, .outcomes, .held-time, .put-away';
/** How much smaller letters may become for it: as parts of their size. */
const SIZES = [1, 0.92, 0.84, 0.76, 0.68, 0.6, 0.52];

/** By how little letters may become smaller for the last of the small lines, and how tall a box is where they may, in pixels. */
const A_LITTLE = [1, 0.92, 0.84, 0.76];
const LARGE = 340;

/**
 * Keeps what counts in a box in sight: its letters become smaller, by the custom property `--fit` of the box around it, as far
 * as they must.
 * @param shown changes when what stands there may have changed
 */
export function createFit(
  around: () => HTMLElement | undefined,
  box: () => HTMLElement | undefined,
  shown: () => unknown,
): void {
  function fit(): void {
    const [outer, inner] = [around(), box()];
    if (!outer || !inner) return;
    const isFit = (sizes: readonly number[], isInSight: (box: HTMLElement) => boolean): boolean =>
      sizes.some((size) => {
        outer.style.setProperty('--fit', String(size));
        return isInSight(inner);
      });
    // On a small screen what counts stays as large as it can be.
    const isLarge = inner.clientHeight >= LARGE;
    if (!(isLarge && isFit(A_LITTLE, isWhole))) isFit(SIZES, isAllInSight);
  }
  createEffect(on(shown, fit));
  onMount(() => {
    const watch = new ResizeObserver(fit);
    const outer = around();
    if (outer) watch.observe(outer);
    onCleanup(() => watch.disconnect());
  });
}

/** Nothing has to be scrolled to. */
const isWhole = (box: HTMLElement): boolean =>
  box.scrollHeight <= box.clientHeight && box.scrollWidth <= box.clientWidth + 1;

function isAllInSight(box: HTMLElement): boolean {
  // A word that is longer than a line is cut off, too.
  if (box.scrollWidth > box.clientWidth + 1) return false;
  // However far it is scrolled at this moment; its height is rounded.
  const end = box.getBoundingClientRect().top - box.scrollTop + box.clientHeight;
  return [...box.querySelectorAll(COUNTS)].every((each) => lowest(each) <= end + 0.4);
}

/** Where lines are close, what hangs below the last one hangs out of its box. */
function lowest(element: Element): number {
  const words = document.createRange();
  words.selectNodeContents(element);
  return Math.max(element.getBoundingClientRect().bottom, words.getBoundingClientRect().bottom);
}
