/** Where what is asked can be answered in one way only. */
import { askPoint } from '../../language/say-point.ts';
import { answerGiven } from '../../session/openings.ts';
import type { Point } from '../../session/point.ts';
import { currentPoint, sealsDecidedBy } from '../../session/points.ts';
import { reuseRefusal } from '../../session/seals.ts';
import { currentStep, openCondition, openWarning, type SessionState } from '../../session/state.ts';

/** The one answer that a point can have; null where there is a choice. */
export const onlyAnswer = (state: SessionState, point: Point): 'held' | 'replace' | null =>
  point.kind === 'held' ? 'held' : point.kind === 'seal' && reuseRefusal(state, point.seal) ? 'replace' : null;

/** What is said of a seal that cannot be used again, where a check asks what becomes of it; null where it may be, or is replaced. */
export function mustReplace(state: SessionState): string | null {
  const step = currentStep(state);
  if (step === null || currentPoint(state) || openWarning(state) || openCondition(state)) return null;
  const spent = sealsDecidedBy(state, step).find(
    (seal) => onlyAnswer(state, seal) && answerGiven(state, step.id, seal) !== 'replace',
  );
  return spent ? askPoint(state, spent) : null;
}
