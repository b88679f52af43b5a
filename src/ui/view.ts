import { sayTakenBack } from '../language/announce.ts';
import { answerTo } from '../language/answer.ts';
import { askAboutDoubt, sayStands } from '../language/read-back.ts';
import { explainBeforeWork } from '../language/explain.ts';
import { sayHelp } from '../language/say-hold.ts';
import { askPoint } from '../language/say-point.ts';
import { WRITTEN } from '../language/say.ts';
import { sayDuration } from '../language/standing.ts';
import type { Hazard, Step } from '../procedure/procedure.ts';
import { openDeviation } from '../session/deviation.ts';
import { openReason, type OpenReason } from '../session/reasons.ts';
import { stillOpen } from '../session/closing.ts';
import type { EventBody } from '../session/event.ts';
import { awaitsHold, heldStep } from '../session/hold.ts';
import { witnessIn } from '../session/people.ts';
import { openings } from '../session/openings.ts';
import { currentPoint, pointsLeft } from '../session/points.ts';
import {
  currentCall,
  currentStep,
  doesNotApply,
  openCondition,
  openWarning,
  orderedByAnswer,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { awaitsStepWitness, wantsInspector } from '../session/step-witness.ts';
import { awaitsWitness, isKept } from '../session/witness.ts';
import { workView as words } from '../words/work-view.ts';
import { sayWhyRefused } from './describe-refusal.ts';
import { callView, type CallView } from './view/call.ts';
import { closingView, deviationText, pointText, valueText, type ClosingView } from './view/closing.ts';
import { mapView, type MapView } from './view/map.ts';
import { measureView, type MeasureView } from './view/measure.ts';
import { mustReplace, onlyAnswer } from './view/only.ts';
import { spentView, type SpentView } from './view/spent.ts';

/** What the work screen shows. A pure function of the state and the newest event, for live work and for replay alike. */
export interface WorkView {
  /** The answer to what was asked last, in sentences; null once anything else has happened. */
  readonly answer: readonly string[] | null;
  /** Why what was meant last was not taken; null once anything else has happened. */
  readonly refused: string | null;
  /** What was taken back or came to nothing just now, and what stands; null once anything else has happened. */
  readonly undone: string | null;
  readonly step: Step | null;
  readonly stepNumber: number;
  readonly stepCount: number;
  /** Titles of the steps just before this one that were skipped because they do not apply. */
  readonly skipped: readonly string[];
  /** The question about the unit that is open. */
  readonly question: string | null;
  readonly warning: Hazard | null;
  /** What the answer to a check has done first, while the check stays open. */
  readonly ordered: string | null;
  readonly call: CallView | null;
  /** The reading that was read back; null while its value is kept from everybody. */
  readonly pending: Reading | null;
  /** The fastener whose value is neither shown nor spoken: its witness is to read, or, where it is in doubt, both again. */
  readonly awaitsWitness: number | null;
  /** What is asked about the reading that waits, where it is in doubt, instead of whether it is correct. */
  readonly doubt: string | null;
  /** The weight, the lift with its limits, and the container: at the first step and where the component is held. */
  readonly load: readonly string[];
  readonly map: MapView | null;
  /** What is read at this step off something else than a torque tool. */
  readonly measure: MeasureView | null;
  /** What is left before the record is closed. */
  readonly closing: ClosingView | null;
  /** The step wants an inspector who gives a name. */
  readonly wantsInspector: boolean;
  /** The weight that is held in both hands. */
  readonly held: HeldView | null;
  /** The mechanic is to say that they hold it. */
  readonly awaitsHold: boolean;
  /** Who is called to help, large; null while nobody is. */
  readonly help: string | null;
  readonly phase: SessionState['phase'];
  /** What the second person is to look at before the work goes on. */
  readonly toWitness: string | null;
  /** How long work was broken off, in words, while it is asked whether all is as it was left. */
  readonly breakOf: string | null;
  /** The deviation whose reason is wanted, or given and to be confirmed. */
  readonly deviation: { readonly what: string; readonly reason: string | null } | null;
  /** The second person did not agree with this step. */
  readonly objected: boolean;
  readonly handingOver: boolean;
  readonly people: SessionState['people'];
  /** Who can witness; null where nobody can. */
  readonly witness: string | null;
  /**
   * The point of the step that is asked, how many are still to be asked, this one with them, the work that it is about (null
   * for a step that does not apply to this unit), and the one answer that it can have.
   */
  readonly point: {
    readonly question: string;
    readonly left: number;
    readonly work: string | null;
    readonly only: ReturnType<typeof onlyAnswer>;
  } | null;
  /** Why the seal that a check is about cannot be used again, and what to say; null where it may be. */
  readonly mustReplace: string | null;
  /** The consumable that is asked for and may not be taken, while a fresh one is to be entered. */
  readonly spent: SpentView | null;
  /** How many openings stand open or capped; null where the procedure has none. */
  readonly openings: string | null;
  /** What is still to be decided about, or was put off, each as a line. */
  readonly openPoints: readonly string[];
}

export interface HeldView {
  /** When it was taken (RFC 3339). */
  readonly since: string;
  /** The call that was said last; null before the first. */
  readonly call: string | null;
  readonly orientation: string | null;
  /** The calls that are still to come. */
  readonly ahead: readonly string[];
}

export function workView(state: SessionState, newest: EventBody | null = null): WorkView {
  const step = currentStep(state);
  const waiting = pendingReading(state);
  const hidden = waiting && isKept(state, waiting) ? waiting : null;
  const pending = hidden ? null : waiting;
  const call = currentCall(state);
  const reason = openReason(state);
  return {
    answer: newest?.kind === 'asked' ? answerView(state, newest) : null,
    refused: newest?.kind === 'refused' ? sayWhyRefused(newest.reason, state) : null,
    undone: newest && !waiting ? undoneView(state, newest) : null,
    step,
    stepNumber: Math.min(state.at + 1, state.procedure.steps.length),
    stepCount: state.procedure.steps.length,
    skipped: skippedBefore(state),
    question: openCondition(state)?.question ?? null,
    warning: openWarning(state),
    ordered: orderedByAnswer(state),
    call: step && call ? callView(state, step, call) : null,
    pending,
    awaitsWitness: hidden?.fastener ?? null,
    // As long as the witness has not read, a doubt would tell what the value is like.
    doubt: waiting && !awaitsWitness(state, waiting) ? askAboutDoubt(state, waiting) : null,
    load: step && (state.at === 0 || step.kind === 'hold') ? explainBeforeWork(state.procedure) : [],
    map: step ? mapView(state, step, call) : null,
    measure: step?.kind === 'measure' ? measureView(state, step) : null,
    closing: closingView(state),
    wantsInspector: step !== null && awaitsStepWitness(state) && wantsInspector(step),
    held: heldView(state),
    awaitsHold: step !== null && awaitsHold(state) && openWarning(state) === null && openCondition(state) === null,
    help: state.helpCalled ? sayHelp(state) : null,
    phase: state.phase,
    toWitness: step && awaitsStepWitness(state) ? (step.kind === 'witness' ? step.what : step.title) : null,
    breakOf: state.breakOf === null || state.phase === 'standing by' ? null : sayDuration(state.breakOf),
    deviation: reason && { what: reasonOf(state, reason), reason: reason.reason },
    objected: step !== null && state.objected === step.id,
    handingOver: state.handingOver,
    people: state.people,
    witness: witnessIn(state),
    openPoints: stillOpen(state).map((point) => pointText(state, point)),
    point: pointView(state),
    mustReplace: mustReplace(state),
    spent: state.phase === 'working' && state.breakOf === null && reason === null ? spentView(state, newest) : null,
    openings: openingsLine(state),
  };
}

/** What "say slowly" wants to hear once more stands there already. */
function answerView(state: SessionState, { question }: Extract<EventBody, { kind: 'asked' }>): WorkView['answer'] {
  const answer = answerTo(state, question, WRITTEN);
  return answer.length > 0 ? answer : null;
}

/** A step that was taken back, or the value that stands where its correction came to nothing. */
function undoneView(state: SessionState, newest: EventBody): string | null {
  if (newest.kind === 'step taken back') return sayTakenBack(state, newest);
  return 'of' in newest ? (sayStands(state, newest.of, WRITTEN)[0] ?? null) : null;
}

/** What the reason is wanted of. */
function reasonOf(state: SessionState, { value }: OpenReason): string {
  const deviation = openDeviation(state);
  if (deviation) return deviationText(state, deviation);
  return value ? valueText(state, value) : '';
}

function pointView(state: SessionState): WorkView['point'] {
  const point = currentPoint(state);
  const step = currentStep(state);
  const work = step && !doesNotApply(state, step) ? step.text : null;
  return point && { question: askPoint(state, point), left: pointsLeft(state), work, only: onlyAnswer(state, point) };
}

/** "2 openings capped, 1 open". What was closed and what was never opened are not counted. */
export function openingsLine(state: SessionState): string | null {
  if (state.procedure.openings.length === 0) return null;
  const standing = [...openings(state).values()];
  const count = (wanted: 'capped' | 'open'): number => standing.filter((is) => is === wanted).length;
  const [capped, open] = [count('capped'), count('open')];
  if (capped === 0 && open === 0) return standing.includes('connected') ? words.allConnected : words.noneOpened;
  return words.openings(capped, open);
}

function heldView(state: SessionState): HeldView | null {
  const step = heldStep(state);
  if (!step || !state.hold) return null;
  const { since, called } = state.hold;
  return {
    since,
    call: step.calls[called - 1] ?? null,
    orientation: step.orientation ?? null,
    ahead: step.calls.slice(called),
  };
}

function skippedBefore({ procedure, skippedSteps, at }: SessionState): readonly string[] {
  const before = procedure.steps.slice(0, at);
  const worked = before.findLastIndex(({ id }) => !skippedSteps.has(id));
  return before.slice(worked + 1).map(({ title }) => title);
}
