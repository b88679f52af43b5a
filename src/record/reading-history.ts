/** How the value of a fastener came about: every reading of it in one pass, what became of each, and how far apart they are. */
import type { Reading } from '../session/reading.ts';
import { fromWritten, rounded, subtract, type Written } from '../units/index.ts';

/** Every reading ever captured of a fastener in a pass, in the order of the record. */
export const historyOf = (
  readings: readonly Reading[],
  { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>,
): readonly Reading[] =>
  readings.filter((each) => each.step === step && each.pass === pass && each.fastener === fastener);

/** What became of a reading. One that was confirmed stands, or gives way to a later one of the same fastener and pass. */
export type Fate = Exclude<Reading['status'], 'confirmed'> | 'stands' | 'read again';

/** What became of a reading, among all of its fastener and pass. */
export function fateOf({ status, seq }: Reading, history: readonly Reading[]): Fate {
  if (status !== 'confirmed') return status;
  const newest = history.findLast((each) => each.status === 'confirmed');
  return newest === undefined || newest.seq === seq ? 'stands' : 'read again';
}

/** The difference from one value to another as signed text in the unit of the first: "+1", "−0.5", "0". */
export function differenceFrom(first: Written<'torque'>, second: Written<'torque'>): string {
  const difference = subtract(fromWritten('torque', second), fromWritten('torque', first));
  const { value } = rounded(difference, first.unit, Math.max(placesIn(first), placesIn(second)));
  if (Number(value) === 0) return '0';
  return value.startsWith('-') ? `−${value.slice(1)}` : `+${value}`;
}

const placesIn = ({ value }: Written<'torque'>): number => value.split('.')[1]?.length ?? 0;
