/** What the record says of the preparation, folded into the state. */
import type { Procedure } from '../../procedure/procedure.ts';
import { fromWritten } from '../../units/index.ts';
import { withAdapter, withCalibration } from './as-found.ts';
import type { PreparedFact } from './fact.ts';

/** The procedure as it is worked with after a fact. One that no setting could be worked out with changes nothing. */
export function procedureAfter(procedure: Procedure, fact: PreparedFact): Procedure {
  switch (fact.of) {
    case 'tool':
      return fact.calibrationDue === null ? procedure : withCalibration(procedure, fact.tool, fact.calibrationDue);
    case 'adapter':
      return withAdapter(procedure, fact.adapter, fromWritten('length', fact.measured)) ?? procedure;
    case 'approved data':
    case 'helper':
    case 'consumable':
    case 'container':
    case 'lift':
    case 'hazard':
    case 'microphone':
    case 'warning':
      return procedure;
  }
}

/** The day until which each consumable may be used, 'YYYY-MM-DD', by its id: those whose date was entered. */
export const expiriesIn = (facts: readonly PreparedFact[]): ReadonlyMap<string, string> =>
  new Map(facts.flatMap((fact) => (fact.of === 'consumable' ? [[fact.consumable, fact.expires]] : [])));
