/** What is said while both hands are under a weight: few words, the same ones each time. */
import type { StepOf } from '../procedure/procedure.ts';
import type { SessionState } from '../session/state.ts';
import { durations } from '../words/durations.ts';
import { holding } from '../words/holding.ts';
import { sayNumber } from './numbers/index.ts';
import { sentence } from './say.ts';

/** "Ports up." Nothing where the step names no orientation. */
export const sayOrientation = ({ orientation }: StepOf<'hold'>): readonly string[] =>
  orientation === undefined ? [] : [sentence(`${orientation}.`)];

/** What is wanted now: the call that was said last, and how it must be held. */
export function sayHeld(state: SessionState, step: StepOf<'hold'>): string {
  const called = state.hold?.called ?? 0;
  const call = step.calls[called - 1];
  const isLast = called >= step.calls.length;
  return [
    ...(state.helpCalled ? [sayHelp(state)] : []),
    ...(call === undefined ? [] : [sentence(`${call}.`)]),
    ...sayOrientation(step),
    ...(isLast ? [holding.setDown] : []),
  ].join(' ');
}

/** "Thirty seconds. Ports up." */
export const sayHoldTime = (state: SessionState, step: StepOf<'hold'>, seconds: number): string =>
  [...(state.helpCalled ? [sayHelp(state)] : []), `${sentence(sayHeldFor(seconds))}.`, ...sayOrientation(step)].join(
    ' ',
  );

/** The one call that is for somebody else: who is to come, and where to. */
export function sayHelp({ people: { second } }: SessionState): string {
  return second === null ? holding.help : holding.helpOf(second);
}

/** "thirty seconds", "two minutes", "two minutes, five seconds": whole words, which are said quicker than digits. */
export function sayHeldFor(duration: number): string {
  const [minutes, seconds] = [Math.floor(duration / 60), duration % 60];
  if (minutes === 0) return durations.seconds(seconds, whole(seconds));
  const said = durations.minutes(minutes, whole(minutes));
  return seconds === 0 ? said : durations.minutesAndSeconds(said, durations.seconds(seconds, whole(seconds)));
}

const whole = (number: number): string => sayNumber(String(number), 'natural').join(' ');
