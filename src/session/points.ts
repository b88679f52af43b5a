/** Which point of a step is asked. */
import type { Step } from '../procedure/procedure.ts';
import { releaseParts } from '../procedure/release.ts';
import { accountOf } from './account.ts';
import { orderOnCall } from './deviations.ts';
import { answerGiven } from './openings.ts';
import { pointsOf, settles, type Point } from './point.ts';
import { currentCall, currentStep, doesNotApply, openCondition, openWarning, type SessionState } from './state.ts';

const isSettledIn = (state: SessionState, step: Step, point: Point): boolean =>
  settles(point, answerGiven(state, step.id, point));

/** The point that is asked now; null where none is. Where a warning is open it comes first. */
export function currentPoint(state: SessionState): Point | null {
  const step = currentStep(state);
  if (step === null || openCondition(state) || openWarning(state)) return null;
  if (doesNotApply(state, step)) return accountOf(state, step)[0] ?? null;
  const own = pointsOf(state.procedure, step).find(
    (point) => !isSettledIn(state, step, point) && isDue(state, step, point),
  );
  if (own) return own;
  const ordered = orderedPoint(state, step);
  if (ordered) return ordered;
  const [account] = accountOf(state, step);
  return account && currentCall(state) === null ? account : null;
}

/** Points that are still to be asked in the current step, this one with them. */
export function pointsLeft(state: SessionState): number {
  const step = currentStep(state);
  if (step === null) return 0;
  const own = doesNotApply(state, step) ? [] : pointsOf(state.procedure, step);
  const open = own.filter((point) => !isSettledIn(state, step, point) && isDue(state, step, point));
  return open.length + (orderedPoint(state, step) ? 1 : 0) + accountOf(state, step).length;
}

function orderedPoint(state: SessionState, step: Step): Point | null {
  const order = orderOnCall(state, step);
  return order && { kind: 'ordered', of: order.of };
}

function isDue(state: SessionState, step: Step, point: Point): boolean {
  switch (point.kind) {
    case 'held':
      return isLastPartCalled(state, step);
    case 'criterion':
      return !hasFailed(state, step, point.seal);
    case 'seal':
      return !isAnsweredByStep(step);
    default:
      return true;
  }
}

/** After one criterion failed, the others no longer matter. */
const hasFailed = (state: SessionState, step: Step, seal: string): boolean =>
  pointsOf(state.procedure, step).some(
    (point) => point.kind === 'criterion' && point.seal === seal && answerGiven(state, step.id, point) === 'negative',
  );

/**
 * A check that asks itself whether a seal is reused or replaced, and goes on with no other answer: that is the answer to the
 * point. One that cannot be answered with "replace" would leave no way on from a seal that is spent: there the point is asked.
 */
export const isAnsweredByStep = (step: Step): boolean =>
  step.kind === 'check' &&
  step.outcomes.every(({ id, then }) => then === 'stay' || id === 'reuse' || id === 'replace') &&
  step.outcomes.some(({ id, then }) => then === 'go on' && id === 'replace');

/** The seals about which the answer to a check decides. */
export const sealsDecidedBy = (state: SessionState, step: Step): readonly Extract<Point, { kind: 'seal' }>[] =>
  isAnsweredByStep(step) ? pointsOf(state.procedure, step).filter((point) => point.kind === 'seal') : [];

/** Whether what is called now only comes off while somebody holds the weight. */
function isLastPartCalled(state: SessionState, step: Step): boolean {
  const call = currentCall(state);
  if (step.kind !== 'loosen' || call?.pass.kind !== 'loosen' || call.pass.index !== call.pass.of) return false;
  return releaseParts(state.procedure, step).some(({ held, numbers }) => held && numbers.includes(call.fastener));
}
