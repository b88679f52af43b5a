/** Rules about warnings, cautions and notices. */
import { lint } from '../../words/lint.ts';
import type { Procedure } from '../schema.ts';
import type { Step } from '../steps.ts';
import type { Finding, Rule } from './rule.ts';

type Hazard = Step['hazards'][number];

const eachHazard = (
  { steps }: Procedure,
  messageFor: (hazard: Hazard, before: Hazard | undefined) => string | null,
): readonly Finding[] =>
  steps.flatMap(({ hazards }, i) =>
    hazards.flatMap((hazard, j) => {
      const message = messageFor(hazard, hazards[j - 1]);
      return message === null ? [] : [{ path: `steps.${i}.hazards.${j}`, message }];
    }),
  );

/** Verbs of the work itself, at the start of a sentence. 'Keep clear' or 'Do not …' tell how to avoid harm and are fine. */
const WORK =
  /(?:^|[.;:] )(tighten|loosen|torque|remove|take (?:off|out)|fit|install|drain|fill|open|close|connect|disconnect|lock|lift|clean|replace)\b/i;

/** Whoever only skims a hazard would miss the work in it. */
export const workInHazard: Rule = (procedure) =>
  eachHazard(procedure, ({ text }) => {
    const verb = WORK.exec(text)?.[1];
    return verb === undefined ? null : lint.workInHazard(verb);
  });

const GRAVITY: Readonly<Record<Hazard['signal'], number>> = { danger: 0, warning: 1, caution: 2, notice: 3 };

export const hazardsOutOfOrder: Rule = (procedure) =>
  eachHazard(procedure, ({ signal }, before) =>
    before !== undefined && GRAVITY[signal] < GRAVITY[before.signal]
      ? lint.hazardsOutOfOrder(signal, before.signal)
      : null,
  );

/** In no scheme is danger about equipment alone or notice about harm to a person. */
export const signalAgainstConsequence: Rule = (procedure) =>
  eachHazard(procedure, ({ signal, consequence }) =>
    (signal === 'danger' && consequence === 'equipment') || (signal === 'notice' && consequence === 'person')
      ? lint.otherHarm(signal, consequence)
      : null,
  );
