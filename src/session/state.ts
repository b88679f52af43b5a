import type { Hazard, Procedure, Step } from '../procedure/procedure.ts';
import type { PlannedPass } from '../tightening/passes.ts';
import { planOf, type Call } from './calls.ts';
import type { EventBody, People, SessionEvent } from './event.ts';
import type { Instant } from './intent.ts';

/** A reading with what became of it. Every reading ever captured stays in the state, in the order of the record. */
export interface Reading extends Extract<EventBody, { kind: 'reading captured' }> {
  readonly seq: number;
  readonly at: Instant;
  readonly person: string;
  readonly status: 'captured' | 'confirmed' | 'rejected' | 'disregarded' | 'replaced';
}

/** Everything known about a session after some of its events. Replay is the same fold, stopped early. */
export interface SessionState {
  readonly procedure: Procedure;
  readonly people: People;
  readonly phase: 'working' | 'standing by' | 'closed';
  /** Index of the current step in `procedure.steps`; the number of steps once all are done. */
  readonly at: number;
  readonly doneSteps: ReadonlySet<string>;
  readonly acknowledged: ReadonlySet<string>;
  readonly answers: ReadonlyMap<string, string>;
  readonly doneFasteners: ReadonlySet<string>;
  /** Fasteners that turned in a check for turning, in the round that is under way. */
  readonly turned: ReadonlySet<string>;
  readonly readings: readonly Reading[];
}

const callKey = (step: string, pass: number, fastener: number): string => `${step}/${pass}/${fastener}`;
const warningKey = (step: string, index: number): string => `${step}/${index}`;

/** The state before anything was done. */
export function begin(procedure: Procedure, people: People): SessionState {
  return {
    procedure,
    people,
    phase: 'working',
    at: 0,
    doneSteps: new Set(),
    acknowledged: new Set(),
    answers: new Map(),
    doneFasteners: new Set(),
    turned: new Set(),
    readings: [],
  };
}

/** The state after one more event. The one code path for live work, for a reopened page and for replay. */
export function fold(state: SessionState, event: SessionEvent): SessionState {
  const { body } = event;
  switch (body.kind) {
    case 'opened':
    case 'reopened':
    case 'repeat asked':
    case 'refused':
      return state;
    case 'warning acknowledged':
      return { ...state, acknowledged: new Set([...state.acknowledged, warningKey(body.step, body.index)]) };
    case 'step done':
      return { ...state, doneSteps: new Set([...state.doneSteps, body.step]), at: indexOf(state, body.step) + 1 };
    case 'step taken back': {
      // What was done after it is gone through again: it may rest on what was taken back.
      const at = indexOf(state, body.step);
      return { ...state, doneSteps: new Set(state.procedure.steps.slice(0, at).map(({ id }) => id)), at };
    }
    case 'answered':
      return { ...state, answers: new Map([...state.answers, [body.step, body.outcome]]) };
    case 'fastener done':
      return withFastenerDone(state, body);
    case 'reading captured':
      return {
        ...state,
        // A reading still waiting for its confirmation gives way at once; a confirmed one stands until its correction is confirmed.
        readings: [
          ...mark(state.readings, body.corrects, (old) => (old.status === 'captured' ? 'replaced' : old.status)),
          { ...body, seq: event.seq, at: event.at, person: event.person, status: 'captured' },
        ],
      };
    case 'reading confirmed': {
      const corrected = correctedBy(state.readings, body.of);
      const readings = mark(state.readings, body.of, () => 'confirmed');
      return { ...state, readings: corrected.reduce((all, seq) => mark(all, seq, () => 'replaced'), readings) };
    }
    case 'reading rejected':
      return { ...state, readings: mark(state.readings, body.of, () => 'rejected') };
    case 'reading disregarded':
      return { ...state, readings: mark(state.readings, body.of, () => 'disregarded') };
    case 'stood by':
      return { ...state, phase: 'standing by' };
    case 'continued':
      return { ...state, phase: 'working' };
    case 'closed':
      return { ...state, phase: 'closed' };
  }
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

/** The readings that a reading stands in for: the one it corrects, the one that this one corrected, and so on. */
function correctedBy(readings: readonly Reading[], seq: number): readonly number[] {
  const earlier = readings.find((reading) => reading.seq === seq)?.corrects ?? null;
  // Only backwards: a record from elsewhere must not lead round in a circle.
  return earlier === null || earlier >= seq ? [] : [earlier, ...correctedBy(readings, earlier)];
}

function mark(
  readings: readonly Reading[],
  seq: number | null,
  status: (old: Reading) => Reading['status'],
): readonly Reading[] {
  return readings.map((reading) => (reading.seq === seq ? { ...reading, status: status(reading) } : reading));
}

const indexOf = (state: SessionState, step: string): number => state.procedure.steps.findIndex(({ id }) => id === step);

/** The step being worked on, or null when all are done. */
export const currentStep = (state: SessionState): Step | null => state.procedure.steps[state.at] ?? null;

/** A hazard that must be acknowledged before its step is worked. Cautions and notices are only shown and spoken. */
const wantsAcknowledgement = ({ signal }: Hazard): boolean => signal === 'danger' || signal === 'warning';

/** The first warning of the current step that nobody has acknowledged yet. */
export function openWarning(state: SessionState): (Hazard & { readonly index: number }) | null {
  const step = currentStep(state);
  if (step === null) return null;
  const index = step.hazards.findIndex(
    (hazard, i) => wantsAcknowledgement(hazard) && !state.acknowledged.has(warningKey(step.id, i)),
  );
  const hazard = step.hazards[index];
  return hazard ? { ...hazard, index } : null;
}

/** The reading that was read back and waits for its confirmation. */
export const pendingReading = (state: SessionState): Reading | null =>
  state.readings.find(({ status }) => status === 'captured') ?? null;

/** The newest confirmed reading of all, which a correction is about. */
export const lastConfirmed = (state: SessionState): Reading | null =>
  state.readings.findLast(({ status }) => status === 'confirmed') ?? null;

/** The reading that stands for one fastener in one pass. */
export const standingReading = (state: SessionState, step: string, pass: number, fastener: number): Reading | null =>
  state.readings.findLast(
    (reading) =>
      reading.status === 'confirmed' && reading.step === step && reading.pass === pass && reading.fastener === fastener,
  ) ?? null;

/** Whether the mechanic's word was taken for a fastener in a pass that takes no value. */
export const isDone = (
  state: SessionState,
  { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>,
): boolean => state.doneFasteners.has(callKey(step, pass, fastener));

/** Whether nothing more is wanted of a call: a confirmed reading inside its window, or the word of the mechanic where no value is taken. */
export function isSettled(state: SessionState, step: string, pass: PlannedPass, fastener: number): boolean {
  if (isDone(state, { step, pass: pass.index, fastener })) return true;
  return standingReading(state, step, pass.index, fastener)?.verdict === 'in';
}

/** The calls of the current step that are still open, in the order in which they are made. */
export function openCalls(state: SessionState): readonly Call[] {
  const step = currentStep(state);
  if (step === null) return [];
  return planOf(state.procedure, step).calls.filter((call) => !isSettled(state, step.id, call.pass, call.fastener));
}

/** The fastener and pass called for now, or null where the step is not about fasteners. */
export const currentCall = (state: SessionState): Call | null => openCalls(state)[0] ?? null;

/** The call after the one that a reading of the current step is about. */
export const callAfter = (state: SessionState, { pass, fastener }: Pick<Reading, 'pass' | 'fastener'>): Call | null =>
  openCalls(state).find((call) => !(call.pass.index === pass && call.fastener === fastener)) ?? null;

/**
 * Whether going on confirms a reading. A value outside its window always wants an explicit word, however the step
 * confirms, and so does the correction of a step that is already left.
 */
export function confirmsByGoingOn(state: SessionState, reading: Pick<Reading, 'step' | 'verdict'>): boolean {
  const step = currentStep(state);
  return (
    step?.kind === 'tighten' && step.id === reading.step && step.confirm === 'by going on' && reading.verdict === 'in'
  );
}

/** Whether a nut turned in the round of a check that is under way. */
export const turnedInRound = (state: SessionState, step: Step, pass: PlannedPass): boolean =>
  pass.order.some((fastener) => state.turned.has(callKey(step.id, pass.index, fastener)));
