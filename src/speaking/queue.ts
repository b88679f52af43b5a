/** The order in which announcements are spoken. Pure: it knows no voice and no time. */
export interface Queue<Item extends Queued> {
  readonly speaking: Item | null;
  readonly waiting: readonly Item[];
}

export interface Queued {
  readonly urgent: boolean;
}

export const EMPTY_QUEUE: Queue<never> = { speaking: null, waiting: [] };

/**
 * Adds an item behind those of its kind: urgent ones go before the others, and each kind keeps its order.
 * An urgent item cuts short what is being spoken, unless that is urgent too.
 */
export function add<Item extends Queued>(
  { speaking, waiting }: Queue<Item>,
  item: Item,
): { queue: Queue<Item>; cutShort: Item | null } {
  if (!item.urgent) return { queue: { speaking, waiting: [...waiting, item] }, cutShort: null };
  const isCut = speaking !== null && !speaking.urgent;
  const urgent = waiting.filter((other) => other.urgent);
  const others = waiting.filter((other) => !other.urgent);
  return {
    queue: { speaking: isCut ? null : speaking, waiting: [...urgent, item, ...others] },
    cutShort: isCut ? speaking : null,
  };
}

/** Starts the first waiting item; changes nothing while one is being spoken. */
export function startNext<Item extends Queued>(queue: Queue<Item>): Queue<Item> {
  const [first, ...rest] = queue.waiting;
  return queue.speaking === null && first !== undefined ? { speaking: first, waiting: rest } : queue;
}

/** Takes a spoken item out; changes nothing when it was cut short before. */
export function finish<Item extends Queued>(queue: Queue<Item>, item: Item): Queue<Item> {
  return queue.speaking === item ? { ...queue, speaking: null } : queue;
}

/** All items, the one being spoken first. */
export const itemsOf = <Item extends Queued>({ speaking, waiting }: Queue<Item>): readonly Item[] =>
  speaking ? [speaking, ...waiting] : waiting;
