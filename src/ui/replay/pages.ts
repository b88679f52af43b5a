/** A long list a page at a time. */

/** How many items a page has: more than anybody reads at once, and few enough to be drawn in a blink. */
export const PAGE = 200;

export interface PageOfList<Item> {
  readonly items: readonly Item[];
  /** Of the first item, and of the one after the last. */
  readonly from: number;
  readonly to: number;
  readonly pages: number;
}

/** One page of a list; the last one where there are not so many. */
export function pageOf<Item>(all: readonly Item[], page: number): PageOfList<Item> {
  const pages = Math.max(1, Math.ceil(all.length / PAGE));
  const from = Math.max(0, Math.min(pages - 1, page)) * PAGE;
  const items = all.slice(from, from + PAGE);
  return { items, from, to: from + items.length, pages };
}

/** The page on which a number stands, or on which it would stand, in a list of rising numbers. */
export function pageAround(rising: readonly number[], wanted: number): number {
  const after = rising.findIndex((each) => each >= wanted);
  const index = after < 0 ? rising.length - 1 : after;
  return Math.max(0, Math.floor(index / PAGE));
}
