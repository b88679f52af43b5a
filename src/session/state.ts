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
    case 'step taken back':
      return {
        ...state,
        doneSteps: new Set([...state.doneSteps].filter((id) => id !== body.step)),
        at: indexOf(state, body.step),
      };
    case 'answered':
      return { ...state, answers: new Map([...state.answers, [body.step, body.outcome]]) };
    case 'fastener done':
      return {
        ...state,
        doneFasteners: new Set([...state.doneFasteners, callKey(body.step, body.pass, body.fastener)]),
      };
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
      const corrected = state.readings.find(({ seq }) => seq === body.of)?.corrects ?? null;
      const confirmed = mark(state.readings, body.of, () => 'confirmed');
      return { ...state, readings: mark(confirmed, corrected, () => 'replaced') };
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

/** Whether nothing more is wanted of a call: a confirmed reading inside its window, or the word of the mechanic where no value is taken. */
export function isSettled(state: SessionState, step: string, pass: PlannedPass, fastener: number): boolean {
  if (state.doneFasteners.has(callKey(step, pass.index, fastener))) return true;
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
