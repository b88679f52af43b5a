import type { Pattern, Procedure, Step, TightenStep, Tool } from '../procedure/procedure.ts';
import { layOut } from '../tightening/pattern.ts';
import { planLoosening, planPasses, type PlannedPass } from '../tightening/passes.ts';

/** One fastener in one pass: what is called out, done and recorded as a unit. */
export interface Call {
  readonly label: Pattern['fastener'];
  readonly fastener: number;
  readonly pass: PlannedPass;
}

export interface Plan {
  readonly passes: readonly PlannedPass[];
  /** All calls, in the order in which they are made. */
  readonly calls: readonly Call[];
}

const NOTHING: Plan = { passes: [], calls: [] };
/** Plans follow from the procedure alone, which never changes once it is loaded. */
const plans = new WeakMap<Step, Plan>();

/** The plan of a step; empty for steps that are not about fasteners. */
export function planOf(procedure: Procedure, step: Step): Plan {
  const known = plans.get(step);
  if (known) return known;
  const plan = makePlan(procedure, step);
  plans.set(step, plan);
  return plan;
}

function makePlan(procedure: Procedure, step: Step): Plan {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return NOTHING;
  const described = named(procedure.patterns, step.pattern, 'pattern');
  const pattern = layOut(described.layout);
  const passes =
    step.kind === 'tighten'
      ? planPasses({ ...step, pattern, order: described.order })
      : planLoosening({ ...step, pattern, tightening: described.order });
  const calls = passes.flatMap((pass) =>
    pass.order.map((fastener): Call => ({ label: described.fastener, fastener, pass })),
  );
  return { passes, calls };
}

/** Whether a pass takes a value of each fastener; of the others the mechanic's word is taken. */
export const takesReading = ({ kind }: PlannedPass): boolean => kind === 'torque';

/** The torque tool of a step. */
export const toolOf = (procedure: Procedure, step: TightenStep): Tool => named(procedure.tools, step.tool, 'tool');

function named<T extends { readonly id: string }>(all: readonly T[], id: string, what: string): T {
  const found = all.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`The procedure names a ${what} "${id}" that it does not describe.`);
  return found;
}
