/** What nobody has accounted for yet: nothing is closed before. */
import type { Step } from '../procedure/procedure.ts';
import type { EventBody } from './event.ts';
import { answerGiven, openings } from './openings.ts';
import { pointIn, pointKey, pointOf, pointsOf, type Point, type PointAnswer } from './point.ts';
import { doesNotApply, type SessionState } from './state.ts';
import { takenBy, usedAnyhow } from './stock.ts';

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
  const used = new Set([...usedAnyhow(procedure), ...state.taken.keys()]);
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

/** What was counted once and used again since is counted again, also where the step that used it was taken back. */
function isAccountedFor(state: SessionState, point: Point): boolean {
  if (state.usedSince.has(pointKey(point))) return false;
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
      return pointsOf(state.procedure, step).some(
        (each) => takenBy(state.procedure, pointKey(each), answerGiven(state, step.id, each)) === point.id,
      );
    default:
      return false;
  }
}

/** The points after one more was settled. */
export function withPoint(
  state: SessionState,
  { step, point: key, answer, part }: Extract<EventBody, { kind: 'point settled' }>,
): SessionState {
  const point = pointOf(key);
  const opened =
    point?.kind === 'capped'
      ? new Map([...state.opened, [point.opening, answer === 'affirm' ? 'capped' : 'open'] as const])
      : state.opened;
  const id = takenBy(state.procedure, key, answer);
  const taken = id === undefined ? state.taken : new Map([...state.taken, [id, (state.taken.get(id) ?? 0) + 1]]);
  const again = part === 'new' ? openedAgain(key, answer).map((each) => pointIn(step, each)) : [];
  const isOpenAgain = (each: string): boolean =>
    again.some((open) => each === open || (open.endsWith(':') && each.startsWith(open)));
  const kept = [...state.points].filter(([each]) => !isOpenAgain(each));
  const points = new Map([...kept, [pointIn(step, key), answer]]);
  return { ...state, opened, taken, points, usedSince: usedAfter(state, key, answer) };
}

/**
 * What an answer about a new seal opens again: what is looked for in it (the beginning of those keys) and done to it, once it
 * was taken; and what becomes of it, where it failed.
 */
function openedAgain(key: string, answer: PointAnswer): readonly string[] {
  const point = pointOf(key);
  if (point?.kind === 'seal' && answer === 'replace')
    return [
      `criterion:${point.seal}:`,
      ...(['coated', 'seated'] as const).map((kind) => pointKey({ kind, seal: point.seal })),
    ];
  return point?.kind === 'criterion' && answer === 'negative' ? [pointKey({ kind: 'seal', seal: point.seal })] : [];
}

/** A cap that was fitted and a consumable that was taken are to be counted; what was counted is no longer. */
function usedAfter({ procedure, usedSince }: SessionState, key: string, answer: PointAnswer): ReadonlySet<string> {
  const point = pointOf(key);
  const consumable = takenBy(procedure, key, answer);
  if (consumable !== undefined) return new Set([...usedSince, pointKey({ kind: 'consumable', id: consumable })]);
  if (answer !== 'affirm') return usedSince;
  if (point?.kind === 'capped') return new Set([...usedSince, pointKey({ kind: 'closure', id: point.opening })]);
  return usedSince.has(key) ? new Set([...usedSince].filter((each) => each !== key)) : usedSince;
}

/** The state after a torque tool was used: it is to be counted, where the procedure counts it. */
export function withToolUsed(state: SessionState, tool: string): SessionState {
  const key = pointKey({ kind: 'tool', id: tool });
  return state.usedSince.has(key) ? state : { ...state, usedSince: new Set([...state.usedSince, key]) };
}
