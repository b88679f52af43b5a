import type { Hazard, Procedure, Step } from '../procedure/procedure.ts';
import { planOf, type Call, type Round } from './calls.ts';
import { isLeftOpen, type Deviation } from './deviation.ts';
import type { Disposition, Signature } from './closing.ts';
import type { Hold } from './hold.ts';
import { dayOf, type Instant } from './intent.ts';
import type { ObservedValue } from './observed.ts';
import type { People } from './event.ts';
import type { PreparedFact } from './preparation/fact.ts';
import type { PointAnswer } from './point.ts';
import type { FreshPacking } from './stock.ts';
import { callKey, standingIn, stillStanding, wantsOwnWord, type Reading } from './reading.ts';

export { openDoubt, wantsOwnWord, type Reading } from './reading.ts';

/** Everything known about a session after some of its events. Replay is the same fold, stopped early. */
export interface SessionState {
  /** As it is worked with: the file, with what was read off tools and measured before the first step. */
  readonly procedure: Procedure;
  readonly people: People;
  /** What was found and said before the first step, in the order of the record. */
  readonly prepared: readonly PreparedFact[];
  /** Everybody who has been the mechanic in this session: none of them can witness in it. */
  readonly doers: readonly string[];
  /** Everybody who has been the second person or a helper: they are not independent of the work either. */
  readonly helped: readonly string[];
  /** The calendar day ('YYYY-MM-DD') on which the session was opened, or was gone on with; null before it is opened. */
  readonly day: string | null;
  readonly phase: 'working' | 'standing by' | 'closed';
  /** Index of the current step in `procedure.steps`; the number of steps once all are done. */
  readonly at: number;
  readonly doneSteps: ReadonlySet<string>;
  /** Steps that do not apply to this unit. */
  readonly skippedSteps: ReadonlySet<string>;
  /** Answers to the questions about the unit. */
  readonly conditions: ReadonlyMap<string, boolean>;
  readonly acknowledged: ReadonlySet<string>;
  readonly answers: ReadonlyMap<string, string>;
  /** What was answered to the points of steps, by step and point. */
  readonly points: ReadonlyMap<string, PointAnswer>;
  /** Openings that came open, whether capped or not: what is open stays so where its step is taken back and then skipped. */
  readonly opened: ReadonlyMap<string, 'open' | 'capped'>;
  /** How often each consumable was taken, as a new seal or to coat one: also in steps that were taken back since. */
  readonly taken: ReadonlyMap<string, number>;
  /** Fresh packings that were fetched in the work, by the consumable: the newest of each. */
  readonly fetched: ReadonlyMap<string, FreshPacking>;
  /** What was used since it was counted last, by the keys of the points that count it. */
  readonly usedSince: ReadonlySet<string>;
  readonly doneFasteners: ReadonlySet<string>;
  /** Fasteners that turned in a check for turning, in the round that is under way. */
  readonly turned: ReadonlySet<string>;
  readonly readings: readonly Reading[];
  /** What was out of the ordinary, with what became of each. */
  readonly deviations: readonly Deviation[];
  /** The step that is done but for the word of its second person. */
  readonly witnessAsked: string | null;
  /** The step with which the second person did not agree, as long as it is worked again. */
  readonly objected: string | null;
  /** Values read off something else than a torque tool, with what became of each. */
  readonly observed: readonly ObservedValue[];
  /** When the wait of a step began (RFC 3339), by step. */
  readonly waits: ReadonlyMap<string, string>;
  /** What was decided about deviations, by the number of the event that each is. */
  readonly dispositions: ReadonlyMap<number, Disposition>;
  readonly signatures: readonly Signature[];
  /** The weight that is held in both hands; null where none is. */
  readonly hold: Hold | null;
  /** The second person was called to help, and the weight is not set down yet. */
  readonly helpCalled: boolean;
  /** The mechanic leaves: work stands by until another one takes over, or the same one goes on. */
  readonly handingOver: boolean;
  /** How long work was broken off, in milliseconds, where it is not yet said that all is as it was left. */
  readonly breakOf: number | null;
  /** When somebody last worked (RFC 3339); null before that. */
  readonly lastAt: string | null;
  /** How often the newest reading was asked about again because nobody answered. */
  readonly silences: number;
}

/** A warning of a step, as it stands among those that were acknowledged. */
export const warningKey = (step: string, index: number): string => `${step}/${index}`;

/** The step being worked on, or null when all are done. */
export const currentStep = (state: SessionState): Step | null => state.procedure.steps[state.at] ?? null;

/** A hazard that must be acknowledged before its step is worked. Cautions and notices are only shown and spoken. */
const wantsAcknowledgement = ({ signal }: Hazard): boolean => signal === 'danger' || signal === 'warning';

type Condition = Procedure['conditions'][number];

/** The question about the unit that must be answered before it is known whether the current step applies. */
export function openCondition(state: SessionState): Condition | null {
  const condition = currentStep(state)?.applies?.condition;
  if (condition === undefined || state.conditions.has(condition)) return null;
  return state.procedure.conditions.find(({ id }) => id === condition) ?? null;
}

/** Whether a step is known not to apply to this unit. */
export const doesNotApply = ({ conditions }: SessionState, { applies }: Step): boolean =>
  applies !== undefined && (conditions.get(applies.condition) ?? applies.is) !== applies.is;

/** The first warning of the current step that nobody has acknowledged yet; none while it is not known to apply. */
export function openWarning(state: SessionState): (Hazard & { readonly index: number }) | null {
  const step = currentStep(state);
  if (step === null || openCondition(state) || doesNotApply(state, step)) return null;
  const index = step.hazards.findIndex(
    (hazard, i) => wantsAcknowledgement(hazard) && !state.acknowledged.has(warningKey(step.id, i)),
  );
  const hazard = step.hazards[index];
  return hazard ? { ...hazard, index } : null;
}

/** What an answer to the current check has done before it can go on; null where none was given that stays. */
export function orderedByAnswer(state: SessionState): string | null {
  const step = currentStep(state);
  if (step?.kind !== 'check') return null;
  const answer = state.answers.get(step.id);
  return step.outcomes.find(({ id, then }) => id === answer && then === 'stay')?.text ?? null;
}

/** The reading that was read back and waits for its confirmation. */
export const pendingReading = (state: SessionState): Reading | null =>
  state.readings.find(({ status }) => status === 'captured') ?? null;

/**
 * What the word "correction" is about: the newest reading, or the one that it was to stand in for. Null where none was taken, and
 * where the newest was rejected or dropped: its fastener is called again, and a correction is a new value for it.
 */
export function correctable(state: SessionState): Reading | null {
  const newest = state.readings.at(-1);
  if (!newest || newest.status === 'confirmed') return newest ?? null;
  return stillStanding(state.readings, newest.seq);
}

/** The newest confirmed reading of all. */
export const lastConfirmed = (state: SessionState): Reading | null =>
  state.readings.findLast(({ status }) => status === 'confirmed') ?? null;

/** The reading that stands for one fastener in one pass: the newest that was confirmed. */
export const standingReading = (state: SessionState, step: string, pass: number, fastener: number): Reading | null =>
  standingIn(state.readings).get(callKey(step, pass, fastener)) ?? null;

/** Whether the mechanic's word was taken for a fastener in a pass that takes no value. */
export const isDone = (
  state: SessionState,
  { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>,
): boolean => state.doneFasteners.has(callKey(step, pass, fastener));

/**
 * Whether nothing more is wanted of a call: a confirmed reading inside its window, the word of the mechanic
 * where no value is taken, or a deviation with which it was left open.
 */
export function isSettled(
  state: SessionState,
  step: string,
  pass: Pick<Round, 'kind' | 'index'>,
  fastener: number,
): boolean {
  if (isDone(state, { step, pass: pass.index, fastener })) return true;
  if (isLeftOpen(state, step, pass, fastener)) return true;
  return standingReading(state, step, pass.index, fastener)?.verdict === 'in';
}

/** The calls of the current step that are still open, in the order in which they are made. */
export function openCalls(state: SessionState): readonly Call[] {
  const step = currentStep(state);
  if (step === null || openCondition(state) || doesNotApply(state, step)) return [];
  return planOf(state.procedure, step).calls.filter((call) => !isSettled(state, step.id, call.pass, call.fastener));
}

/** The fastener and pass called for now, or null where the step is not about fasteners. */
export const currentCall = (state: SessionState): Call | null => openCalls(state)[0] ?? null;

/** The call after the one that a reading of the current step is about. */
export const callAfter = (state: SessionState, { pass, fastener }: Pick<Reading, 'pass' | 'fastener'>): Call | null =>
  openCalls(state).find((call) => !(call.pass.index === pass && call.fastener === fastener)) ?? null;

/**
 * Whether going on confirms a reading. A value outside its window or in doubt always wants an explicit word, however the
 * step confirms, and so does the correction of a step that is already left.
 */
export function confirmsByGoingOn(state: SessionState, reading: Pick<Reading, 'step' | 'verdict' | 'doubts'>): boolean {
  const step = currentStep(state);
  return (
    step?.kind === 'tighten' && step.id === reading.step && step.confirm === 'by going on' && !wantsOwnWord(reading)
  );
}

/** Whether a point of a step was answered. */
export const hasPoints = ({ points }: SessionState, { id }: Step): boolean =>
  [...points.keys()].some((key) => key.startsWith(`${id}/`));

/** Whether nothing of a step was done, read, answered or reported yet. */
export const isUntouched = (state: SessionState, step: Step): boolean =>
  ![...state.readings, ...state.deviations, ...state.observed].some((each) => each.step === step.id) &&
  !state.waits.has(step.id) &&
  !hasPoints(state, step) &&
  !planOf(state.procedure, step).calls.some(({ pass, fastener }) =>
    isDone(state, { step: step.id, pass: pass.index, fastener }),
  );

/** Whether a nut turned in the round of a check that is under way. */
export const turnedInRound = (state: SessionState, step: Step, pass: Round): boolean =>
  pass.order.some((fastener) => state.turned.has(callKey(step.id, pass.index, fastener)));

/** Midnight passes while somebody works: from then on a calibration or a consumable may have run out. No day comes back. */
export const onItsDay = (state: SessionState, at: Instant): SessionState =>
  state.day !== null && dayOf(at) > state.day ? { ...state, day: dayOf(at) } : state;
