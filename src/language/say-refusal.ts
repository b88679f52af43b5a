import { toolFor } from '../session/calls.ts';
import { pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { openReason } from '../session/reasons.ts';
import type { Refusal } from '../session/refusal.ts';
import {
  currentCall,
  currentStep,
  lastConfirmed,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { explainTool } from './explain.ts';
import { sayBeforeClosing } from './say-closing.ts';
import { sayHeldFor } from './say-hold.ts';
import { askPoint, nameOfKey } from './say-point.ts';
import { count, labelOf, sayPlain, sentence } from './say.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/** Why something was not carried out, and what to say instead. */
export function sayRefusal(state: SessionState, reason: Refusal): string {
  return sentence(words(state, reason));
}

function words(state: SessionState, reason: Refusal): string {
  const about = roundInQuestion(state);
  const label = about === null ? 'fastener' : labelOf(state, about.step);
  switch (reason.code) {
    case 'standing by':
      return 'Standing by. Say continue first.';
    case 'not standing by':
      return 'Not standing by.';
    case 'session closed':
      return 'The record is closed.';
    case 'warning first':
      return 'Acknowledge the warning first: say affirm.';
    case 'condition first':
      return 'Answer the question first: say affirm or negative.';
    case 'tool not usable': {
      const tool = state.procedure.tools.find(({ id }) => id === reason.tool);
      return tool ? sayPlain(explainTool({ tool, reasons: reason.reasons })) : 'The tool may not be used here.';
    }
    case 'running torque is read':
      return `The running torque of ${label} ${count(reason.fastener)} is read. Say the value.`;
    case 'point first': {
      const point = currentPoint(state);
      return point === null ? 'A point of this step is open.' : sayPlain(`Not yet. ${askPoint(state, point)}`);
    }
    case 'unaccounted':
      return sayPlain(
        `Not yet. Not accounted for: ${reason.points.map((key) => nameOfKey(state.procedure, key)).join('; ')}. One by one.`,
      );
    case 'seal not reusable': {
      const seal = state.procedure.seals.find(({ id }) => id === reason.seal)?.name ?? reason.seal;
      const why = reason.failed === null ? 'the manual never has it used again' : `it failed: ${reason.failed}`;
      return sayPlain(`The ${seal} cannot be used again: ${why}. Say replace.`);
    }
    case 'seal not seated': {
      const seal = state.procedure.seals.find(({ id }) => id === reason.seal)?.name ?? reason.seal;
      return sayPlain(`Do not tighten: the ${seal} is not seated. Go back and seat it, or stop and ask.`);
    }
    case 'not started by hand': {
      const pattern = state.procedure.patterns.find(({ id }) => id === reason.pattern);
      return sayPlain(
        `Do not run down: not all ${pattern?.fastener ?? 'fastener'}s of ${pattern?.name ?? reason.pattern} are started by hand. Go back and start them, or stop and ask.`,
      );
    }
    case 'consumable expired':
      return sayPlain(
        `The ${nameOfConsumable(state, reason.consumable)} was good until ${reason.expires}. Fetch a fresh one, and enter what stands on it on the screen.`,
      );
    case 'consumable used up':
      return sayPlain(
        `The ${nameOfConsumable(state, reason.consumable)} is used up. Fetch another, and enter what stands on it on the screen.`,
      );
    case 'no such consumable':
      return 'The procedure has no such consumable.';
    case 'no expiry date':
      return sayPlain(
        `The expiry date of the fresh ${nameOfConsumable(state, reason.consumable)} is wanted. Type it as 2027-01-31. Where none stands on it, fetch another.`,
      );
    case 'no quantity':
      return sayPlain(
        `How many of the ${nameOfConsumable(state, reason.consumable)} are there now? Type a whole number, one or more.`,
      );
    case 'confirm first':
      return `${label} ${count(reason.fastener)} is not confirmed. Say affirm or negative.`;
    case 'witness first':
      return `${label} ${count(reason.fastener)} wants its witness. Second person, say witness and the value.`;
    case 'no second person':
      return 'A second person is wanted here, and none is named. One must join; the mechanic cannot witness.';
    case 'nothing to witness':
      return 'There is nothing to witness.';
    case 'step witness first':
      return 'The second person looks first. Second person, say witness affirm or witness negative.';
    case 'doer is no witness':
      return 'The mechanic cannot witness their own work. Name another person.';
    case 'no name':
      return 'A name is wanted. Type it.';
    case 'between steps':
      return 'Hand over between two steps. Finish this one first, or say stand by.';
    case 'not handing over':
      return 'Nobody is handing over. Say hand over first.';
    case 'same mechanic':
      return 'That is the same mechanic. Say continue.';
    case 'break first':
      return 'Work was broken off. Is all as it was left? Affirm or negative.';
    case 'reason first':
      return openReason(state)?.status === 'reason given'
        ? 'Is the reason correct? Affirm or negative.'
        : 'Say the reason in your own words, or say: cancel that.';
    case 'no reason wanted':
      return 'No reason is wanted here.';
    case 'nothing to report on':
      return 'No fastener is called that this could be reported of.';
    case 'report first':
      return 'Report what is wrong before it is left open. Say report, and what.';
    case 'nothing to confirm':
      return 'There is nothing to confirm.';
    case 'value first':
      return 'A value is wanted. Say it, or type it.';
    case 'value unconfirmed':
      return 'The value is not confirmed. Say affirm or negative.';
    case 'scale ends at zero':
      return 'This scale does not go below zero. Look again, and say what it shows.';
    case 'wait first':
      return 'The wait has not begun. Say next when it begins.';
    case 'wait not over':
      return `Too early: wait ${sayHeldFor(reason.seconds)} more.`;
    case 'inspector first':
      return 'An inspector looks first: one who did not do the work types a name and taps what was found.';
    case 'own work':
      return `${reason.name} did this work. Somebody who did not must do that: type another name.`;
    case 'closing':
      return sayBeforeClosing(state).join(' ');
    case 'nothing to decide':
      return 'There is nothing to decide about that now.';
    case 'not worked again':
      return NOT_WORKED_AGAIN[reason.because];
    case 'nothing to sign':
      return 'There is nothing to sign now.';
    case 'not the mechanic':
      return `${reason.name} is not the mechanic. ${state.people.mechanic} signs here.`;
    case 'hold first':
      return 'Say held first, when you hold it.';
    case 'holding':
      return 'You hold it. Next, help, or set down.';
    case 'set down first':
      return 'Say set down when it is down.';
    case 'nothing to hold':
      return 'Nothing is held here.';
    case 'not holding':
      return 'Nothing is held.';
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
          if (currentStep(state)?.kind === 'measure')
            return 'That can be understood in more than one way. Say it digit by digit.';
          return `That can be understood in more than one way. Say ${label}, its number, at, and the value.`;
        case 'not sure':
          return pendingReading(state) || pendingValue(state)
            ? 'That was not clear. Affirm or negative?'
            : 'That was not clear. Say again.';
        case 'other unit':
          return `The tool reads ${unitInQuestion(state, about) ?? 'another unit'}. Say the value that it shows.`;
      }
  }
}

const NOT_WORKED_AGAIN: Readonly<Record<Extract<Refusal, { code: 'not worked again' }>['because'], string>> = {
  'not left open': 'That was put right in the work already. Decide what becomes of it.',
  'moved since':
    'The unit was opened or moved after that step: going back does not put it right. Decide otherwise, and open a job for it.',
  'nut seated':
    'The nut is seated: its running torque can no longer be measured. Decide otherwise, and open a job for it.',
};

const nameOfConsumable = ({ procedure }: SessionState, id: string): string =>
  procedure.consumables.find((each) => each.id === id)?.name ?? id;

type RoundInQuestion = Pick<Reading, 'step' | 'pass'>;

/** What a value would be about: the reading to confirm, the fasteners being worked, or the last reading. */
function roundInQuestion(state: SessionState): RoundInQuestion | null {
  const pending = pendingReading(state);
  if (pending) return pending;
  const step = currentStep(state);
  const call = currentCall(state);
  if (step && call) return { step: step.id, pass: call.pass.index };
  return lastConfirmed(state);
}

function unitInQuestion(state: SessionState, about: RoundInQuestion | null): string | null {
  const step = state.procedure.steps.find(({ id }) => id === about?.step);
  if (step?.kind !== 'tighten' || about === null) return null;
  return TORQUE_UNIT_SPOKEN[toolFor(state.procedure, step, about.pass).range.max.unit][0];
}
