import { explainTool } from '../language/explain.ts';
import { labelOf } from '../language/say.ts';
import { nameOfKey } from '../language/say-point.ts';
import type { EventBody } from '../session/event.ts';
import type { Meaning, SaidReading } from '../session/intent.ts';
import type { Refusal } from '../session/refusal.ts';
import { nameOfSeal } from '../session/point-words.ts';
import { currentStep, lastConfirmed, type SessionState } from '../session/state.ts';
import { place } from '../words/place.ts';
import { refusedEntries as words } from '../words/refused-entries.ts';

/**
 * What was refused and why, as a line of the record: what was meant, then the reason as a fact.
 * @param state a refusal changes nothing, so the state after it is the one it was refused in
 */
export function describeRefusal({ meaning, reason }: Extract<EventBody, { kind: 'refused' }>, state: SessionState) {
  return words.refused(meant(meaning), sayWhyRefused(reason, state));
}

function meant(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'reading':
      return words.reading(said(meaning.reading));
    case 'witness':
      return words.witness(said(meaning.reading));
    case 'correction':
      return words.correction(said(meaning.reading));
    case 'click':
      return meaning.fastener === null ? words.click : words.clickAt(meaning.fastener);
    case 'answer':
      return words.answer(meaning.outcome);
    case 'unclear':
      return meaning.readings.length > 0 ? words.readings(meaning.readings.map(said)) : words.whatWasHeard;
    case 'question':
      return words.question;
    case 'silence':
      return words.silence;
    case 'observed':
      return words.observed(meaning.value);
    case 'inspects':
      return words.inspecting(meaning.name || words.somebody);
    case 'dispose':
      return words.decision(meaning.what, meaning.by || words.somebody);
    case 'fresh consumable':
      return words.fresh(meaning.consumable, meaning.batch, meaning.expires);
    case 'sign':
      return words.signature(meaning.name || words.somebody, meaning.role);
    case 'witness says':
      return words.witnessSays(meaning.agrees);
    case 'report':
      return words.report(meaning.what);
    case 'reason':
      return words.reason(meaning.text);
    case 'take over':
      return words.takingOver(meaning.name || words.somebody);
    case 'second person':
      return meaning.name === null ? words.secondLeaving : words.second(meaning.name || words.somebody);
    case 'time passed':
      return words.timePassing;
    default:
      return words.word[meaning.kind];
  }
}

const said = ({ fastener, value }: SaidReading): string =>
  fastener === null ? words.value(value) : words.valueFor(value, fastener);

/** Why something was refused, as a fact, in the words of the procedure. No value is in it that a witness has still to read. */
export function sayWhyRefused(reason: Refusal, state: SessionState): string {
  const { procedure } = state;
  const step = currentStep(state)?.id;
  const label = step === undefined ? place.anyFastener : labelOf(state, step);
  switch (reason.code) {
    case 'tool not usable': {
      const tool = procedure.tools.find(({ id }) => id === reason.tool);
      return tool ? explainTool({ tool, reasons: reason.reasons }) : words.toolNotUsable(reason.tool);
    }
    case 'point first':
      return words.pointFirst(nameOfKey(state, reason.point));
    case 'unaccounted':
      return words.unaccounted(reason.points.map((key) => nameOfKey(state, key)));
    case 'seal not reusable': {
      const seal = nameOfSeal(procedure, reason.seal);
      return reason.failed === null ? words.sealNeverReused(seal) : words.sealFailed(seal, reason.failed);
    }
    case 'seal not seated':
      return words.sealNotSeated(nameOfSeal(procedure, reason.seal));
    case 'not started by hand':
      return words.notStarted(procedure.patterns.find(({ id }) => id === reason.pattern)?.name ?? reason.pattern);
    case 'consumable expired':
      return words.expired(consumableName(state, reason.consumable), reason.expires);
    case 'consumable used up':
      return words.usedUp(consumableName(state, reason.consumable));
    case 'no expiry date':
      return words.noExpiry(consumableName(state, reason.consumable));
    case 'no quantity':
      return words.noQuantity(consumableName(state, reason.consumable));
    case 'confirm first':
      return words.notConfirmed(label, reason.fastener);
    case 'in doubt':
      return words.inDoubt(label, reason.fastener);
    case 'witness first':
      return words.noWitnessYet(label, reason.fastener);
    case 'reading first':
      return words.noReadingYet(label, reason.fastener);
    case 'wait not over':
      return words.waitNotOver(reason.seconds);
    case 'own work':
      return words.ownWork(reason.name);
    case 'not worked again':
      return words.notWorkedAgain[reason.because];
    case 'not the mechanic':
      return words.notTheMechanic(reason.name);
    case 'out of order':
      return words.outOfOrder(label, reason.expected, reason.offered);
    case 'no such fastener':
      return words.noSuchFastener(label, reason.expected, reason.offered);
    case 'not the last reading': {
      const last = lastConfirmed(state);
      return words.notTheLast(last ? labelOf(state, last.step) : label, reason.last, reason.offered);
    }
    case 'running torque is read':
      return words.runningTorqueIsRead(label, reason.fastener);
    case 'unclear':
      return words.unclear[reason.doubt];
    default:
      return words.because[reason.code];
  }
}

const consumableName = ({ procedure }: SessionState, id: string): string =>
  procedure.consumables.find((each) => each.id === id)?.name ?? id;
