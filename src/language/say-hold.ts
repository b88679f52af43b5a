/** What is said while both hands are under a weight: few words, the same ones each time. */
import type { StepOf } from '../procedure/procedure.ts';
import type { SessionState } from '../session/state.ts';
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
    ...(isLast ? ['Say set down when it is down.'] : []),
  ].join(' ');
}

/** "Thirty seconds. Ports up." */
export const sayHoldTime = (state: SessionState, step: StepOf<'hold'>, seconds: number): string =>
  [...(state.helpCalled ? [sayHelp(state)] : []), `${sentence(sayHeldFor(seconds))}.`, ...sayOrientation(step)].join(
    ' ',
  );

/** The one call that is for somebody else: who is to come, and where to. */
export function sayHelp({ people: { second } }: SessionState): string {
  return second === null ? 'Help! Somebody to the load, now!' : `Help! ${second}, to the load, now!`;
}

/** "thirty seconds", "two minutes", "two minutes, five seconds": whole words, which are said quicker than digits. */
export function sayHeldFor(seconds: number): string {
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  const parts = [
    ...(minutes > 0 ? [counted(minutes, 'minute')] : []),
    ...(rest > 0 || minutes === 0 ? [counted(rest, 'second')] : []),
  ];
  return parts.join(', ');
}

const counted = (count: number, what: string): string =>
  `${sayNumber(String(count), 'natural').join(' ')} ${what}${count === 1 ? '' : 's'}`;
