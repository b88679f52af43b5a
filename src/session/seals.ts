/** What may become of a seal, and what a joint wants before it is tightened. */
import type { Procedure, Step } from '../procedure/procedure.ts';
import { refitOf } from '../procedure/release.ts';
import type { Call } from './calls.ts';
import { pointIn, pointKey, pointsOf, type Point } from './point.ts';
import type { Refusal } from './refusal.ts';
import { currentStep, doesNotApply, type SessionState } from './state.ts';
import { toolRefusal } from './tools.ts';

type Seal = Procedure['seals'][number];

export const sealOf = ({ procedure }: SessionState, id: string): Seal | undefined =>
  procedure.seals.find((each) => each.id === id);

/** The criterion that a seal failed, in the words of the procedure; null where it failed none, or a new one took its place. */
export function failedCriterion({ procedure: { seals, steps }, points }: SessionState, id: string): string | null {
  const replaced = pointKey({ kind: 'seal', seal: id });
  const sinceNew = steps.slice(steps.findLastIndex((step) => points.get(pointIn(step.id, replaced)) === 'replace') + 1);
  const failed = seals
    .find((each) => each.id === id)
    ?.criteria.find((_, index) => {
      const key = pointKey({ kind: 'criterion', seal: id, index });
      return sinceNew.some((step) => points.get(pointIn(step.id, key)) === 'negative');
    });
  return failed ?? null;
}

/** Whether what is looked for in a seal in a step is looked for in the new one, which took its place there. */
export const isOfNewSeal = ({ points }: SessionState, { id }: Step, seal: string): boolean =>
  points.get(pointIn(id, pointKey({ kind: 'seal', seal }))) === 'replace';

/** Whether the manual leaves no choice: it never has the seal used again, or the step that is worked discards it. */
export function isNeverReused(state: SessionState, id: string): boolean {
  const step = currentStep(state);
  const isDiscarded =
    (step?.kind === 'do' || step?.kind === 'check') &&
    step.seals.some(({ seal, is }) => seal === id && is === 'discarded');
  return isDiscarded || sealOf(state, id)?.reuse === 'never';
}

/** Why a seal may not be used again; null where it may. */
export function reuseRefusal(state: SessionState, id: string): Refusal | null {
  if (isNeverReused(state, id)) return { code: 'seal not reusable', seal: id, failed: null };
  const failed = failedCriterion(state, id);
  return failed === null ? null : { code: 'seal not reusable', seal: id, failed };
}

/** The refusal of a call: its joint is not made ready, or its tool may not be used. Null where nothing forbids it. */
export const callRefusal = (state: SessionState, step: Step, call: Call): Refusal | null =>
  jointRefusal(state, step) ?? toolRefusal(state, step, call);

/**
 * Why a joint may not be tightened yet: the seal that its fasteners clamp is not seated, or they are not all started by
 * hand. Asked only where the procedure has a step for it.
 */
export function jointRefusal(state: SessionState, step: Step): Refusal | null {
  if (step.kind !== 'tighten') return null;
  const seal = state.procedure.patterns.find(({ id }) => id === step.pattern)?.seal;
  if (seal !== undefined && isMissing(state, step, { kind: 'seated', seal })) return { code: 'seal not seated', seal };
  const starts = (point: Point): boolean => point.kind === 'started' && point.pattern === step.pattern;
  return isMissing(state, step, starts) ? { code: 'not started by hand', pattern: step.pattern } : null;
}

/**
 * Whether a step before a tightening, of the same refit, asks for a point, applies, and is not done. Where the procedure has
 * all of them only after it, nothing is tightened either; but for those that make ready another tightening after them.
 */
function isMissing(
  state: SessionState,
  step: Extract<Step, { kind: 'tighten' }>,
  wanted: Point | ((point: Point) => boolean),
): boolean {
  const isWanted =
    typeof wanted === 'function' ? wanted : (point: Point): boolean => pointKey(point) === pointKey(wanted);
  const refit = refitOf(state.procedure, step);
  const at = refit.indexOf(step);
  const asks = (each: Step): boolean => pointsOf(state.procedure, each).some(isWanted);
  const before = refit.slice(0, at).filter(asks);
  const last = refit.findLastIndex((each) => each.kind === 'tighten' && each.pattern === step.pattern);
  return (before.length > 0 ? before : refit.slice(last).filter(asks)).some(
    (each) => !doesNotApply(state, each) && !state.doneSteps.has(each.id),
  );
}
