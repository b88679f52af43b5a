import { toolOf } from '../session/calls.ts';
import type { Refusal } from '../session/refusal.ts';
import { currentStep, lastConfirmed, pendingReading, type SessionState } from '../session/state.ts';
import { count, labelOf, sentence } from './say.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/** Why something was not carried out, and what to say instead. */
export function sayRefusal(state: SessionState, reason: Refusal): string {
  return sentence(words(state, reason));
}

function words(state: SessionState, reason: Refusal): string {
  const stepId = stepInQuestion(state);
  const label = stepId === null ? 'fastener' : labelOf(state, stepId);
  switch (reason.code) {
    case 'standing by':
      return 'Standing by. Say continue first.';
    case 'not standing by':
      return 'Not standing by.';
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
    case 'not the last reading':
      return `The last reading is of ${label} ${count(reason.last)}. Only that one can be corrected.`;
    case 'answer first':
      return 'This check wants an answer.';
    case 'no such answer':
      return 'That is no answer here.';
    case 'no reading here':
      return 'No reading is taken here.';
    case 'reading first':
      return `${label} ${count(reason.fastener)} wants a reading.`;
    case 'out of order':
      return `${label} ${count(reason.offered)} is out of order. Next is ${label} ${count(reason.expected)}.`;
    case 'no such fastener':
      return `There is no ${label} ${count(reason.offered)}. Next is ${label} ${count(reason.expected)}.`;
    case 'not a setting tool':
      return 'This tool shows a value. Say the value.';
    case 'first step':
      return 'This is the first step.';
    case 'readings stand':
      return 'Readings stand here. Say correction and the right value.';
    case 'unclear':
      switch (reason.doubt) {
        case 'several readings':
          return `That can be understood in more than one way. Say ${label}, its number, at, and the value.`;
        case 'not sure':
          return 'That was not clear. Say again.';
        case 'other unit':
          return `The tool reads ${unitInQuestion(state, stepId) ?? 'another unit'}. Say the value that it shows.`;
      }
  }
}

/** The step that a value would be about: of the reading to confirm, of the fasteners being worked, or of the last reading. */
function stepInQuestion(state: SessionState): string | null {
  const pending = pendingReading(state);
  if (pending) return pending.step;
  const step = currentStep(state);
  if (step?.kind === 'tighten' || step?.kind === 'loosen') return step.id;
  return lastConfirmed(state)?.step ?? null;
}

function unitInQuestion(state: SessionState, stepId: string | null): string | null {
  const step = state.procedure.steps.find(({ id }) => id === stepId);
  return step?.kind === 'tighten' ? TORQUE_UNIT_SPOKEN[toolOf(state.procedure, step).range.max.unit][0] : null;
}
