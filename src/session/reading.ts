/** Readings and what became of each. */
import type { EventBody } from './event.ts';
import type { Instant, ReadingDoubt } from './intent.ts';

/** A reading with what became of it. Every reading ever captured stays in the state, in the order of the record. */
export interface Reading extends Extract<EventBody, { kind: 'reading captured' }> {
  readonly seq: number;
  readonly at: Instant;
  readonly person: string;
  readonly status: 'captured' | 'confirmed' | 'rejected' | 'disregarded' | 'replaced' | 'disputed' | 'set aside';
  /** What the second person read, where there was one to read it. */
  readonly witnessed?: Pick<Extract<EventBody, { kind: 'witnessed' }>, 'person' | 'reading'>;
}

/** Whether only an explicit word may confirm a reading: not going on, and not a pedal that means many things. */
export const wantsOwnWord = ({ verdict, doubts = [] }: Pick<Reading, 'verdict' | 'doubts'>): boolean =>
  verdict !== 'in' || doubts.length > 0;

/**
 * The doubt that is asked about; null where there is none, or it was answered. Who says the same value again has answered
 * it: what is left is whether it was heard rightly. Only what no scale shows stays what it is, however often it is said.
 */
export function openDoubt(
  { readings }: { readonly readings: readonly Reading[] },
  { doubts: [doubt] = [], corrects, reading }: Pick<Reading, 'doubts' | 'corrects' | 'reading'>,
): ReadingDoubt | null {
  const isSaidAgain = readings.some((old) => old.seq === corrects && old.reading.value === reading.value);
  return doubt === undefined || (isSaidAgain && doubt !== 'off the scale') ? null : doubt;
}

/** Their questions ask for the value: a yes answers none of them. */
const ASKS_VALUE: ReadonlySet<ReadingDoubt | null> = new Set(['off the scale', 'not sure', 'sounds like another']);

/** Whether the question of a doubt asks for the value. */
export const isOfValue = (doubt: ReadingDoubt | null): boolean => ASKS_VALUE.has(doubt);

/** One fastener in one round of one step. */
export const callKey = (step: string, pass: number, fastener: number): string => `${step}/${pass}/${fastener}`;

/** The readings that a reading stands in for: the one it corrects, the one that this one corrected, and so on. */
export function correctedBy(readings: readonly Reading[], seq: number): readonly number[] {
  const earlier = readings.findLast((reading) => reading.seq === seq)?.corrects ?? null;
  // Only backwards: a record from elsewhere must not lead round in a circle.
  return earlier === null || earlier >= seq ? [] : [earlier, ...correctedBy(readings, earlier)];
}

/** What a reading was to stand in for, and has not: the earlier one that still counts; null where there is none. */
export function stillStanding(readings: readonly Reading[], seq: number): Reading | null {
  const corrected = correctedBy(readings, seq);
  return readings.findLast((old) => corrected.includes(old.seq) && old.status === 'confirmed') ?? null;
}

export function mark(
  readings: readonly Reading[],
  seq: number | null,
  status: (old: Reading) => Reading['status'],
): readonly Reading[] {
  if (seq === null) return readings;
  // What is marked is nearly always among the newest.
  const at = readings.findLastIndex((reading) => reading.seq === seq);
  const old = readings[at];
  return old ? readings.with(at, { ...old, status: status(old) }) : readings;
}

/** Looked up for every call of a step after every event: found once for each list of readings. */
const standing = new WeakMap<readonly Reading[], ReadonlyMap<string, Reading>>();

/** The readings that stand, by their call: the newest that was confirmed of each. */
export function standingIn(readings: readonly Reading[]): ReadonlyMap<string, Reading> {
  const known = standing.get(readings);
  if (known) return known;
  const found = new Map(
    readings
      .filter(({ status }) => status === 'confirmed')
      .map((reading) => [callKey(reading.step, reading.pass, reading.fastener), reading]),
  );
  standing.set(readings, found);
  return found;
}
