/** Where the work stands, for someone who comes to it or comes back: which fasteners have this pass, and what is left. */
import { planOf } from '../session/calls.ts';
import { openPoints, type OpenPoint } from '../session/deviations.ts';
import { currentCall, currentStep, isSettled, type SessionState } from '../session/state.ts';
import { count, labelOf, sentence } from './say.ts';

/** More numbers than these nobody keeps in mind: then only how many. */
const MOST_NAMED = 12;

/** "In pass two, done: one, six, three. Seven to do." Nothing where no fastener of this pass is done. */
export function sayStanding(state: SessionState): readonly string[] {
  const step = currentStep(state);
  const call = currentCall(state);
  if (!step || !call) return [];
  const { pass } = call;
  const done = pass.order.filter((fastener) => isSettled(state, step.id, pass, fastener));
  if (done.length === 0) return [];
  const named = done.length <= MOST_NAMED ? `done: ${done.map(count).join(', ')}` : `${count(done.length)} done`;
  const round = pass.kind === 'running torque' ? 'Of the running torques' : `In pass ${count(pass.index)}`;
  const { passes } = planOf(state.procedure, step);
  const later = passes.length - (pass.kind === 'running torque' ? 0 : pass.index);
  const after = later > 0 ? `, and ${count(later)} more ${later === 1 ? 'pass' : 'passes'}` : '';
  return [`${round}, ${named}. ${sentence(count(pass.order.length - done.length))} to do${after}.`];
}

const MINUTES = 60_000;

/** How long, as it is spoken: minutes up to two hours, then hours, then days. Rounded down. */
export function sayDuration(milliseconds: number): string {
  const minutes = Math.floor(milliseconds / MINUTES);
  if (minutes < 120) return `${count(minutes)} minutes`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${count(hours)} hours` : `${count(Math.floor(hours / 24))} days`;
}

/** What is to be decided about after the work, one sentence each. */
export const sayOpenPoints = (state: SessionState): readonly string[] => {
  const points = openPoints(state);
  if (points.length === 0) return [];
  const many = points.length === 1 ? 'One deviation is' : `${sentence(count(points.length))} deviations are`;
  return [`${many} to be decided about.`, ...points.map((point) => sayPoint(state, point))];
};

function sayPoint(state: SessionState, { step, pass, fastener, what, leftOpen }: OpenPoint): string {
  const round = pass === 0 ? 'running torque' : `pass ${count(pass)}`;
  return sentence(`${labelOf(state, step)} ${count(fastener)}, ${round}, ${what}${leftOpen ? ', left open' : ''}.`);
}
