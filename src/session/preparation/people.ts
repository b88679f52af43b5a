/** Who works, against what the procedure wants. */
import type { Procedure, Step } from '../../procedure/procedure.ts';
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
    ...(mechanic === ''
      ? [stop('people', 'Nobody is named as mechanic. Type the name: the record says by whom the work was done.')]
      : []),
    ...(second !== null && isSamePerson(mechanic, second)
      ? [stop('people', 'The second person must be somebody else: nobody witnesses their own work.')]
      : []),
    ...(mechanic !== '' && named < wanted
      ? [
          stop(
            'people',
            `The procedure needs ${wanted} people, and ${named} ${named === 1 ? 'is' : 'are'} named. Name the others, or wait for them.`,
          ),
        ]
      : []),
    ...(second === null && witnessed
      ? [
          warn(
            'people',
            `“${witnessed.title}” wants a second person, and none is named. One can join during the work; until then it stops there.`,
          ),
        ]
      : []),
  ];
}

const wantsSecond = (step: Step): boolean =>
  step.witness || step.kind === 'witness' || (step.kind === 'tighten' && step.confirm === 'witness each');
