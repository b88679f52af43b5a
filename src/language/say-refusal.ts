import { toolFor } from '../session/calls.ts';
import { pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { openReason } from '../session/reasons.ts';
import { nameOfSeal } from '../session/point-words.ts';
import type { Doubt } from '../session/intent.ts';
import type { Refusal } from '../session/refusal.ts';
import {
  currentCall,
  currentStep,
  lastConfirmed,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { asksValue } from '../session/witness.ts';
import { place } from '../words/place.ts';
import { refusals } from '../words/refusals.ts';
import { spokenSigns } from '../words/spoken-signs.ts';
import { explainTool } from './explain.ts';
import { sayBeforeClosing } from './say-closing.ts';
import { sayHeldFor } from './say-hold.ts';
import { askPoint, nameOfKey } from './say-point.ts';
import { count, labelOf, sayPlain, sentence } from './say.ts';

/** Why something was not carried out, and what to say instead. */
export function sayRefusal(state: SessionState, reason: Refusal): string {
  return sentence(words(state, reason));
}

function words(state: SessionState, reason: Refusal): string {
  const about = roundInQuestion(state);
  const label = about === null ? place.anyFastener : labelOf(state, about.step);
  switch (reason.code) {
    case 'tool not usable': {
      const tool = state.procedure.tools.find(({ id }) => id === reason.tool);
      return tool ? sayPlain(explainTool({ tool, reasons: reason.reasons })) : refusals.toolNotUsable;
    }
    case 'running torque is read':
      return refusals.runningTorqueIsRead(label, count(reason.fastener));
    case 'point first': {
      const point = currentPoint(state);
      return point === null ? refusals.somePointOpen : sayPlain(refusals.notYet(askPoint(state, point)));
    }
    case 'unaccounted':
      return sayPlain(refusals.unaccounted(reason.points.map((key) => nameOfKey(state, key))));
    case 'seal not reusable': {
      const seal = nameOfSeal(state.procedure, reason.seal);
      return sayPlain(
        reason.failed === null ? refusals.sealNeverReused(seal) : refusals.sealFailed(seal, reason.failed),
      );
    }
    case 'seal not seated':
      return sayPlain(refusals.sealNotSeated(nameOfSeal(state.procedure, reason.seal)));
    case 'not started by hand': {
      const pattern = state.procedure.patterns.find(({ id }) => id === reason.pattern);
      return sayPlain(refusals.notStarted(pattern?.fastener ?? place.anyFastener, pattern?.name ?? reason.pattern));
    }
    case 'consumable expired':
      return sayPlain(refusals.expired(nameOfConsumable(state, reason.consumable), reason.expires));
    case 'consumable used up':
      return sayPlain(refusals.usedUp(nameOfConsumable(state, reason.consumable)));
    case 'no expiry date':
      return sayPlain(refusals.noExpiry(nameOfConsumable(state, reason.consumable)));
    case 'no quantity':
      return sayPlain(refusals.noQuantity(nameOfConsumable(state, reason.consumable)));
    case 'in doubt':
      return refusals.inDoubt(label, count(reason.fastener));
    case 'confirm first':
      return refusals.notConfirmed(label, count(reason.fastener));
    case 'witness first':
      return refusals.wantsWitness(label, count(reason.fastener));
    case 'reason first':
      return openReason(state)?.status === 'reason given' ? refusals.isReasonCorrect : refusals.reasonWanted;
    case 'wait not over':
      return refusals.waitNotOver(sayHeldFor(reason.seconds));
    case 'own work':
      return refusals.ownWork(reason.name);
    case 'closing':
      return sayBeforeClosing(state).join(' ');
    case 'not worked again':
      return refusals.notWorkedAgain[reason.because];
    case 'not the mechanic':
      return refusals.notTheMechanic(reason.name, state.people.mechanic);
    case 'not the last reading':
      return refusals.notTheLast(label, count(reason.last));
    case 'reading first':
      return refusals.wantsReading(label, count(reason.fastener));
    case 'out of order':
      return refusals.outOfOrder(label, count(reason.offered), count(reason.expected));
    case 'no such fastener':
      return refusals.noSuchFastener(label, count(reason.offered), count(reason.expected));
    case 'unclear':
      return askAgain(state, reason.doubt, about);
    default:
      return refusals.plain[reason.code];
  }
}

/** What is asked about words that could not be taken as they were heard. */
function askAgain(state: SessionState, doubt: Doubt, about: RoundInQuestion | null): string {
  switch (doubt) {
    case 'several readings':
      return currentStep(state)?.kind === 'measure'
        ? refusals.severalValues
        : refusals.severalReadings(about === null ? place.anyFastener : labelOf(state, about.step));
    case 'not sure': {
      const pending = pendingReading(state);
      const isAnswerWanted = pending ? !asksValue(state, pending) : pendingValue(state) !== null;
      return isAnswerWanted ? refusals.notClearAnswer : refusals.notClear;
    }
    case 'other unit': {
      const unit = unitInQuestion(state, about);
      return unit === null ? refusals.someOtherUnit : refusals.otherUnit(unit);
    }
  }
}

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
  return spokenSigns.torque[toolFor(state.procedure, step, about.pass).range.max.unit];
}
