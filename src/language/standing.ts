/** Where the work stands, for someone who comes to it or comes back: which fasteners have this pass, and what is left. */
import { planOf } from '../session/calls.ts';
import { currentCall, currentStep, isSettled, type SessionState } from '../session/state.ts';
import { answers } from '../words/answers.ts';
import { durations } from '../words/durations.ts';
import { count, passInWords, sentence } from './say.ts';

/** More numbers than these nobody keeps in mind: then only how many. */
const MOST_NAMED = 12;

/** "In pass two, done: stud one, stud six, stud three. Seven to do." Nothing where no fastener of this pass is done. */
export function sayStanding(state: SessionState): readonly string[] {
  const step = currentStep(state);
  const call = currentCall(state);
  if (!step || !call) return [];
  const { pass } = call;
  const done = pass.order.filter((fastener) => isSettled(state, step.id, pass, fastener));
  if (done.length === 0) return [];
  const round = passInWords(pass.index);
  const { passes } = planOf(state.procedure, step);
  const later = passes.length - (pass.kind === 'running torque' ? 0 : pass.index);
  const toDo = count(pass.order.length - done.length);
  return [
    [
      done.length <= MOST_NAMED
        ? answers.doneNamed(round, call.label, done.map(count))
        : answers.doneCounted(round, count(done.length)),
      sentence(later > 0 ? answers.toDoAndPasses(toDo, later, count(later)) : answers.toDo(toDo)),
    ].join(' '),
  ];
}

const MINUTES = 60_000;

/** How long, as it is spoken: minutes up to two hours, then hours, then days. Rounded down. */
export function sayDuration(milliseconds: number): string {
  const minutes = Math.floor(milliseconds / MINUTES);
  if (minutes < 120) return durations.brokenOff.minutes(count(minutes));
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? durations.brokenOff.hours(count(hours)) : durations.brokenOff.days(count(Math.floor(hours / 24)));
}
