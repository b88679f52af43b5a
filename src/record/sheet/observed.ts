/** Weights that were held, values that were observed, and who signed: a line each. */
import type { Procedure } from '../../procedure/procedure.ts';
import type { ObservedValue } from '../../session/observed.ts';
import type { SessionState } from '../../session/state.ts';
import { heldWeights } from '../holds.ts';
import type { SessionRecord } from '../session-record.ts';
import { sheetTime } from './times.ts';

const titleOf = ({ steps }: Procedure, id: string): string => steps.find((step) => step.id === id)?.title ?? id;

/** "Lift off: held for 48 s, from 2026-03-12 07:44:56Z". */
export const holdsOf = ({ entries, procedure }: SessionRecord, timeZone: string): readonly string[] => [
  ...heldWeights(entries).map(({ step, from, seconds, helps }) => {
    const length = seconds === null ? 'held to the end of the record' : `held for ${seconds} s`;
    const help = helps === 0 ? '' : `. HELP CALLED ${helps === 1 ? 'once' : `${helps} times`}`;
    return `${titleOf(procedure, step)}: ${length}, from ${sheetTime(from, timeZone).utc}${help}`;
  }),
];

/** Every value that was ever taken, with its window, its wait, and what became of it. */
export const valuesOf = ({ observed, procedure }: SessionState, timeZone: string): readonly string[] =>
  observed.map((value) => {
    const { step, at, person, status, waited, leftOpen } = value;
    const wait = waited === null ? '' : `, after a wait of ${waited} s`;
    const open = leftOpen ? '. LEFT OPEN' : '';
    return `${titleOf(procedure, step)}: ${shownValue(value)}${wait}; ${status}, by ${person}, ${sheetTime(at.utc, timeZone).utc}${open}`;
  });

/** "70 mm, OVER 40 to 60 mm". */
export function shownValue({ value, unit, window, verdict }: ObservedValue): string {
  if (!window) return `${value} ${unit}, no window is stated`;
  return `${value} ${unit}, ${VERDICTS[verdict]} ${window.min} to ${window.max} ${unit}`;
}

const VERDICTS: Readonly<Record<ObservedValue['verdict'], string>> = {
  in: 'inside',
  under: 'UNDER',
  over: 'OVER',
  'no window': 'not judged',
};

/** Who signed the record, and who was to and has not. */
export function signaturesOf({ procedure, signatures }: SessionState, timeZone: string): readonly string[] {
  return procedure.signatures.map((role) => {
    const signed = signatures.find((each) => each.role === role);
    return signed
      ? `Signed as ${role} by ${signed.person}, ${sheetTime(signed.at.utc, timeZone).utc}: name typed, press held`
      : `NOT SIGNED by the ${role}`;
  });
}
