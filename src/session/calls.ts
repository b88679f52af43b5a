import type { Pattern, Procedure, Step, TightenStep, Tool } from '../procedure/procedure.ts';
import { layOut } from '../tightening/pattern.ts';
import { planLoosening, planPasses, type PlannedPass } from '../tightening/passes.ts';
import { torque, toWritten, type Written } from '../units/index.ts';

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

/** A call that takes a value of its fastener; of all others the mechanic's word is taken. */
export interface TorqueCall extends Call {
  readonly pass: TorquePass;
}
type TorquePass = Extract<PlannedPass, { kind: 'torque' }>;
export const isTorqueCall = (call: Call): call is TorqueCall => call.pass.kind === 'torque';

/** Passes that go round at the final target again and again until no nut turns. */
export const checksForTurning = ({ kind }: PlannedPass): boolean => kind === 'circular check' || kind === 're-check';

/**
 * The value to reach in a pass, as it is called out and set on a tool. Six digits, so that the dust of a percentage is
 * neither spoken nor recorded.
 */
export const calledValue = ({ target }: Pick<TorquePass, 'target'>): Written<'torque'> =>
  toWritten(torque(Number(target.value.toPrecision(6)), target.unit));

/** The torque tool of a step. */
export const toolOf = (procedure: Procedure, step: TightenStep): Tool => named(procedure.tools, step.tool, 'tool');

function named<T extends { readonly id: string }>(all: readonly T[], id: string, what: string): T {
  const found = all.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`The procedure names a ${what} "${id}" that it does not describe.`);
  return found;
}
