/** Who works, against what the procedure wants. */
import type { Procedure, Step } from '../../procedure/procedure.ts';
import { preparation } from '../../words/preparation.ts';
import type { People } from '../event.ts';
import { isSamePerson, tidyName } from '../people.ts';
import type { Entered } from './entered.ts';
import { stop, warn, type Finding } from './finding.ts';

export const peopleIn = ({ mechanic, second }: Entered): People => ({
  mechanic: tidyName(mechanic),
  second: tidyName(second) || null,
});

export const helpersIn = ({ helpers }: Entered): readonly string[] => helpers.split(',').map(tidyName).filter(Boolean);

/** Everybody who is named, each once. */
export function namedIn(entered: Entered): readonly string[] {
  const { mechanic, second } = peopleIn(entered);
  const all = [mechanic, second ?? '', ...helpersIn(entered)].filter(Boolean);
  return all.filter((name, i) => !all.slice(0, i).some((other) => isSamePerson(other, name)));
}

export function peopleFindings(procedure: Procedure, steps: readonly Step[], entered: Entered): readonly Finding[] {
  const { mechanic, second } = peopleIn(entered);
  const named = namedIn(entered).length;
  const wanted = procedure.persons ?? 1;
  const witnessed = steps.find(wantsSecond);
  return [
    ...(mechanic === '' ? [stop('people', preparation.people.noMechanic)] : []),
    ...(second !== null && isSamePerson(mechanic, second) ? [stop('people', preparation.people.ownWitness)] : []),
    ...(mechanic !== '' && named < wanted ? [stop('people', preparation.people.tooFew(wanted, named))] : []),
    ...(second === null && witnessed ? [warn('people', preparation.people.noSecond(witnessed.title))] : []),
  ];
}

const wantsSecond = (step: Step): boolean =>
  step.witness || step.kind === 'witness' || (step.kind === 'tighten' && step.confirm === 'witness each');
