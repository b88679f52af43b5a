import { explainTool } from '../language/explain.ts';
import { labelOf } from '../language/say.ts';
import { nameOfKey } from '../language/say-point.ts';
import type { EventBody } from '../session/event.ts';
import type { Meaning, SaidReading } from '../session/intent.ts';
import type { Refusal } from '../session/refusal.ts';
import { currentStep, lastConfirmed, type SessionState } from '../session/state.ts';

/**
 * What was refused and why, as a line of the record: what was meant, then the reason as a fact.
 * @param state a refusal changes nothing, so the state after it is the one it was refused in
 */
export function describeRefusal({ meaning, reason }: Extract<EventBody, { kind: 'refused' }>, state: SessionState) {
  return `Refused: ${meant(meaning)}. ${because(reason, state)}`;
}

function meant(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'reading':
      return `reading ${said(meaning.reading)}`;
    case 'witness':
      return `witness ${said(meaning.reading)}`;
    case 'correction':
      return `correction to ${said(meaning.reading)}`;
    case 'click':
      return meaning.fastener === null ? 'click' : `click at number ${meaning.fastener}`;
    case 'answer':
      return `answer “${meaning.outcome}”`;
    case 'unclear':
      return meaning.readings.length > 0 ? `reading ${meaning.readings.map(said).join(', or ')}` : 'what was heard';
    case 'question':
      return 'a question';
    case 'silence':
      return 'silence';
    case 'observed':
      return `value “${meaning.value}”`;
    case 'inspects':
      return `${meaning.name || 'somebody'} inspecting`;
    case 'dispose':
      return `decision “${meaning.what}” by ${meaning.by || 'somebody'}`;
    case 'fresh consumable':
      return `fresh ${meaning.consumable}, batch “${meaning.batch}”, good until “${meaning.expires}”`;
    case 'sign':
      return `signature of ${meaning.name || 'somebody'} as ${meaning.role}`;
    case 'witness says':
      return `witness ${meaning.agrees ? '“affirm”' : '“negative”'}`;
    case 'report':
      return `report of ${meaning.what}`;
    case 'reason':
      return `“${meaning.text}”`;
    case 'take over':
      return `${meaning.name || 'somebody'} taking over`;
    case 'second person':
      return meaning.name === null ? 'second person leaving' : `${meaning.name || 'somebody'} as second person`;
    case 'time passed':
      return 'time passing';
    case 'held':
    case 'set down':
    case 'help':
    case 'hand over':
    case 'leave open':
    case 'reopen':
    case 'next':
    case 'turned':
    case 'back':
    case 'say again':
    case 'stand by':
    case 'continue':
    case 'affirm':
    case 'negative':
    case 'disregard':
      return `“${meaning.kind}”`;
  }
}

const said = ({ fastener, value }: SaidReading): string =>
  fastener === null ? `“${value}”` : `“${value}” for number ${fastener}`;

function because(reason: Refusal, state: SessionState): string {
  const step = currentStep(state)?.id;
  const label = step === undefined ? 'fastener' : labelOf(state, step);
  switch (reason.code) {
    case 'standing by':
      return 'The work was stopped, standing by';
    case 'not standing by':
      return 'The work was not stopped';
    case 'session closed':
      return 'The record was closed';
    case 'warning first':
      return 'The warning was not acknowledged yet';
    case 'condition first':
      return 'It was not answered yet whether the step applies';
    case 'tool not usable': {
      const tool = state.procedure.tools.find(({ id }) => id === reason.tool);
      return tool ? explainTool({ tool, reasons: reason.reasons }) : `Tool ${reason.tool} may not be used here`;
    }
    case 'point first':
      return `It was not answered yet: ${nameOfKey(state.procedure, reason.point)}`;
    case 'unaccounted':
      return `Not accounted for yet: ${reason.points.map((key) => nameOfKey(state.procedure, key)).join('; ')}`;
    case 'seal not reusable': {
      const seal = state.procedure.seals.find(({ id }) => id === reason.seal)?.name ?? reason.seal;
      return `The ${seal} cannot be used again: ${reason.failed === null ? 'the manual never has it so' : `it failed “${reason.failed}”`}`;
    }
    case 'seal not seated':
      return `The ${state.procedure.seals.find(({ id }) => id === reason.seal)?.name ?? reason.seal} was not seated`;
    case 'not started by hand':
      return `Not all fasteners of ${state.procedure.patterns.find(({ id }) => id === reason.pattern)?.name ?? reason.pattern} were started by hand`;
    case 'consumable expired':
      return `The ${consumableName(state, reason.consumable)} was good until ${reason.expires}`;
    case 'consumable used up':
      return `The ${consumableName(state, reason.consumable)} was used up`;
    case 'no such consumable':
      return 'The procedure has no such consumable';
    case 'no expiry date':
      return `No day was entered until which the ${consumableName(state, reason.consumable)} may be used`;
    case 'no quantity':
      return `It was not entered how many of the ${consumableName(state, reason.consumable)} there are`;
    case 'confirm first':
      return `The reading of ${label} ${reason.fastener} was not confirmed yet`;
    case 'witness first':
      return `The witness of ${label} ${reason.fastener} had not read yet`;
    case 'no second person':
      return 'A witness is wanted, and there is no second person but the mechanic';
    case 'nothing to witness':
      return 'There was nothing to witness';
    case 'step witness first':
      return 'The second person had not looked yet';
    case 'doer is no witness':
      return 'The mechanic cannot witness their own work';
    case 'no name':
      return 'No name was given';
    case 'between steps':
      return 'The step was begun: work is handed over between steps';
    case 'not handing over':
      return 'Nobody was handing over';
    case 'same mechanic':
      return 'That was the same mechanic';
    case 'break first':
      return 'It was not said yet whether all is as it was left';
    case 'reason first':
      return 'The reason of the deviation was not confirmed yet';
    case 'no reason wanted':
      return 'No reason was wanted';
    case 'nothing to report on':
      return 'No fastener was called that this could be reported of';
    case 'report first':
      return 'Nothing was reported of the fastener that is called';
    case 'nothing to confirm':
      return 'There was nothing to confirm';
    case 'value first':
      return 'A value was wanted';
    case 'value unconfirmed':
      return 'The observed value was not confirmed yet';
    case 'scale ends at zero':
      return 'The scale does not go below zero';
    case 'wait first':
      return 'The wait had not begun';
    case 'wait not over':
      return `The wait was not over: ${reason.seconds} s were left`;
    case 'inspector first':
      return 'The inspector had not looked yet';
    case 'own work':
      return `${reason.name} did the work, and somebody who did not was wanted`;
    case 'closing':
      return 'All steps were done: decisions and signatures were wanted';
    case 'nothing to decide':
      return 'There was nothing to decide about that';
    case 'not worked again':
      return NOT_WORKED_AGAIN[reason.because];
    case 'nothing to sign':
      return 'There was nothing to sign';
    case 'not the mechanic':
      return `${reason.name} was not the mechanic`;
    case 'hold first':
      return 'It was not said yet that the weight is held';
    case 'holding':
      return 'Both hands were under the weight';
    case 'set down first':
      return 'All calls were said; it was to be set down';
    case 'nothing to hold':
      return 'There was nothing to hold in this step';
    case 'not holding':
      return 'Nothing was held';
    case 'nothing to correct':
      return 'There was no reading to correct';
    case 'answer first':
      return 'The check was not answered yet';
    case 'no such answer':
      return 'That is no answer to this check';
    case 'no reading here':
      return 'No reading is taken in this step';
    case 'reading first':
      return `The reading of ${label} ${reason.fastener} was still to come`;
    case 'out of order':
      return `Out of order: ${label} ${reason.expected} was next, not ${label} ${reason.offered}`;
    case 'no such fastener':
      return `There is no ${label} ${reason.offered}; ${label} ${reason.expected} was next`;
    case 'not the last reading': {
      const last = lastConfirmed(state);
      const its = last ? labelOf(state, last.step) : label;
      return `Only the last reading can be corrected: ${its} ${reason.last}, not ${its} ${reason.offered}`;
    }
    case 'not a setting tool':
      return 'The tool shows a value, so a click is no reading';
    case 'running torque is read':
      return `The running torque of ${label} ${reason.fastener} is read, so a click is no reading`;
    case 'first step':
      return 'It was the first step';
    case 'readings stand':
      return 'Confirmed readings stand in this step or the one before it';
    case 'unclear':
      return UNCLEAR[reason.doubt];
  }
}

const NOT_WORKED_AGAIN: Readonly<Record<Extract<Refusal, { code: 'not worked again' }>['because'], string>> = {
  'not left open': 'It was put right in the work already',
  'moved since': 'The unit was opened or moved after that step',
  'nut seated': 'The nut was seated, so its running torque could not be measured',
};

const consumableName = ({ procedure }: SessionState, id: string): string =>
  procedure.consumables.find((each) => each.id === id)?.name ?? id;

const UNCLEAR: Readonly<Record<Extract<Refusal, { code: 'unclear' }>['doubt'], string>> = {
  'several readings': 'It could be understood in more than one way',
  'not sure': 'It was not heard surely enough',
  'other unit': 'The unit is not that of the tool',
};
