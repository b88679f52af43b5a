/** The weights that were held, by the record: from the word that it is held to the word that it is set down. */
import type { Entry } from './entry.ts';

export interface HeldWeight {
  readonly step: string;
  /** The entry in which it was taken. */
  readonly seq: number;
  /** RFC 3339 */
  readonly from: string;
  /** The entry in which it was set down; null where the record ends before that. */
  readonly end: number | null;
  readonly to: string | null;
  readonly seconds: number | null;
  /** How often help was called meanwhile. */
  readonly helps: number;
}

/** All of them, in the order of the record. */
export function heldWeights(entries: readonly Entry[]): readonly HeldWeight[] {
  const all: HeldWeight[] = [];
  for (const { seq, at, body } of entries) {
    const open = all.at(-1)?.end === null ? all.at(-1) : undefined;
    if (body.kind === 'hold begun')
      all.push({ step: body.step, seq, from: at.utc, end: null, to: null, seconds: null, helps: 0 });
    else if (body.kind === 'help called' && open) all[all.length - 1] = { ...open, helps: open.helps + 1 };
    else if (body.kind === 'hold ended' && open)
      all[all.length - 1] = { ...open, end: seq, to: at.utc, seconds: body.seconds };
  }
  return all;
}
