import { stepText, type Step } from '../procedure/procedure.ts';
import { isReadCall, type Call } from '../session/calls.ts';
import type { EventBody } from '../session/event.ts';
import { MOST_ASKED_AGAIN } from '../session/silence.ts';
import {
  callAfter,
  confirmed,
  confirmsByGoingOn,
  currentCall,
  currentStep,
  isDone,
  isUntouched,
  openCondition,
  openWarning,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { toolRefusal, toolTroubles } from '../session/tools.ts';
import { awaitsWitness } from '../session/witness.ts';
import { answerTo } from './answer.ts';
import { questionAbout } from './doubt.ts';
import { explainLift, explainPlan, explainTool } from './explain.ts';
import { sayCall, sayRoundAndCall } from './say-call.ts';
import { sayRefusal } from './say-refusal.ts';
import { count, digits, labelOf, sayPlain, sayTorque, sentence } from './say.ts';

/**
 * What is spoken after events, in order. A pure function of the state after them, so that a replay says the same.
 * @param events the events of one decision, oldest first
 */
export function announce(state: SessionState, events: readonly EventBody[]): readonly string[] {
  const said = events.flatMap((event) => sayEvent(state, event));
  // A reading that was just read back is not asked for twice.
  const asks = events.at(-1)?.kind !== 'reading captured' && events.some(({ kind }) => MOVES_ON.has(kind));
  return [...said, ...(asks ? prompt(state, events) : [])];
}

/** After these the whole of what is to be done is said: the step with its cautions, the pass, the fastener. */
const IN_FULL: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'reopened',
  'warning acknowledged',
  'condition answered',
  'step done',
  'step skipped',
  'step taken back',
  'repeat asked',
  'continued',
]);

/** After these a step may begin: how it is gone about is explained once. */
const BEGINS: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'warning acknowledged',
  'condition answered',
  'step done',
  'step skipped',
]);

/** After these, what is to be done next is said. */
const MOVES_ON: ReadonlySet<EventBody['kind']> = new Set([
  ...IN_FULL,
  'answered',
  'fastener done',
  'reading confirmed',
  'reading rejected',
  'reading disregarded',
  'disputed',
]);

function sayEvent(state: SessionState, event: EventBody): readonly string[] {
  switch (event.kind) {
    case 'opened': {
      const { title, source, invented } = state.procedure;
      return [
        `${title}. ${source.document}, revision ${source.revision}.`,
        ...(invented ? ['Demonstration only. All values are invented.'] : []),
        ...sayBeforeWork(state),
      ];
    }
    case 'reopened':
      return ['Going on where the record stops.'];
    case 'reading captured':
      return [readBack(state, event)];
    case 'witnessed': {
      const pending = pendingReading(state);
      return pending?.seq === event.of ? [readBack(state, pending)] : [];
    }
    case 'disputed': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      const named = reading ? `${labelOf(state, reading.step)} ${count(reading.fastener)}` : 'the reading';
      return [`Stop. The two values of ${named} differ. Both read again.`];
    }
    case 'reading confirmed': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      return ['Logged.', ...(reading && reading.verdict !== 'in' ? [sayVerdict(state, reading)] : [])];
    }
    case 'reading rejected':
      return ['Not logged.'];
    case 'reading disregarded':
      return ['Disregarded.'];
    case 'timed out':
      return [...prompt(state), ...(state.silences < MOST_ASKED_AGAIN ? [] : ['No answer. Tap affirm or negative.'])];
    case 'asked':
      return event.question.about === 'slowly'
        ? prompt(state, SAY_ALL).flatMap(inPieces)
        : answerTo(state, event.question);
    case 'stood by':
      return ['Standing by.'];
    case 'refused':
      return [sayRefusal(state, event.reason)];
    case 'answered': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      const outcome = step?.kind === 'check' ? step.outcomes.find(({ id }) => id === event.outcome) : undefined;
      return outcome ? [outcome.text] : [];
    }
    case 'fastener done':
      // The end of a round in which one turned opens the round again, this fastener with it.
      return isDone(state, event) ? [] : [`A ${labelOf(state, event.step)} turned. Go round once more.`];
    case 'step skipped': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      return [`Skipped, it does not apply: ${step?.title ?? event.step}.`];
    }
    case 'closed':
      return ['All steps are done. The record is closed.'];
    case 'warning acknowledged':
    case 'condition answered':
    case 'step done':
    case 'step taken back':
    case 'repeat asked':
    case 'continued':
      return [];
  }
}

const SAY_ALL: readonly EventBody[] = [{ kind: 'repeat asked' }];

/** A sentence in pieces that are spoken one by one, with a pause after each. */
const inPieces = (text: string): readonly string[] => text.split(/(?<=[.,:;?!])\s+/u).map(sentence);

/** What is wanted now: the open warning, the reading to confirm, the next fastener, or the step. */
export function prompt(state: SessionState, events: readonly EventBody[] = []): readonly string[] {
  const step = currentStep(state);
  if (state.phase === 'standing by') return ['Standing by. Say continue.'];
  if (state.phase === 'closed' || step === null) return [];
  const warning = openWarning(state);
  if (warning) return [`${sentence(warning.signal)}. ${warning.text} Say affirm.`];
  const pending = pendingReading(state);
  if (pending) return [readBack(state, pending)];
  const condition = openCondition(state);
  if (condition) return [`${condition.question} Affirm or negative?`];
  const call = currentCall(state);
  if (call === null)
    return [sayStep(step), ...(step.kind === 'hold' ? explainLift(state.procedure).facts.map(sayPlain) : [])];
  const inFull = events.some(({ kind }) => IN_FULL.has(kind));
  const unusable = toolRefusal(state, step, call);
  if (unusable) return [...(inFull ? [sayStep(step)] : []), sayRefusal(state, unusable)];
  if (!inFull)
    return [isNewRound(state, step, call) ? sayRoundAndCall(state, step, call) : sentence(sayCall(state, step, call))];
  const begins = events.some(({ kind }) => BEGINS.has(kind)) && isUntouched(state, step);
  return [[sayStep(step), ...(begins ? sayPlan(state, step, call) : []), sayRoundAndCall(state, step, call)].join(' ')];
}

/** The weight. The lift, its limits and the container stand on the screen: while they were read out, no ear is open. */
const sayBeforeWork = ({ procedure }: SessionState): readonly string[] =>
  explainLift(procedure).facts.slice(0, 1).map(sayPlain);

/** How a step of tightening is gone about, and what is to be minded about its tools. */
function sayPlan(state: SessionState, step: Step, call: Call): readonly string[] {
  if (step.kind !== 'tighten') return [];
  const plan = explainPlan(state.procedure, step);
  return [...(plan ? [plan] : []), ...toolTroubles(state, step, call).map(explainTool)].map((text) =>
    sentence(sayPlain(text)),
  );
}

/** Cautions and notices come before the text of their step. */
function sayStep(step: Step): string {
  const cautions = step.hazards
    .filter(({ signal }) => signal === 'caution' || signal === 'notice')
    .map(({ signal, text }) => `${sentence(signal)}. ${text}`);
  return [...cautions, stepText(step)].join(' ');
}

/** Whether nothing was done or read in the round of a call. */
const isNewRound = (state: SessionState, step: Step, { pass }: Call): boolean =>
  !state.readings.some((reading) => reading.step === step.id && reading.pass === pass.index) &&
  !pass.order.some((fastener) => isDone(state, { step: step.id, pass: pass.index, fastener }));

type ReadBack = Pick<
  Reading,
  'step' | 'pass' | 'fastener' | 'reading' | 'verdict' | 'evidence' | 'basis' | 'doubts' | 'corrects' | 'witnessed'
>;

/** Digit by digit, then a question without the wanted answer, or the next fastener where going on confirms. */
function readBack(state: SessionState, reading: ReadBack): string {
  const named = `${labelOf(state, reading.step)} ${count(reading.fastener)}`;
  if (awaitsWitness(state, reading)) return `${sentence(named)} is read. Second person, say witness and the value.`;
  const { witnessed } = reading;
  const how =
    reading.basis.of === 'running torque' ? 'running torque ' : reading.evidence === 'click' ? 'click at ' : '';
  const value = `${named}, ${how}${digits(reading.reading.value)}${witnessed ? `, witness, ${digits(witnessed.reading.value)}` : ''}.`;
  const verdict = reading.verdict === 'in' ? '' : ` That is ${outside(reading.basis, reading.verdict)}.`;
  return sentence(`${value}${verdict} ${askOrGoOn(state, reading)}`);
}

function askOrGoOn(state: SessionState, reading: ReadBack): string {
  const [doubt] = reading.doubts ?? [];
  if (doubt !== undefined && !isSaidAgain(state, reading)) return questionAbout(doubt);
  const step = currentStep(state);
  const next = step && confirmsByGoingOn(state, reading) ? callAfter(state, reading) : null;
  if (!step || !next || !isReadCall(next)) return 'Is that correct?';
  if (next.pass.index === reading.pass) return `Next, ${next.label} ${count(next.fastener)}.`;
  // What comes next is called as it will be when this reading is confirmed: it may be the running torque of that nut.
  const pending = pendingReading(state);
  return `Next: ${sayRoundAndCall(pending ? confirmed(state, pending.seq) : state, step, next)}`;
}

/** Who says the same value again has answered the question: what is left is whether it was heard rightly. */
const isSaidAgain = (state: SessionState, { corrects, reading }: ReadBack): boolean =>
  state.readings.some((old) => old.seq === corrects && old.reading.value === reading.value);

const outside = ({ of }: Reading['basis'], verdict: Exclude<Reading['verdict'], 'in'>): string =>
  of === 'running torque' && verdict === 'over' ? 'too much for the tools of this step' : OUTSIDE[verdict];

const OUTSIDE: Readonly<Record<Exclude<Reading['verdict'], 'in'>, string>> = {
  under: 'under the window',
  over: 'over the window',
  'not provable': 'too near the limit to prove',
  'nut worn': 'below the minimum',
};

function sayVerdict(state: SessionState, reading: Reading): string {
  const fastener = sentence(`${labelOf(state, reading.step)} ${count(reading.fastener)}`);
  switch (reading.verdict) {
    case 'in':
      return '';
    case 'under':
      return `${fastener} is under. Tighten on and read again.`;
    case 'over':
      if (reading.basis.of === 'running torque')
        return `${fastener} runs too hard for the tools of this step. Measure it again or decide by the manual.`;
      return `${fastener} is over. Stop. Back it out and decide by the manual.`;
    case 'nut worn': {
      const minimum = reading.basis.of === 'running torque' ? reading.basis.minimum : null;
      return `${fastener} is worn: it runs below the minimum${minimum ? ` of ${sayTorque(minimum)}` : ''}. Reject it, fit another, and measure again.`;
    }
    case 'not provable':
      return `${fastener} cannot be proved. Read it again or decide by the manual.`;
  }
}
