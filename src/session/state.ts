import type { Hazard, Procedure, Step } from '../procedure/procedure.ts';
import { planOf, type Call, type Round } from './calls.ts';
import type { EventBody, People, SessionEvent } from './event.ts';
import { callKey, correctedBy, mark, standingIn, wantsOwnWord, type Reading } from './reading.ts';

export { wantsOwnWord, type Reading } from './reading.ts';

/** Everything known about a session after some of its events. Replay is the same fold, stopped early. */
export interface SessionState {
  readonly procedure: Procedure;
  readonly people: People;
  /** The day (UTC, 'YYYY-MM-DD') on which the session was opened, or was gone on with; null before it is opened. */
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
  readonly doneFasteners: ReadonlySet<string>;
  /** Fasteners that turned in a check for turning, in the round that is under way. */
  readonly turned: ReadonlySet<string>;
  readonly readings: readonly Reading[];
  /** How often the newest reading was asked about again because nobody answered. */
  readonly silences: number;
}

const warningKey = (step: string, index: number): string => `${step}/${index}`;

/** The state before anything was done. */
export function begin(procedure: Procedure, people: People): SessionState {
  return {
    procedure,
    people,
    day: null,
    phase: 'working',
    at: 0,
    doneSteps: new Set(),
    skippedSteps: new Set(),
    conditions: new Map(),
    acknowledged: new Set(),
    answers: new Map(),
    doneFasteners: new Set(),
    turned: new Set(),
    readings: [],
    silences: 0,
  };
}

/** The state after one more event. The one code path for live work, for a reopened page and for replay. */
export function fold(state: SessionState, event: SessionEvent): SessionState {
  const { body } = event;
  switch (body.kind) {
    case 'opened':
    case 'reopened':
      return { ...state, day: dayOf(event) };
    case 'repeat asked':
    case 'asked':
    case 'refused':
      return state;
    case 'warning acknowledged':
      return { ...state, acknowledged: new Set([...state.acknowledged, warningKey(body.step, body.index)]) };
    case 'step done':
      return { ...state, doneSteps: new Set([...state.doneSteps, body.step]), at: indexOf(state, body.step) + 1 };
    case 'step taken back':
      return takenBack(state, indexOf(state, body.step));
    case 'condition answered':
      return { ...state, conditions: new Map([...state.conditions, [body.condition, body.is]]) };
    case 'step skipped':
      return { ...state, skippedSteps: new Set([...state.skippedSteps, body.step]), at: indexOf(state, body.step) + 1 };
    case 'answered':
      return { ...state, answers: new Map([...state.answers, [body.step, body.outcome]]) };
    case 'fastener done':
      return withFastenerDone(state, body);
    case 'timed out':
      return { ...state, silences: state.silences + 1 };
    case 'reading captured':
      return {
        ...state,
        silences: 0,
        // A reading still waiting for its confirmation gives way at once; a confirmed one stands until its correction is confirmed.
        readings: [
          ...mark(state.readings, body.corrects, (old) => (old.status === 'captured' ? 'replaced' : old.status)),
          { ...body, seq: event.seq, at: event.at, person: event.person, status: 'captured' },
        ],
      };
    case 'witnessed': {
      const witnessed = { person: body.person, reading: body.reading };
      return {
        ...state,
        readings: state.readings.map((each) => (each.seq === body.of ? { ...each, witnessed } : each)),
      };
    }
    case 'disputed':
      return { ...state, readings: mark(state.readings, body.of, () => 'disputed') };
    case 'reading confirmed':
      return confirmed(state, body.of);
    case 'reading rejected':
      return { ...state, readings: mark(state.readings, body.of, () => 'rejected') };
    case 'reading disregarded': {
      const after = { ...state, readings: mark(state.readings, body.of, () => 'disregarded') };
      const dropped = state.readings.find(({ seq }) => seq === body.of);
      return dropped?.status === 'confirmed' && dropped.basis.of === 'running torque'
        ? offItsSeat(after, dropped)
        : after;
    }
    case 'stood by':
      return { ...state, phase: 'standing by' };
    case 'continued':
      return { ...state, phase: 'working', day: dayOf(event) };
    case 'closed':
      return { ...state, phase: 'closed' };
  }
}

/** A session may be gone on with on another day, when a calibration has run out. */
const dayOf = ({ at }: SessionEvent): string => at.utc.slice(0, 10);

/** The steps after one that is taken back are worked again, with their warnings and answers; fasteners done by hand stay done. */
function takenBack(state: SessionState, at: number): SessionState {
  const { steps } = state.procedure;
  const before = steps.slice(0, at).map(({ id }) => id);
  const asked = steps.slice(0, at + 1).map(({ applies }) => applies?.condition);
  return {
    ...state,
    at,
    doneSteps: new Set(before.filter((id) => !state.skippedSteps.has(id))),
    skippedSteps: new Set(before.filter((id) => state.skippedSteps.has(id))),
    conditions: new Map([...state.conditions].filter(([condition]) => asked.includes(condition))),
    acknowledged: new Set([...state.acknowledged].filter((key) => before.some((id) => key.startsWith(`${id}/`)))),
    answers: new Map([...state.answers].filter(([id]) => before.includes(id))),
  };
}

/** The state once a reading is confirmed: those that it corrects give way. */
export function confirmed(state: SessionState, seq: number): SessionState {
  const readings = mark(state.readings, seq, () => 'confirmed');
  const after = {
    ...state,
    readings: correctedBy(state.readings, seq).reduce((all, old) => mark(all, old, () => 'replaced'), readings),
  };
  const reading = readings.find((each) => each.seq === seq);
  return reading?.basis.of === 'running torque' && reading.verdict !== 'in' ? offItsSeat(after, reading) : after;
}

/** A nut that is replaced, or measured anew, comes off its seat: what was done to it by hand is done again. */
function offItsSeat(state: SessionState, { step, fastener }: Pick<Reading, 'step' | 'fastener'>): SessionState {
  const isOfNut = (key: string): boolean => key.startsWith(`${step}/`) && key.endsWith(`/${fastener}`);
  return { ...state, doneFasteners: new Set([...state.doneFasteners].filter((key) => !isOfNut(key))) };
}

/** Marks a fastener as done. Where one turned in a check for turning, the end of its round opens the whole round again. */
function withFastenerDone(state: SessionState, body: Extract<EventBody, { kind: 'fastener done' }>): SessionState {
  const key = callKey(body.step, body.pass, body.fastener);
  const doneFasteners = new Set([...state.doneFasteners, key]);
  const turned = body.turned ? new Set([...state.turned, key]) : state.turned;
  const step = state.procedure.steps.find(({ id }) => id === body.step);
  const pass = step && planOf(state.procedure, step).passes.find(({ index }) => index === body.pass);
  const round = new Set(pass?.order.map((fastener) => callKey(body.step, body.pass, fastener)));
  const isOver = [...round].every((each) => doneFasteners.has(each));
  if (!isOver || ![...round].some((each) => turned.has(each))) return { ...state, doneFasteners, turned };
  const outside = (keys: ReadonlySet<string>): ReadonlySet<string> =>
    new Set([...keys].filter((each) => !round.has(each)));
  return { ...state, doneFasteners: outside(doneFasteners), turned: outside(turned) };
}

const indexOf = (state: SessionState, step: string): number => state.procedure.steps.findIndex(({ id }) => id === step);

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

/** The first warning of the current step that nobody has acknowledged yet; none while it is not known to apply. */
export function openWarning(state: SessionState): (Hazard & { readonly index: number }) | null {
  const step = currentStep(state);
  if (step === null || openCondition(state)) return null;
  const index = step.hazards.findIndex(
    (hazard, i) => wantsAcknowledgement(hazard) && !state.acknowledged.has(warningKey(step.id, i)),
  );
  const hazard = step.hazards[index];
  return hazard ? { ...hazard, index } : null;
}

/** The reading that was read back and waits for its confirmation. */
export const pendingReading = (state: SessionState): Reading | null =>
  state.readings.find(({ status }) => status === 'captured') ?? null;

/**
 * What the word "correction" is about: the newest reading, or the one that it stood in for. Null where none was taken, and
 * where the newest was rejected or dropped: its fastener is called again, and a correction is a new value for it.
 */
export function correctable(state: SessionState): Reading | null {
  const newest = state.readings.at(-1);
  if (!newest || newest.status === 'confirmed') return newest ?? null;
  const corrected = state.readings.find(({ seq, status }) => seq === newest.corrects && status === 'confirmed');
  return corrected ?? null;
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

/** Whether nothing more is wanted of a call: a confirmed reading inside its window, or the word of the mechanic where no value is taken. */
export function isSettled(state: SessionState, step: string, pass: Pick<Round, 'index'>, fastener: number): boolean {
  if (isDone(state, { step, pass: pass.index, fastener })) return true;
  return standingReading(state, step, pass.index, fastener)?.verdict === 'in';
}

/** The calls of the current step that are still open, in the order in which they are made. */
export function openCalls(state: SessionState): readonly Call[] {
  const step = currentStep(state);
  if (step === null || openCondition(state)) return [];
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

/** Whether nothing of a step was done or read yet. */
export const isUntouched = (state: SessionState, step: Step): boolean =>
  !state.readings.some((reading) => reading.step === step.id) &&
  !planOf(state.procedure, step).calls.some(({ pass, fastener }) =>
    isDone(state, { step: step.id, pass: pass.index, fastener }),
  );

/** Whether a nut turned in the round of a check that is under way. */
export const turnedInRound = (state: SessionState, step: Step, pass: Round): boolean =>
  pass.order.some((fastener) => state.turned.has(callKey(step.id, pass.index, fastener)));
