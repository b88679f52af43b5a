import { stepText, type Procedure, type Step } from '../procedure/procedure.ts';
import { planOf, type Call } from '../session/calls.ts';
import type { EventBody } from '../session/event.ts';
import type { Refusal } from '../session/refusal.ts';
import {
  currentCall,
  currentStep,
  openWarning,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { toWritten, type Torque, type Written } from '../units/index.ts';
import { sayDigits } from './numbers/index.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/**
 * What is spoken after events, in order. A pure function of the state after them, so that a replay says the same.
 * @param events the events of one decision, oldest first
 */
export function announce(state: SessionState, events: readonly EventBody[]): readonly string[] {
  const said = events.flatMap((event) => sayEvent(state, event));
  const movesOn = events.some(({ kind }) => MOVES_ON.has(kind));
  return [...said, ...(movesOn ? prompt(state, events) : [])];
}

/** After these, what is to be done next is said again. */
const MOVES_ON: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'reopened',
  'warning acknowledged',
  'step done',
  'step taken back',
  'answered',
  'fastener done',
  'reading confirmed',
  'reading rejected',
  'reading disregarded',
  'repeat asked',
  'continued',
]);

function sayEvent(state: SessionState, event: EventBody): readonly string[] {
  switch (event.kind) {
    case 'opened':
      return [
        `${state.procedure.title}. ${state.procedure.source.document}, revision ${state.procedure.source.revision}.`,
        ...(state.procedure.invented ? ['Demonstration only. All values are invented.'] : []),
      ];
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
    case 'closed':
      return ['All steps are done. The record is closed.'];
    case 'warning acknowledged':
    case 'step done':
    case 'step taken back':
    case 'fastener done':
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
  if (warning) return [`${warning.signal}. ${warning.text} Say affirm.`];
  const pending = pendingReading(state);
  if (pending) return [readBack(state, pending)];
  const call = currentCall(state);
  if (call === null) return [sayStep(step)];
  const isNew = events.some(({ kind }) => kind === 'opened' || kind === 'reopened' || kind === 'repeat asked');
  return [sayCall(state.procedure, step, call, isNew || isFirstOf(state, call))];
}

const isFirstOf = (state: SessionState, call: Call): boolean => {
  const step = currentStep(state);
  return (
    step !== null && planOf(state.procedure, step).calls.find(({ pass }) => pass.index === call.pass.index) === call
  );
};

/** Cautions and notes come before the text of their step. */
function sayStep(step: Step): string {
  const cautions = step.hazards
    .filter(({ signal }) => signal === 'caution' || signal === 'notice')
    .map(({ signal, text }) => `${signal}. ${text}`);
  return [...cautions, stepText(step)].join(' ');
}

/** "Pass one of two. Stud four, two four point five newton metres." The pass and unit are said when they are new. */
function sayCall(procedure: Procedure, step: Step, call: Call, inFull: boolean): string {
  const { passes } = planOf(procedure, step);
  const passText = inFull
    ? `${sayStep(step)} Pass ${count(call.pass.index)} of ${count(passes.length)}, ${call.pass.name}. `
    : '';
  const target = call.pass.target;
  const value = target === null ? '' : `, ${inFull ? sayTorque(toWritten(target)) : digits(toWritten(target).value)}`;
  return `${passText}${call.label} ${count(call.fastener)}${value}.`;
}

/** Digit by digit, so that it can be checked word by word. The wanted answer is not in the question. */
function readBack(
  state: SessionState,
  reading: Pick<Reading, 'fastener' | 'reading' | 'verdict' | 'evidence' | 'step'>,
): string {
  const how = reading.evidence === 'click' ? 'click at ' : '';
  const value = `${labelOf(state, reading.step)} ${count(reading.fastener)}, ${how}${digits(reading.reading.value)}.`;
  const doubt = reading.verdict === 'in' ? '' : ` ${VERDICTS[reading.verdict]}.`;
  return `${value}${doubt} Is that correct?`;
}

const VERDICTS: Readonly<Record<Reading['verdict'], string>> = {
  in: 'In',
  under: 'That is under the window',
  over: 'That is over the window',
  'not provable': 'That is too near the limit to prove',
};

function sayVerdict(state: SessionState, reading: Reading): string {
  const label = `${labelOf(state, reading.step)} ${count(reading.fastener)}`;
  switch (reading.verdict) {
    case 'in':
      return '';
    case 'under':
      return `${label} is under. Tighten on and read again.`;
    case 'over':
      return `${label} is over. Stop. Back it out and decide by the manual.`;
    case 'not provable':
      return `${label} cannot be proved. Read it again or decide by the manual.`;
  }
}

function sayRefusal(state: SessionState, reason: Refusal): string {
  const label = currentCall(state)?.label ?? 'number';
  switch (reason.code) {
    case 'standing by':
      return 'Standing by. Say continue first.';
    case 'session closed':
      return 'The record is closed.';
    case 'warning first':
      return 'Acknowledge the warning first: say affirm.';
    case 'confirm first':
      return `${label} ${count(reason.fastener)} is not confirmed. Say affirm or negative.`;
    case 'nothing to confirm':
      return 'There is nothing to confirm.';
    case 'nothing to correct':
      return 'There is no reading to correct.';
    case 'answer first':
      return 'This check wants an answer.';
    case 'no such answer':
      return 'That is not an answer to this check.';
    case 'no reading here':
      return 'No reading is taken here.';
    case 'reading first':
      return `${label} ${count(reason.fastener)} wants a reading.`;
    case 'out of order':
      return `${label} ${count(reason.offered)} is out of order. Next is ${label} ${count(reason.expected)}.`;
    case 'no such fastener':
      return `There is no ${label} ${count(reason.offered)}. Next is ${label} ${count(reason.expected)}.`;
    case 'unclear':
      return `That can be understood in more than one way. Say ${label}, its number, at, and the value.`;
    case 'not a setting tool':
      return 'This tool shows a value. Say the value.';
    case 'first step':
      return 'This is the first step.';
    case 'readings stand':
      return 'Readings stand here. Say correction and the right value.';
    case 'not standing by':
      return 'Not standing by.';
  }
}

const labelOf = (state: SessionState, stepId: string): string => {
  const step = state.procedure.steps.find(({ id }) => id === stepId);
  return step ? (planOf(state.procedure, step).calls[0]?.label ?? 'number') : 'number';
};

const digits = (decimal: string): string => sayDigits(decimal).join(' ');
const count = (whole: number): string => digits(String(whole));
const sayTorque = ({ value, unit }: Written<'torque'>): string => `${digits(value)} ${TORQUE_UNIT_SPOKEN[unit][0]}`;
export const sayTarget = (target: Torque): string => sayTorque(toWritten(target));
