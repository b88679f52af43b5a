/** A fact of the preparation as a line of the record. */
import type { Procedure } from '../../procedure/procedure.ts';
import type { Kind, Written } from '../../units/index.ts';
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
      return `Compared with the register, it is the current approved data: ${fact.document}, revision ${fact.revision}${fact.issued === null ? '' : `, issued ${fact.issued}`}`;
    case 'helper':
      return `${fact.name} helps`;
    case 'tool':
      return fact.calibrationDue === null
        ? `${nameIn(procedure.tools, fact.tool)}: no calibration date known`
        : `${nameIn(procedure.tools, fact.tool)}: calibration holds to ${fact.calibrationDue}, ${fact.from === 'label' ? 'read off its label' : 'by the procedure file'}`;
    case 'adapter':
      return `${nameIn(procedure.adapters, fact.adapter)} measured: ${shown(fact.measured)} (the procedure file says ${shown(fact.filed)}); settings follow the measured length`;
    case 'consumable':
      return `${nameIn(procedure.consumables, fact.consumable)}: may be used to ${fact.expires}`;
    case 'container':
      return `The container holds ${shown(fact.capacity)}${fact.from === 'here' ? '' : ' by the procedure file'}; with the margin ${shown(fact.needed)} may be needed`;
    case 'lift':
      return `${shown(fact.load)} are carried by ${fact.handling}; ${shown(fact.limit)} are recommended for one person, so the least is ${fact.least}`;
    case 'hazard': {
      const step = procedure.steps.find(({ id }) => id === fact.step);
      const hazard = step?.hazards[fact.index];
      return hazard
        ? `Acknowledged before the work: ${hazard.signal}, ${hazard.text} (${step?.title ?? fact.step})`
        : `Hazard ${fact.index + 1} of step ${fact.step} acknowledged before the work`;
    }
    case 'microphone':
      return `Microphone check of ${fact.person}: ${fact.fitness}`;
    case 'warning':
      return `Begun in spite of this: ${fact.sentence}`;
  }
}

/** A fresh packing: "Fetched in the work, new round seal: batch 7, good until 2027-01-31, 2 of it". */
export function fetchedInWords(
  { consumable, batch, expires, quantity }: Extract<EventBody, { kind: 'consumable fetched' }>,
  procedure: Procedure,
): string {
  const facts = [
    batch === null ? 'no batch entered' : `batch ${batch}`,
    ...(expires === null ? [] : [`good until ${expires}`]),
    ...(quantity === null ? [] : [`${quantity} of it`]),
  ];
  return `Fetched in the work, ${nameIn(procedure.consumables, consumable)}: ${facts.join(', ')}`;
}
