/** Answers to the points of a step, and to a check. */
import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import type { WorkingMeaning } from './intent.ts';
import { pointKey, pointsOf, type Point, type PointAnswer } from './point.ts';
import { unaccounted, withPoint } from './account.ts';
import { answerGiven } from './openings.ts';
import { currentPoint, sealsDecidedBy } from './points.ts';
import type { Refusal } from './refusal.ts';
import { failedCriterion, isNeverReused, isOfNewSeal, reuseRefusal, sealOf } from './seals.ts';
import { currentCall, currentStep, doesNotApply, openCondition, openWarning, type SessionState } from './state.ts';
import { comeTo, stepDone } from './steps.ts';
import { consumableRefusal } from './stock.ts';

type PointSettled = Extract<EventBody, { kind: 'point settled' }>;

/** What may be answered to a point. What is held wants its own word, so that no habit of saying yes lets go a weight. */
export function answersTo({ kind }: Point): readonly PointAnswer[] {
  switch (kind) {
    case 'seal':
      return ['reuse', 'replace'];
    case 'held':
      return ['held'];
    default:
      return ['affirm', 'negative'];
  }
}

type Answering = Extract<WorkingMeaning, { kind: 'affirm' | 'negative' | 'held' | 'answer' }>;

/** Takes an answer to the point that is asked. With the last one, a step that is nothing but its points is done. */
export function settlePoint(state: SessionState, step: Step, point: Point, meaning: Answering): Decision {
  const given = meaning.kind === 'answer' ? meaning.outcome : meaning.kind;
  const answer = answersTo(point).find((each) => each === given);
  if (answer === undefined) return refuse(pointRefusal(state, point));
  const refusal = answerRefusal(state, point, answer);
  if (refusal) return refuse(refusal);
  const settled = pointSettled(state, step, point, answer);
  const after = withPoint(state, settled);
  return accept(settled, ...(currentPoint(after) === null ? whatFollows(after, step) : []));
}

function whatFollows(after: SessionState, step: Step): readonly EventBody[] {
  if (doesNotApply(after, step)) return comeTo(after.procedure.steps.slice(after.at), after.conditions);
  const isAll = step.kind === 'open' || step.kind === 'close' || isDecided(after, step);
  const isWorked = (step.kind === 'tighten' || step.kind === 'loosen') && currentCall(after) === null;
  return isAll || isWorked ? stepDone(after, step) : [];
}

/** Whether a check was answered that goes on with it, and all that was to be asked of a new seal since is settled. */
function isDecided(after: SessionState, step: Step): boolean {
  const seals = sealsDecidedBy(after, step);
  const isAnswered =
    step.kind === 'check' &&
    step.outcomes.some(({ id, then }) => then === 'go on' && id === after.answers.get(step.id));
  const isSettled = seals.every((point) => answerGiven(after, step.id, point) !== undefined);
  return isAnswered && seals.length > 0 && isSettled && currentPoint(after) === null;
}

/** The answer to a check. Where it is about seals, it says what becomes of them as well. */
export function answerCheck(state: SessionState, step: Step, outcomeId: string): Decision {
  if (step.kind !== 'check') return refuse({ code: 'nothing to confirm' });
  const outcome = step.outcomes.find(({ id }) => id === outcomeId);
  if (!outcome) return refuse({ code: 'no such answer' });
  const fate = outcome.id === 'reuse' || outcome.id === 'replace' ? outcome.id : null;
  // Where the check is answered once more, because something else of its step was open, no other seal is taken.
  const seals = fate
    ? sealsDecidedBy(state, step).flatMap((point) =>
        answerGiven(state, step.id, point) === fate ? [] : [{ point, fate } as const],
      )
    : [];
  const isTaken = (point: Point): boolean => answerGiven(state, step.id, point) === 'replace';
  const taken = fate === 'reuse' ? seals.find(({ point }) => isTaken(point)) : undefined;
  // A new one was taken for it in this step: the old one does not come back by another word.
  if (taken?.point.kind === 'seal' && step.outcomes.some(({ id }) => id === 'replace'))
    return refuse({ code: 'seal not reusable', seal: taken.point.seal, failed: null });
  const { settled, refusal, after } = settleAll(state, step, seals);
  if (refusal) return refuse(refusal);
  const answered: EventBody = { kind: 'answered', step: step.id, outcome: outcome.id };
  // A new seal is looked at before the step is done.
  const isOver = outcome.then === 'go on' && !settled.some(({ part }) => part === 'new');
  return accept(...settled, answered, ...(isOver ? stepDone(after, step) : []));
}

interface Answer {
  readonly point: Point;
  readonly fate: PointAnswer;
}

/** Answers one after another: two new seals are not taken out of a stock of one. It ends at the first that cannot be. */
function settleAll(
  state: SessionState,
  step: Step,
  answers: readonly Answer[],
): { readonly settled: readonly PointSettled[]; readonly refusal: Refusal | null; readonly after: SessionState } {
  const settled: PointSettled[] = [];
  let after = state;
  for (const { point, fate } of answers) {
    const refusal = answerRefusal(after, point, fate);
    if (refusal) return { settled, refusal, after };
    const one = pointSettled(after, step, point, fate);
    settled.push(one);
    after = withPoint(after, one);
  }
  return { settled, refusal: null, after };
}

/** What is wanted, where something else was said. What is still to be accounted for is named whole: it all keeps the record open. */
export function pointRefusal(state: SessionState, point: Point): Refusal {
  const keys = unaccounted(state).map(pointKey);
  return ACCOUNTED.has(point.kind) && keys.includes(pointKey(point))
    ? { code: 'unaccounted', points: keys }
    : { code: 'point first', point: pointKey(point) };
}

const ACCOUNTED: ReadonlySet<Point['kind']> = new Set(['tool', 'closure', 'consumable']);

/** Why an answer cannot be: a seal that is spent cannot be used again, and nothing is taken that is past its day. */
export function answerRefusal(state: SessionState, point: Point, answer: PointAnswer): Refusal | null {
  if (point.kind === 'seal')
    return answer === 'reuse'
      ? reuseRefusal(state, point.seal)
      : consumableRefusal(state, sealOf(state, point.seal)?.replacedBy);
  if (point.kind !== 'coated' || answer !== 'affirm') return null;
  const refusal = consumableRefusal(state, sealOf(state, point.seal)?.coatedFrom);
  // A thin coat empties no packing.
  return refusal?.code === 'consumable used up' ? null : refusal;
}

/** Why a consumable that is asked for now may not be taken: a fresh one is entered. Null where nothing stands against it. */
export function spentConsumable(state: SessionState): Spent | null {
  const step = currentStep(state);
  const point = currentPoint(state);
  if (step === null) return null;
  const isOpen = point !== null || openWarning(state) !== null || openCondition(state) !== null;
  const seals = sealsDecidedBy(state, step).filter((each) => answerGiven(state, step.id, each) !== 'replace');
  const asked = point ? [point] : isOpen ? [] : seals;
  const { refusal } = settleAll(
    state,
    step,
    asked.map((each) => ({ point: each, fate: TAKES[each.kind] ?? 'negative' })),
  );
  return isSpent(refusal) ? refusal : null;
}

/** The answers that take a consumable. */
const TAKES: Readonly<Partial<Record<Point['kind'], PointAnswer>>> = { seal: 'replace', coated: 'affirm' };

type Spent = Extract<Refusal, { code: 'consumable expired' | 'consumable used up' }>;
const isSpent = (refusal: Refusal | null): refusal is Spent =>
  refusal?.code === 'consumable expired' || refusal?.code === 'consumable used up';

/** The answer as it goes into the record; with a new seal, why it was taken and its part number. */
export function pointSettled(state: SessionState, step: Step, point: Point, answer: PointAnswer): PointSettled {
  const settled = { kind: 'point settled', step: step.id, point: pointKey(point), answer } as const;
  if (point.kind === 'criterion') return isOfNewSeal(state, step, point.seal) ? { ...settled, part: 'new' } : settled;
  if (point.kind !== 'seal' || answer !== 'replace') return settled;
  const isLookedAt = pointsOf(state.procedure, step).some(
    (each) => each.kind === 'criterion' && each.seal === point.seal,
  );
  const seal = sealOf(state, point.seal);
  const failed = failedCriterion(state, point.seal);
  const because = isNeverReused(state, point.seal) ? 'never used again' : failed === null ? 'chosen' : 'failed';
  const part = isLookedAt ? ({ part: 'new' } as const) : {};
  return { ...settled, ...part, replaced: { because, failed, partNumber: seal?.partNumber ?? null } };
}
