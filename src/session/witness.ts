/** The second person's value: taken before the mechanic's is shown or spoken, and never by the mechanic. */
import { add, compare, fromWritten } from '../units/index.ts';
import { toolFor } from './calls.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import { callOf, findingOf } from './finding.ts';
import type { SaidReading } from './intent.ts';
import { isOfValue, openDoubt, type Reading } from './reading.ts';
import { witnessIn } from './people.ts';
import type { SessionState } from './state.ts';

/** Whether a step wants the value of a second person for each reading. */
export const wantsWitness = ({ procedure }: SessionState, stepId: string): boolean => {
  const step = procedure.steps.find(({ id }) => id === stepId);
  return step?.kind === 'tighten' && step.confirm === 'witness each';
};

/** Whether the value of a reading is still kept from everybody, because its witness has not read yet. */
export const awaitsWitness = (state: SessionState, { step, witnessed }: Pick<Reading, 'step' | 'witnessed'>): boolean =>
  witnessed === undefined && wantsWitness(state, step);

/**
 * Whether nothing may tell the value of a reading: its witness has not read it yet, or what both have read is in doubt, and
 * both read again. Who knew the first value by then would not read a second one blind.
 */
export const isKept = (state: SessionState, reading: Kept): boolean =>
  wantsWitness(state, reading.step) && (reading.witnessed === undefined || openDoubt(state, reading) !== null);

type Kept = Pick<Reading, 'step' | 'witnessed' | 'doubts' | 'corrects' | 'reading'>;

/** Whether what is asked about a reading is its value: then no word confirms it, nor any value that is kept from everybody. */
export const asksValue = (state: SessionState, reading: Kept): boolean =>
  isOfValue(openDoubt(state, reading)) || isKept(state, reading);

/** What the second person reads off the tool. Two values further apart than one mark of its scale are a dispute. */
export function takeWitness(state: SessionState, pending: Reading, { fastener, value }: SaidReading): Decision {
  const person = witnessIn(state);
  if (person === null) return refuse({ code: 'no second person' });
  if (fastener !== null && fastener !== pending.fastener)
    return refuse({ code: 'out of order', offered: fastener, expected: pending.fastener });
  const reading = { value, unit: pending.reading.unit };
  const witnessed: EventBody = { kind: 'witnessed', of: pending.seq, reading, person };
  return agree(state, pending, reading) ? accept(witnessed) : accept(witnessed, { kind: 'disputed', of: pending.seq });
}

/**
 * Whether two values of one reading are the same to one mark of the tool, and say the same of the fastener: one mark is much
 * where it is the one between inside and outside.
 */
export function agree(state: SessionState, reading: Reading, other: Reading['reading']): boolean {
  const step = state.procedure.steps.find(({ id }) => id === reading.step);
  if (step?.kind !== 'tighten') return false;
  const { resolution } = toolFor(state.procedure, step, reading.pass);
  const [one, two] = [fromWritten('torque', reading.reading), fromWritten('torque', other)];
  const isNear = compare(one, add(two, resolution)) <= 0 && compare(two, add(one, resolution)) <= 0;
  return isNear && findingOf(state, step, callOf(state, step, reading), other).verdict === reading.verdict;
}
