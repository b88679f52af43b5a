import type { Pattern, Procedure, Step, TightenStep, Tool } from '../procedure/procedure.ts';
import { planRelease } from '../procedure/release.ts';
import { layOut } from '../tightening/pattern.ts';
import { planPasses, type PlannedPass } from '../tightening/passes.ts';
import { passes as words } from '../words/passes.ts';

/** The place of the round of running torque: before the first pass, which is 1. */
export const RUNNING_ROUND = 0;

/** The round before the first pass, in which the running torque of each nut is measured. It is no pass of the manual. */
export interface RunningRound {
  readonly kind: 'running torque';
  readonly index: typeof RUNNING_ROUND;
  readonly name: string;
  readonly order: readonly number[];
  readonly target: null;
  readonly window: null;
}

/** Once round the fasteners. */
export type Round = PlannedPass | RunningRound;

/** One fastener in one round: what is called out, done and recorded as a unit. */
export interface Call<R extends Round = Round> {
  readonly label: Pattern['fastener'];
  readonly fastener: number;
  readonly pass: R;
}

export interface Plan {
  readonly running: RunningRound | null;
  readonly passes: readonly PlannedPass[];
  /** All calls, in the order in which they are made. */
  readonly calls: readonly Call[];
}

const NOTHING: Plan = { running: null, passes: [], calls: [] };
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
      : planRelease(step, pattern, described.order);
  const running = step.kind === 'tighten' && step.runDown ? runningRound(passes) : null;
  const calls = [...(running ? [running] : []), ...passes].flatMap((pass) =>
    pass.order.map((fastener): Call => ({ label: described.fastener, fastener, pass })),
  );
  return { running, passes, calls };
}

/** Before every pass, also one by hand: a nut that is seated has no running torque to measure any more. */
function runningRound(passes: readonly PlannedPass[]): RunningRound | null {
  const order = [...new Set(passes.filter(({ target }) => target !== null).flatMap((pass) => pass.order))];
  const byHand = { target: null, window: null } as const;
  return order.length === 0
    ? null
    : { kind: 'running torque', index: RUNNING_ROUND, name: words.running, order, ...byHand };
}

/** A call that takes a torque reading of its fastener. */
export type TorqueCall = Call<Extract<PlannedPass, { kind: 'torque' }>>;
/** A call that takes a value; of all others the mechanic's word is taken. */
export type ReadCall = TorqueCall | Call<RunningRound>;
export const isTorqueCall = (call: Call): call is TorqueCall => call.pass.kind === 'torque';
export const isReadCall = (call: Call): call is ReadCall => isTorqueCall(call) || call.pass.kind === 'running torque';

/** Passes that go round at the final target again and again until no nut turns. */
export const checksForTurning = ({ kind }: Round): boolean => kind === 'circular check' || kind === 're-check';

/** The torque tool of a step. */
export const toolOf = ({ tools }: Procedure, step: TightenStep): Tool => named(tools, step.tool, 'tool');

/** The tool that running torque is measured with: that of the step where it has none of its own. */
export const runningToolOf = ({ tools }: Procedure, step: TightenStep): Tool =>
  named(tools, step.runDown?.tool ?? step.tool, 'tool');

/** The tool of one round of a step, by its number. */
export const toolFor = (procedure: Procedure, step: TightenStep, round: number): Tool =>
  round === RUNNING_ROUND ? runningToolOf(procedure, step) : toolOf(procedure, step);

function named<T extends { readonly id: string }>(all: readonly T[], id: string, what: string): T {
  const found = all.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`The procedure names a ${what} "${id}" that it does not describe.`);
  return found;
}
