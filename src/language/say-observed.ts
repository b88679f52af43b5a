/** Observed values as they are spoken: asked for, read back, and what their verdict asks for. */
import type { StepOf } from '../procedure/procedure.ts';
import { outsideValue, type ObservedValue } from '../session/observed.ts';
import type { SessionState } from '../session/state.ts';
import { observing } from '../words/observing.ts';
import { digits, sayName, sentence } from './say.ts';
import { sayHeldFor } from './say-hold.ts';

type MeasureStep = StepOf<'measure'>;

/** A unit of a procedure in words, where it has them. */
export const sayUnit = (unit: string): string => sayName(`1 ${unit}`).replace(/^one /, '');

/** What is wanted of the mechanic: the beginning of the wait, its end, or the value. */
export function sayMeasure(state: SessionState, step: MeasureStep): string {
  if (step.waitMinutes !== undefined && !state.waits.has(step.id))
    return observing.beginWait(sayHeldFor(step.waitMinutes * 60));
  const value = observing.sayValue(sayUnit(step.unit));
  if (outsideValue(state, step.id)) return `${value} ${observing.orLeaveOpen}`;
  return step.waitMinutes === undefined ? value : `${value} ${observing.notBefore(sayHeldFor(step.waitMinutes * 60))}`;
}

/** Said when a wait is over. */
export const sayWaitOver = ({ unit }: MeasureStep): string => observing.waitOver(sayUnit(unit));

/** "Oil level on the glass, four two millimetres. Is that correct?" */
export function readBackValue(
  state: SessionState,
  value: Pick<ObservedValue, 'step' | 'value' | 'unit' | 'verdict'>,
): string {
  const step = state.procedure.steps.find(({ id }) => id === value.step);
  const what = step?.kind === 'measure' ? step.what : observing.theValue;
  return [
    sentence(observing.value(what, digits(value.value), sayUnit(value.unit))),
    ...whereOutside(value, observing.isOutside),
    observing.isCorrect,
  ].join(' ');
}

/** After a value outside was confirmed. */
export const sayOutside = (value: Pick<ObservedValue, 'verdict'>): readonly string[] =>
  whereOutside(value, observing.stillOutside);

const whereOutside = (
  { verdict }: Pick<ObservedValue, 'verdict'>,
  said: Readonly<Record<'under' | 'over', string>>,
): readonly string[] => (verdict === 'under' || verdict === 'over' ? [said[verdict]] : []);
