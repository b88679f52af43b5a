/** Which point of a step is asked, and what is not accounted for yet. */
import type { Step } from '../procedure/procedure.ts';
import { releaseParts } from '../procedure/release.ts';
import type { EventBody } from './event.ts';
import { pointIn, pointKey, pointOf, pointsOf, settles, type Point, type PointAnswer } from './point.ts';
import { currentCall, currentStep, doesNotApply, openCondition, openWarning, type SessionState } from './state.ts';

/** What was answered to a point of a step; undefined where nothing was yet. */
export const answerGiven = (state: SessionState, step: string, point: Point): PointAnswer | undefined =>
  state.points.get(pointIn(step, pointKey(point)));

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
  const [account] = accountOf(state, step);
  return account && currentCall(state) === null ? account : null;
}

/** Points that are still to be asked in the current step, this one with them. */
export function pointsLeft(state: SessionState): number {
  const step = currentStep(state);
  if (step === null) return 0;
  const own = doesNotApply(state, step) ? [] : pointsOf(state.procedure, step);
  const open = own.filter((point) => !isSettledIn(state, step, point) && isDue(state, step, point));
  return open.length + accountOf(state, step).length;
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

/** A check that asks itself whether a seal is reused or replaced, and goes on with no other answer: that is the answer to the point. */
export const isAnsweredByStep = (step: Step): boolean =>
  step.kind === 'check' && step.outcomes.every(({ id, then }) => then === 'stay' || id === 'reuse' || id === 'replace');

/** The seals about which the answer to a check decides. */
export const sealsDecidedBy = (state: SessionState, step: Step): readonly Extract<Point, { kind: 'seal' }>[] =>
  isAnsweredByStep(step) ? pointsOf(state.procedure, step).filter((point) => point.kind === 'seal') : [];

/** Whether what is called now only comes off while somebody holds the weight. */
function isLastPartCalled(state: SessionState, step: Step): boolean {
  const call = currentCall(state);
  if (step.kind !== 'loosen' || call?.pass.kind !== 'loosen' || call.pass.index !== call.pass.of) return false;
  return releaseParts(state.procedure, step).some(({ held, numbers }) => held && numbers.includes(call.fastener));
}

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

/** What is still to be accounted for at a step; nothing where the step asks for no account. */
export function accountOf(state: SessionState, step: Step): readonly Point[] {
  const asks = (step.kind === 'do' || step.kind === 'check') && step.reconciles;
  return asks || isLast(state) ? unaccounted(state) : [];
}

/** Whether no step follows that applies to this unit, as far as is known. */
const isLast = (state: SessionState): boolean =>
  state.procedure.steps.slice(state.at + 1).every((step) => doesNotApply(state, step));

/**
 * What nobody has accounted for since it was used last: openings, then the caps and plugs that were fitted, tools, and
 * consumables.
 */
export function unaccounted(state: SessionState): readonly Point[] {
  const { procedure } = state;
  const used = usedConsumables(state);
  const opened = [...openings(state)].filter(([, standing]) => standing !== 'not opened').map(([id]) => id);
  const all: readonly Point[] = [
    ...opened.flatMap((opening): readonly Point[] =>
      openings(state).get(opening) === 'connected' ? [] : [{ kind: 'connected', opening }],
    ),
    ...opened.map((id): Point => ({ kind: 'closure', id })),
    ...procedure.tools.filter(({ counted }) => counted).map(({ id }): Point => ({ kind: 'tool', id })),
    ...procedure.consumables
      .filter(({ id, counted }) => counted === 'itself' || (counted === 'wrapper' && used.has(id)))
      .map(({ id }): Point => ({ kind: 'consumable', id })),
  ];
  return all.filter((point) => point.kind === 'connected' || !isAccountedFor(state, point));
}

/** What was counted once and used again since is counted again. */
function isAccountedFor(state: SessionState, point: Point): boolean {
  const come = state.procedure.steps.slice(0, state.at + 1);
  const counted = come.findLastIndex((step) => answerGiven(state, step.id, point) === 'affirm');
  return counted >= 0 && counted >= come.findLastIndex((step) => isUsedIn(state, step, point));
}

/** Whether a tool, a cap or plug, or a consumable was taken in a step. */
function isUsedIn(state: SessionState, step: Step, point: Point): boolean {
  switch (point.kind) {
    case 'tool':
      return (
        step.kind === 'tighten' && !doesNotApply(state, step) && [step.tool, step.runDown?.tool].includes(point.id)
      );
    case 'closure':
      return answerGiven(state, step.id, { kind: 'capped', opening: point.id }) === 'affirm';
    case 'consumable':
      return state.procedure.seals.some((seal) =>
        pointsOf(state.procedure, step).some(
          (each) => takenFor(seal, pointKey(each), answerGiven(state, step.id, each)) === point.id,
        ),
      );
    default:
      return false;
  }
}

const keyOf = (key: string): string => key.slice(key.indexOf('/') + 1);

/** How often each consumable was taken: as a new seal, or to coat one. One that no seal names counts as taken once. */
export function usedConsumables({ procedure, points }: SessionState): ReadonlyMap<string, number> {
  const named = new Set(procedure.seals.flatMap(({ coatedFrom, replacedBy }) => [coatedFrom, replacedBy]));
  const used = new Map(procedure.consumables.filter(({ id }) => !named.has(id)).map(({ id }) => [id, 1]));
  for (const [key, answer] of points) {
    for (const seal of procedure.seals) {
      const taken = takenFor(seal, keyOf(key), answer);
      if (taken !== undefined) used.set(taken, (used.get(taken) ?? 0) + 1);
    }
  }
  return used;
}

function takenFor(
  { id, coatedFrom, replacedBy }: SessionState['procedure']['seals'][number],
  key: string,
  answer: PointAnswer | undefined,
): string | undefined {
  if (key === `coated:${id}` && answer === 'affirm') return coatedFrom;
  return key === `seal:${id}` && answer === 'replace' ? replacedBy : undefined;
}

/** The points after one more was settled. */
export function withPoint(
  state: SessionState,
  { step, point: key, answer }: Extract<EventBody, { kind: 'point settled' }>,
): SessionState {
  const point = pointOf(key);
  const opened =
    point?.kind === 'capped'
      ? new Map([...state.opened, [point.opening, answer === 'affirm' ? 'capped' : 'open'] as const])
      : state.opened;
  return { ...state, opened, points: new Map([...state.points, [pointIn(step, key), answer]]) };
}
