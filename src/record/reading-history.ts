/** How the value of a fastener came about: every reading of it in one pass, what became of each, and how far apart they are. */
import type { Reading } from '../session/reading.ts';
import { fromWritten, rounded, subtract, type Written } from '../units/index.ts';

/** Every reading ever captured of a fastener in a pass, in the order of the record. */
export const historyOf = (
  readings: readonly Reading[],
  { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>,
): readonly Reading[] =>
  readings.filter((each) => each.step === step && each.pass === pass && each.fastener === fastener);

const FATES: Readonly<Record<Reading['status'], string>> = {
  captured: 'not confirmed',
  confirmed: 'stands',
  rejected: 'rejected at its read-back',
  disregarded: 'disregarded',
  replaced: 'corrected',
  disputed: 'disputed by the witness',
  'set aside': 'set aside: the pass was worked again',
};

/** What became of a reading, in words. One that was confirmed gives way to a later one of the same fastener and pass. */
export function fateOf(reading: Reading, history: readonly Reading[]): string {
  const standing = history.findLast(({ status }) => status === 'confirmed');
  const isOld = reading.status === 'confirmed' && standing !== undefined && standing.seq !== reading.seq;
  return isOld ? 'confirmed, then read again' : FATES[reading.status];
}

/** The difference from one value to another as signed text in the unit of the first: "+1", "−0.5", "0". */
export function differenceFrom(first: Written<'torque'>, second: Written<'torque'>): string {
  const difference = subtract(fromWritten('torque', second), fromWritten('torque', first));
  const { value } = rounded(difference, first.unit, Math.max(placesIn(first), placesIn(second)));
  if (Number(value) === 0) return '0';
  return value.startsWith('-') ? `−${value.slice(1)}` : `+${value}`;
}

const placesIn = ({ value }: Written<'torque'>): number => value.split('.')[1]?.length ?? 0;
