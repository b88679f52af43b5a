/** Observed values as they are spoken: asked for, read back, and what their verdict asks for. */
import type { StepOf } from '../procedure/procedure.ts';
import { outsideValue, type ObservedValue } from '../session/observed.ts';
import type { SessionState } from '../session/state.ts';
import { digits, sayName, sentence } from './say.ts';
import { sayHeldFor } from './say-hold.ts';

type MeasureStep = StepOf<'measure'>;

/** A unit of a procedure in words, where it has them. */
export const sayUnit = (unit: string): string => sayName(`1 ${unit}`).replace(/^one /, '');

/** What is wanted of the mechanic: the beginning of the wait, its end, or the value. */
export function sayMeasure(state: SessionState, step: MeasureStep): string {
  if (step.waitMinutes !== undefined && !state.waits.has(step.id))
    return `Say next when the wait begins. It is ${sayHeldFor(step.waitMinutes * 60)}.`;
  const value = `Say the value in ${sayUnit(step.unit)}.`;
  if (outsideValue(state, step.id)) return `${value} Or say leave open.`;
  return step.waitMinutes === undefined ? value : `${value} Not before ${sayHeldFor(step.waitMinutes * 60)} are over.`;
}

/** Said when a wait is over. */
export const sayWaitOver = ({ unit }: MeasureStep): string => `The wait is over. Say the value in ${sayUnit(unit)}.`;

/** "Oil level on the glass, four two millimetres. Is that correct?" */
export function readBackValue(
  state: SessionState,
  value: Pick<ObservedValue, 'step' | 'value' | 'unit' | 'verdict'>,
): string {
  const step = state.procedure.steps.find(({ id }) => id === value.step);
  const what = step?.kind === 'measure' ? step.what : 'the value';
  const outside = OUTSIDE[value.verdict];
  return [
    `${sentence(what)}, ${digits(value.value)} ${sayUnit(value.unit)}.`,
    ...(outside === '' ? [] : [`That is ${outside}.`]),
    'Is that correct?',
  ].join(' ');
}

const OUTSIDE: Readonly<Record<ObservedValue['verdict'], string>> = {
  in: '',
  'no window': '',
  under: 'under the window',
  over: 'over the window',
};

/** After a value outside was confirmed. */
export const sayOutside = ({ verdict }: Pick<ObservedValue, 'verdict'>): readonly string[] =>
  OUTSIDE[verdict] === '' ? [] : [`It is ${OUTSIDE[verdict]}. Put it right and read again, or say leave open.`];
