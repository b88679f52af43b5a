/** How the openings stand: what came open, was capped, and was connected again. */
import type { Step } from '../procedure/procedure.ts';
import { pointIn, pointKey, pointsOf, type Point, type PointAnswer } from './point.ts';
import { currentStep, doesNotApply, openCondition, openWarning, type SessionState } from './state.ts';

/** What was answered to a point of a step; undefined where nothing was yet. */
export const answerGiven = (state: SessionState, step: string, point: Point): PointAnswer | undefined =>
  state.points.get(pointIn(step, pointKey(point)));

/** How an opening stands. */
export type OpeningStanding = 'not opened' | 'open' | 'capped' | 'connected';

/** Every opening of the procedure, as the points that were settled have it. */
export function openings(state: SessionState): ReadonlyMap<string, OpeningStanding> {
  const standing = new Map<string, OpeningStanding>(
    state.procedure.openings.map(({ id }) => [id, state.opened.get(id) ?? 'not opened']),
  );
  for (const step of state.procedure.steps.slice(0, state.at + 1)) {
    for (const point of [...pointsOf(state.procedure, step), ...accountedIn(state, step)]) {
      const answer = answerGiven(state, step.id, point);
      if (point.kind === 'capped' && answer === 'affirm') standing.set(point.opening, 'capped');
      else if (point.kind === 'capped' && step === currentStep(state) && isBegun(state, step))
        standing.set(point.opening, 'open');
      else if (point.kind === 'connected' && answer === 'affirm') standing.set(point.opening, 'connected');
    }
  }
  return standing;
}

const isBegun = (state: SessionState, step: Step): boolean =>
  !doesNotApply(state, step) && openCondition(state) === null && openWarning(state) === null;

/** Connections that were made where everything was accounted for, outside the steps that make them. */
const accountedIn = ({ procedure, points }: SessionState, { id }: Step): readonly Point[] =>
  procedure.openings
    .map(({ id: opening }): Point => ({ kind: 'connected', opening }))
    .filter((point) => points.has(pointIn(id, pointKey(point))));
