import type { Procedure } from '../schema.ts';
import type { Step, StepOf } from '../steps.ts';

/** Something in a sound procedure that a careful reader would ask about. */
export interface Finding {
  readonly path: string;
  readonly message: string;
}

export type Rule = (procedure: Procedure) => readonly Finding[];

/** Steps of one kind, each with its place in the procedure. */
export function stepsOf<Kind extends Step['kind']>({ steps }: Procedure, kind: Kind): readonly Placed<StepOf<Kind>>[] {
  return steps.flatMap((step, index) => (isOf(step, kind) ? [{ step, index }] : []));
}

export interface Placed<S extends Step = Step> {
  readonly step: S;
  readonly index: number;
}

const isOf = <Kind extends Step['kind']>(step: Step, kind: Kind): step is StepOf<Kind> => step.kind === kind;

/** Whether a step is worked whenever another one is. */
export const isWorkedWith = (step: Step, other: Step): boolean =>
  step.applies === undefined ||
  (step.applies.condition === other.applies?.condition && step.applies.is === other.applies.is);
