import { questionAbout } from '../language/doubt.ts';
import { explainBeforeWork, explainPlan, explainSetting, explainTool } from '../language/explain.ts';
import { sayHelp } from '../language/say-hold.ts';
import { labelOf, sentence } from '../language/say.ts';
import { askPoint } from '../language/say-point.ts';
import { sayRefusal } from '../language/say-refusal.ts';
import { sayDuration } from '../language/standing.ts';
import { minimumRunningTorque } from '../procedure/lead-hand.ts';
import type { Hazard, Procedure, Step, StepOf } from '../procedure/procedure.ts';
import { forbids } from '../procedure/tool-reasons.ts';
import { planOf, RUNNING_ROUND, runningToolOf, toolFor, type Call } from '../session/calls.ts';
import { isLeftOpen, openDeviation } from '../session/deviation.ts';
import { openPoints, statedOnCall, toDoAbout, type FastenerPoint, type OpenPoint } from '../session/deviations.ts';
import { beforeClosing, isClosing, type SignatureRole } from '../session/closing.ts';
import { isOutside, outsideValue, pendingValue, type ObservedValue } from '../session/observed.ts';
import { awaitsHold, heldStep } from '../session/hold.ts';
import { witnessIn } from '../session/people.ts';
import { currentPoint, openings, pointsLeft } from '../session/points.ts';
import { jointRefusal } from '../session/seals.ts';
import { settingOf, type Setting } from '../session/setting.ts';
import {
  currentCall,
  currentStep,
  isSettled,
  isUntouched,
  openCondition,
  openWarning,
  pendingReading,
  standingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { awaitsStepWitness, wantsInspector } from '../session/step-witness.ts';
import { toolTroubles } from '../session/tools.ts';
import { awaitsWitness } from '../session/witness.ts';
import { layOut, type Position } from '../tightening/pattern.ts';
import type { TorqueWindow } from '../tightening/verdict.ts';
import { display, displayWindow } from '../units/index.ts';
import { placesOf } from '../procedure/places.ts';

/** How a fastener stands in the pass that is shown. */
export type Standing = 'open' | 'next' | 'done' | 'doubt';

export interface MapView {
  readonly name: string;
  readonly positions: readonly (Position & { readonly standing: Standing })[];
}

/** What the work screen shows. A pure function of the state, for live work and for replay alike. */
export interface WorkView {
  readonly step: Step | null;
  readonly stepNumber: number;
  readonly stepCount: number;
  /** Titles of the steps just before this one that were skipped because they do not apply. */
  readonly skipped: readonly string[];
  /** The question about the unit that is open. */
  readonly question: string | null;
  readonly warning: Hazard | null;
  readonly call: CallView | null;
  /** The reading that was read back; null while its value is kept from everybody. */
  readonly pending: Reading | null;
  /** The fastener whose witness is to read, before the first value is shown or spoken. */
  readonly awaitsWitness: number | null;
  /** What is asked about the reading that waits, where it is in doubt. */
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
  /** The point of the step that is asked, and how many are still to be asked, this one with them. */
  readonly point: { readonly question: string; readonly left: number } | null;
  /** How many openings stand open or capped; null where the procedure has none. */
  readonly openings: string | null;
  /** What is to be decided about after the work, each as a line. */
  readonly openPoints: readonly string[];
}

export interface MeasureView {
  readonly what: string;
  readonly unit: string;
  /** "40 to 60"; null where the procedure has none. */
  readonly window: string | null;
  readonly wait: {
    readonly minutes: number;
    /** When it is over, in milliseconds since 1970; null before it has begun. */
    readonly over: number | null;
  } | null;
  /** The value that was read back, with its verdict in words. */
  readonly pending: { readonly value: string; readonly unit: string; readonly verdict: string } | null;
  readonly isOutside: boolean;
  /** "70 mm", where that was confirmed and is outside. */
  readonly outside: string | null;
}

export type ClosingView =
  | { readonly kind: 'disposition'; readonly of: number; readonly text: string }
  /** `who` is the name that is wanted; null where anybody else's is. */
  | { readonly kind: 'signature'; readonly role: SignatureRole; readonly who: string | null };

export interface HeldView {
  /** When it was taken (RFC 3339). */
  readonly since: string;
  /** The call that was said last; null before the first. */
  readonly call: string | null;
  readonly orientation: string | null;
  /** The calls that are still to come. */
  readonly ahead: readonly string[];
}

export interface CallView {
  readonly label: string;
  readonly fastener: number;
  /** "Pass 1 of 2: first", or the round before the passes. */
  readonly round: string;
  /** What to set, as decimal text and unit; null where no torque is reached for. */
  readonly target: { readonly value: string; readonly unit: string } | null;
  /** What stands in place of a value to set: something is read, or done by hand. */
  readonly instead: 'read it' | 'by hand';
  /** At the wrench, in the unit of the tool, limits rounded inwards. */
  readonly window: string | null;
  /** What a running torque must reach, where a minimum is stated. */
  readonly minimum: string | null;
  readonly why: string | null;
  readonly tool: string | null;
  /** What was read of this fastener in this round and is not inside: it stays in sight until a reading is. */
  readonly outside: Reading | null;
  readonly left: number;
  /** What the procedure has done about this fastener, because of its deviation or of a value over its window. */
  readonly toDo: string | null;
  /** How the step is gone about, as long as nothing of it is done. */
  readonly plan: string | null;
  /** What speaks against the tools; the work stops where one of them may not be used. */
  readonly troubles: readonly { readonly text: string; readonly stops: boolean }[];
}

export function workView(state: SessionState): WorkView {
  const step = currentStep(state);
  const waiting = pendingReading(state);
  const hidden = waiting && awaitsWitness(state, waiting) ? waiting : null;
  const pending = hidden ? null : waiting;
  const call = currentCall(state);
  const [doubt] = pending?.doubts ?? [];
  const deviation = openDeviation(state);
  return {
    step,
    stepNumber: Math.min(state.at + 1, state.procedure.steps.length),
    stepCount: state.procedure.steps.length,
    skipped: skippedBefore(state),
    question: openCondition(state)?.question ?? null,
    warning: openWarning(state),
    call: step && call ? callView(state, step, call) : null,
    pending,
    awaitsWitness: hidden?.fastener ?? null,
    doubt: doubt === undefined ? null : questionAbout(doubt),
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
    deviation: deviation && { what: placed(state, deviation), reason: deviation.reason },
    objected: step !== null && state.objected === step.id,
    handingOver: state.handingOver,
    people: state.people,
    witness: witnessIn(state),
    openPoints: openPoints(state).map((point) => pointText(state, point)),
    point: pointView(state),
    openings: openingsLine(state),
  };
}

/** What is to be decided about, and what was decided. */
function pointText(state: SessionState, point: OpenPoint): string {
  const decided = state.dispositions.get(point.seq);
  return `${nameOf(state, point)}${decided ? `: ${decided.what}, by ${decided.by}` : ''}`;
}

function nameOf(state: SessionState, point: OpenPoint): string {
  if (point.of === 'fastener') return placed(state, point);
  const { value, unit, verdict } = point.value;
  const title = state.procedure.steps.find(({ id }) => id === point.step)?.title ?? point.step;
  return `${title}: ${value} ${unit}, ${verdict} the window, left open`;
}

function pointView(state: SessionState): WorkView['point'] {
  const point = currentPoint(state);
  return point && { question: askPoint(state, point), left: pointsLeft(state) };
}

/** "2 openings capped, 1 open". What was closed and what was never opened are not counted. */
export function openingsLine(state: SessionState): string | null {
  if (state.procedure.openings.length === 0) return null;
  const standing = [...openings(state).values()];
  const [capped, open] = (['capped', 'open'] as const).map((each) => standing.filter((is) => is === each).length);
  if (!capped && !open) return standing.includes('connected') ? 'All openings connected' : 'No opening opened yet';
  return `${capped} ${capped === 1 ? 'opening' : 'openings'} capped, ${open} open`;
}

/** "Stud 4, pass 1: damage, left open". */
function placed(
  state: SessionState,
  { step, pass, fastener, what, leftOpen }: Pick<FastenerPoint, 'step' | 'pass' | 'fastener' | 'what' | 'leftOpen'>,
): string {
  const round = pass === 0 ? 'running torque' : `pass ${pass}`;
  return sentence(`${labelOf(state, step)} ${fastener}, ${round}: ${what}${leftOpen ? ', left open' : ''}`);
}

function measureView(state: SessionState, step: StepOf<'measure'>): MeasureView {
  const { what, unit, window, waitMinutes } = step;
  const since = state.waits.get(step.id);
  const value = pendingValue(state);
  const outside = outsideValue(state, step.id);
  return {
    what: sentence(what),
    unit,
    window: window ? `${window.min} to ${window.max}` : null,
    wait:
      waitMinutes === undefined
        ? null
        : { minutes: waitMinutes, over: since === undefined ? null : Date.parse(since) + waitMinutes * 60_000 },
    pending: value && { value: value.value, unit: value.unit, verdict: VERDICT_WORDS[value.verdict] },
    isOutside: value !== null && isOutside(value),
    outside: outside && `${outside.value} ${outside.unit}`,
  };
}

const VERDICT_WORDS: Readonly<Record<ObservedValue['verdict'], string>> = {
  in: 'inside the window',
  under: '▼ under the window',
  over: '▲ over the window',
  'no window': 'no window is stated',
};

function closingView(state: SessionState): ClosingView | null {
  const wanted = isClosing(state) ? beforeClosing(state) : null;
  switch (wanted?.kind) {
    case 'disposition':
      return { kind: 'disposition', of: wanted.point.seq, text: nameOf(state, wanted.point) };
    case 'signature':
      return { ...wanted, who: wanted.role === 'mechanic' ? state.people.mechanic : null };
    default:
      return null;
  }
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

function callView(state: SessionState, step: Step, call: Call): CallView {
  const { procedure } = state;
  const plan = planOf(procedure, step);
  const setting = settingOf(state, step, call);
  const isRunning = call.pass.kind === 'running torque';
  return {
    label: call.label,
    fastener: call.fastener,
    round: isRunning
      ? 'Running torque, before pass 1'
      : `Pass ${call.pass.index} of ${plan.passes.length}: ${call.pass.name}`,
    target: setting && setting.value,
    instead: isRunning ? 'read it' : 'by hand',
    window: setting && windowOf(setting),
    minimum: isRunning ? minimumOf(procedure, step) : null,
    why: setting && explainSetting(setting),
    tool: step.kind === 'tighten' && (setting || isRunning) ? toolFor(procedure, step, call.pass.index).name : null,
    outside: standingReading(state, step.id, call.pass.index, call.fastener),
    left: plan.calls.filter(
      ({ pass, fastener }) => pass.index === call.pass.index && !isSettled(state, step.id, pass, fastener),
    ).length,
    toDo: toDoAt(state, step, call),
    plan: isUntouched(state, step) ? explainPlan(procedure, step) : null,
    troubles:
      step.kind === 'tighten'
        ? [
            ...jointTrouble(state, step),
            ...toolTroubles(state, step, call).map((trouble) => ({
              text: explainTool(trouble),
              stops: trouble.reasons.some(forbids),
            })),
          ]
        : [],
  };
}

function jointTrouble(state: SessionState, step: Step): CallView['troubles'] {
  const refusal = jointRefusal(state, step);
  return refusal ? [{ text: sayRefusal(state, refusal), stops: true }] : [];
}

function toDoAt(state: SessionState, step: Step, call: Call): string | null {
  const stated = statedOnCall(state, step)?.what;
  const isOver = standingReading(state, step.id, call.pass.index, call.fastener)?.verdict === 'over';
  const what = stated ?? (isOver ? 'over torque' : undefined);
  return what === undefined
    ? null
    : (toDoAbout(step, what) ?? 'The procedure does not say what to do. Decide by the manual.');
}

/** The window of the manual, and what the rule of judging accepts of it where that is less. */
function windowOf({ atWrench, accepted, judging, tool }: Setting): string {
  const shown = (window: TorqueWindow): string => displayWindow(window, tool.range.max.unit, placesOf(tool));
  if (judging.rule === 'simple') return shown(atWrench.window);
  const narrowed = accepted ? `accepted ${shown(accepted)}` : 'nothing is accepted';
  return `${shown(atWrench.window)}; ${narrowed} (${judging.rule})`;
}

/** The minimum is rounded up: what is shown as enough is enough. */
function minimumOf(procedure: Procedure, step: Step): string | null {
  if (step.kind !== 'tighten') return null;
  const minimum = minimumRunningTorque(step);
  const tool = runningToolOf(procedure, step);
  return minimum && display(minimum, tool.range.max.unit, placesOf(tool), 'up');
}

function mapView(state: SessionState, step: Step, call: Call | null): MapView | null {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return null;
  const pattern = state.procedure.patterns.find(({ id }) => id === step.pattern);
  const plan = planOf(state.procedure, step);
  const pass = call?.pass ?? plan.passes.at(-1);
  if (!pattern || !pass) return null;
  const standing = (fastener: number): Standing => {
    if ([RUNNING_ROUND, pass.index].some((round) => isLeftOpen(state, step.id, round, fastener))) return 'doubt';
    if (isSettled(state, step.id, pass, fastener)) return 'done';
    const isOut = standingReading(state, step.id, pass.index, fastener) !== null;
    if (isOut) return 'doubt';
    return call?.fastener === fastener ? 'next' : 'open';
  };
  return {
    name: pattern.name,
    positions: layOut(pattern.layout).positions.map((position) => ({
      ...position,
      standing: standing(position.number),
    })),
  };
}
