import { stepText, type Step } from '../procedure/procedure.ts';
import { calledValue, checksForTurning, isTorqueCall, planOf, type Call } from '../session/calls.ts';
import type { EventBody } from '../session/event.ts';
import {
  callAfter,
  confirmsByGoingOn,
  currentCall,
  currentStep,
  isDone,
  openWarning,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { sayRefusal } from './say-refusal.ts';
import { count, digits, labelOf, sayName, sayTorque, sentence } from './say.ts';

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
  'step done',
  'step taken back',
  'repeat asked',
  'continued',
]);

/** After these, what is to be done next is said. */
const MOVES_ON: ReadonlySet<EventBody['kind']> = new Set([
  ...IN_FULL,
  'answered',
  'fastener done',
  'reading confirmed',
  'reading rejected',
  'reading disregarded',
]);

function sayEvent(state: SessionState, event: EventBody): readonly string[] {
  switch (event.kind) {
    case 'opened': {
      const { title, source, invented } = state.procedure;
      return [
        `${title}. ${source.document}, revision ${source.revision}.`,
        ...(invented ? ['Demonstration only. All values are invented.'] : []),
      ];
    }
    case 'reopened':
      return ['Going on where the record stops.'];
    case 'reading captured':
      return [readBack(state, event)];
    case 'reading confirmed': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      return ['Logged.', ...(reading && reading.verdict !== 'in' ? [sayVerdict(state, reading)] : [])];
    }
    case 'reading rejected':
      return ['Not logged.'];
    case 'reading disregarded':
      return ['Disregarded.'];
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
    case 'closed':
      return ['All steps are done. The record is closed.'];
    case 'warning acknowledged':
    case 'step done':
    case 'step taken back':
    case 'repeat asked':
    case 'continued':
      return [];
  }
}

/** What is wanted now: the open warning, the reading to confirm, the next fastener, or the step. */
export function prompt(state: SessionState, events: readonly EventBody[] = []): readonly string[] {
  const step = currentStep(state);
  if (state.phase === 'standing by') return ['Standing by. Say continue.'];
  if (state.phase === 'closed' || step === null) return [];
  const warning = openWarning(state);
  if (warning) return [`${sentence(warning.signal)}. ${warning.text} Say affirm.`];
  const pending = pendingReading(state);
  if (pending) return [readBack(state, pending)];
  const call = currentCall(state);
  if (call === null) return [sayStep(step)];
  if (events.some(({ kind }) => IN_FULL.has(kind))) return [`${sayStep(step)} ${sayPassAndCall(state, step, call)}`];
  return [isNewPass(state, step, call) ? sayPassAndCall(state, step, call) : sentence(sayCall(call))];
}

/** Cautions and notices come before the text of their step. */
function sayStep(step: Step): string {
  const cautions = step.hazards
    .filter(({ signal }) => signal === 'caution' || signal === 'notice')
    .map(({ signal, text }) => `${sentence(signal)}. ${text}`);
  return [...cautions, stepText(step)].join(' ');
}

/** Whether nothing was done or read in the pass of a call. */
const isNewPass = (state: SessionState, step: Step, { pass }: Call): boolean =>
  !state.readings.some((reading) => reading.step === step.id && reading.pass === pass.index) &&
  !pass.order.some((fastener) => isDone(state, { step: step.id, pass: pass.index, fastener }));

/** "Pass two of two, final. Stud four, two four point five newton metres." */
function sayPassAndCall(state: SessionState, step: Step, call: Call): string {
  const { passes } = planOf(state.procedure, step);
  const { index, name } = call.pass;
  const pass = passes.length > 1 ? `Pass ${count(index)} of ${count(passes.length)}, ${sayName(name)}. ` : '';
  const value = call.pass.target === null ? '' : `, ${sayTorque(calledValue(call.pass))}`;
  const question = checksForTurning(call.pass) ? ' Say next if it stands, turned if it turns.' : '';
  return `${pass}${sentence(`${call.label} ${count(call.fastener)}${value}.`)}${question}`;
}

/** Within a pass the unit is known: "stud four, two four point five." */
function sayCall(call: Call): string {
  const value = isTorqueCall(call) ? `, ${digits(calledValue(call.pass).value)}` : '';
  return `${call.label} ${count(call.fastener)}${value}.`;
}

/** Digit by digit, then a question without the wanted answer, or the next fastener where going on confirms. */
function readBack(
  state: SessionState,
  reading: Pick<Reading, 'step' | 'pass' | 'fastener' | 'reading' | 'verdict' | 'evidence'>,
): string {
  const how = reading.evidence === 'click' ? 'click at ' : '';
  const value = `${labelOf(state, reading.step)} ${count(reading.fastener)}, ${how}${digits(reading.reading.value)}.`;
  const verdict = reading.verdict === 'in' ? '' : ` That is ${DOUBTS[reading.verdict]}.`;
  return sentence(`${value}${verdict} ${askOrGoOn(state, reading)}`);
}

function askOrGoOn(state: SessionState, reading: Pick<Reading, 'step' | 'pass' | 'fastener' | 'verdict'>): string {
  const step = currentStep(state);
  const next = step && confirmsByGoingOn(state, reading) ? callAfter(state, reading) : null;
  if (!step || !next || !isTorqueCall(next)) return 'Is that correct?';
  return next.pass.index === reading.pass
    ? `Next, ${next.label} ${count(next.fastener)}.`
    : `Next: ${sayPassAndCall(state, step, next)}`;
}

const DOUBTS: Readonly<Record<Exclude<Reading['verdict'], 'in'>, string>> = {
  under: 'under the window',
  over: 'over the window',
  'not provable': 'too near the limit to prove',
};

function sayVerdict(state: SessionState, reading: Reading): string {
  const fastener = sentence(`${labelOf(state, reading.step)} ${count(reading.fastener)}`);
  switch (reading.verdict) {
    case 'in':
      return '';
    case 'under':
      return `${fastener} is under. Tighten on and read again.`;
    case 'over':
      return `${fastener} is over. Stop. Back it out and decide by the manual.`;
    case 'not provable':
      return `${fastener} cannot be proved. Read it again or decide by the manual.`;
  }
}
