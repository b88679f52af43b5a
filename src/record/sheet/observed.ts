/** Weights that were held, values that were observed, and who signed: a line each. */
import type { Procedure } from '../../procedure/procedure.ts';
import type { ObservedValue } from '../../session/observed.ts';
import { inspectsOwnWork } from '../../session/people.ts';
import type { SessionState } from '../../session/state.ts';
import { sheetWork } from '../../words/sheet-work.ts';
import { heldWeights } from '../holds.ts';
import type { SessionRecord } from '../session-record.ts';
import { sheetTime } from './times.ts';

const titleOf = ({ steps }: Procedure, id: string): string => steps.find((step) => step.id === id)?.title ?? id;

/** "Lift off: held for 48 s, from 2026-03-12 07:44:56Z". */
export const holdsOf = ({ entries, procedure }: SessionRecord, timeZone: string): readonly string[] =>
  heldWeights(entries).map(({ step, from, seconds, helps }) =>
    sheetWork.held(titleOf(procedure, step), seconds, sheetTime(from, timeZone).utc, helps),
  );

/** Every value that was ever taken, with its window, its wait, and what became of it. */
export const valuesOf = ({ observed, procedure }: SessionState, timeZone: string): readonly string[] =>
  observed.map((value) =>
    sheetWork.value(titleOf(procedure, value.step), shownValue(value), value, sheetTime(value.at.utc, timeZone).utc),
  );

/** "70 mm, OVER 40 to 60 mm". */
export const shownValue = ({ value, unit, window, verdict }: ObservedValue): string =>
  window ? sheetWork.judged(value, unit, verdict, window) : sheetWork.notJudged(value, unit);

/** Who signed the record, and who was to and has not. */
export function signaturesOf(state: SessionState, timeZone: string): readonly string[] {
  const { procedure, signatures } = state;
  return procedure.signatures.map((role) => {
    const signed = signatures.find((each) => each.role === role);
    return signed
      ? sheetWork.signed(role, signed.person, sheetTime(signed.at.utc, timeZone).utc, inspectsOwnWork(state, signed))
      : sheetWork.notSigned(role);
  });
}
