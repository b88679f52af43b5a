/** A fact of the preparation as a line of the record. */
import type { Procedure } from '../../procedure/procedure.ts';
import type { Kind, Written } from '../../units/index.ts';
import { prepared } from '../../words/prepared.ts';
import type { EventBody } from '../event.ts';
import type { PreparedFact } from './fact.ts';

const shown = ({ value, unit }: Written<Kind>): string => `${value} ${unit}`;

/** A record from elsewhere may name what its procedure does not have: then the name itself is shown. */
const nameIn = (all: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  all.find((each) => each.id === id)?.name ?? id;

/** @param procedure what it names is looked up there */
export function factInWords(fact: PreparedFact, procedure: Procedure): string {
  switch (fact.of) {
    case 'approved data':
      return prepared.approvedData(fact.document, fact.revision, fact.issued);
    case 'helper':
      return prepared.helper(fact.name);
    case 'tool': {
      const tool = nameIn(procedure.tools, fact.tool);
      return fact.calibrationDue === null
        ? prepared.noCalibration(tool)
        : prepared.calibration(tool, fact.calibrationDue, fact.from);
    }
    case 'adapter':
      return prepared.adapter(nameIn(procedure.adapters, fact.adapter), shown(fact.measured), shown(fact.filed));
    case 'consumable':
      return prepared.consumable(nameIn(procedure.consumables, fact.consumable), fact.expires);
    case 'container':
      return prepared.container(shown(fact.capacity), fact.from, shown(fact.needed));
    case 'lift':
      return prepared.lift(shown(fact.load), fact.handling, shown(fact.limit), fact.least);
    case 'hazard': {
      const step = procedure.steps.find(({ id }) => id === fact.step);
      const hazard = step?.hazards[fact.index];
      return hazard
        ? prepared.hazard(hazard.signal, hazard.text, step?.title ?? fact.step)
        : prepared.unknownHazard(fact.index + 1, fact.step);
    }
    case 'microphone':
      return prepared.microphone(fact.person, fact.fitness);
    case 'warning':
      return prepared.inSpiteOf(fact.sentence);
  }
}

/** A fresh packing, which was fetched during the work. */
export function fetchedInWords(
  { consumable, batch, expires, quantity }: Extract<EventBody, { kind: 'consumable fetched' }>,
  procedure: Procedure,
): string {
  return prepared.fetched(nameIn(procedure.consumables, consumable), batch, expires, quantity);
}
