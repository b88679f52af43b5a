/** All that the tightening and lifting rooms would refuse later, found while the file is read and put in its place. */
import { assessLift } from '../lifting/index.ts';
import { narrowed, only, type Order } from '../tightening/order.ts';
import { MOST_ROUNDS } from '../tightening/pass-values.ts';
import { looseningStages, planPasses, type PassSpec } from '../tightening/passes.ts';
import { numbersOf, type Pattern } from '../tightening/pattern.ts';
import { permissibleErrorPercent, settingRatio, torqueTarget } from '../tightening/index.ts';
import { type Torque, valueIn } from '../units/index.ts';
import { procedureFile } from '../words/procedure-file.ts';
import { attempt, isRefused, type Fault } from './fault.ts';
import { adapterOf, liftTasks } from './lead-hand.ts';
import { checkLayout, checkOrder } from './order-faults.ts';
import { planRelease } from './release.ts';
import type { Procedure } from './schema.ts';
import type { Step, StepOf, TightenStep } from './steps.ts';

/** No joint is worked with more; a larger plan is a slip that would stop the program. */
const MOST_CALLS = 50_000;

/** Faults of a procedure whose references are sound. Without any, every step of it plans. */
export function planningFaults(procedure: Procedure): Fault[] {
  const faults: Fault[] = [];
  const planable = checkPatterns(faults, procedure);
  checkTools(faults, procedure);
  checkLift(faults, procedure);
  let calls = 0;
  for (const [i, step] of procedure.steps.entries()) {
    const path = `steps.${i}`;
    // Counted before anything is planned: a plan that is too large must not be made first.
    calls += callsIn(step, planable);
    if (calls > MOST_CALLS) {
      faults.push({ path, message: procedureFile.tooManyCalls(MOST_CALLS) });
      break;
    }
    checkStep(faults, procedure, planable, step, path);
  }
  return faults;
}

/** How many fasteners a step calls, all its passes together, reckoned from the file alone. */
function callsIn(step: Step, planable: ReadonlyMap<string, Planable>): number {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return 0;
  const all = planable.get(step.pattern)?.pattern.positions.length ?? 0;
  if (step.kind === 'loosen') return all * (step.stages ?? looseningStages()).length;
  const { final, passes } = step;
  const calls = passes.map((pass) => roundsIn(pass, final?.target) * (pass.only?.length ?? all));
  return calls.reduce((sum, each) => sum + each, step.runDown ? all : 0);
}

/** More increments than this are refused when they are looked at one by one. */
function roundsIn(pass: PassSpec, final: Torque | undefined): number {
  if (pass.kind !== 'increments' || final === undefined) return 1;
  const { value, unit } = pass.step;
  const rounds = Math.ceil((valueIn(final, unit) - valueIn(pass.from, unit)) / value) + 1;
  return Math.min(Math.max(rounds, 1), MOST_ROUNDS);
}

interface Planable {
  readonly pattern: Pattern;
  readonly order: Order;
}

/** The patterns that have no fault, by their id. */
function checkPatterns(faults: Fault[], { patterns }: Procedure): ReadonlyMap<string, Planable> {
  const planable = new Map<string, Planable>();
  for (const [i, { id, layout, order }] of patterns.entries()) {
    const pattern = checkLayout(faults, layout, `patterns.${i}.layout`);
    if (pattern && checkOrder(faults, pattern, order, `patterns.${i}.order`)) planable.set(id, { pattern, order });
  }
  return planable;
}

function checkTools(faults: Fault[], { tools }: Procedure): void {
  for (const [i, tool] of tools.entries()) {
    if (tool.class === undefined || tool.maximumError !== undefined) continue;
    attempt(faults, `tools.${i}.class`, () => permissibleErrorPercent(tool, tool.range.max));
  }
}

/** Whether a step about fasteners plans, and all that is wrong with it where it does not. */
function checkStep(
  faults: Fault[],
  procedure: Procedure,
  planable: ReadonlyMap<string, Planable>,
  step: Step,
  path: string,
): void {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return;
  if (step.kind === 'tighten') checkAdapter(faults, procedure, step, path);
  const found = planable.get(step.pattern);
  if (found === undefined) return;
  if (step.kind === 'tighten') checkPasses(faults, found, step, path);
  else checkLoosening(faults, found, step, path);
}

function checkAdapter(faults: Fault[], procedure: Procedure, step: TightenStep, path: string): void {
  if (step.adapter === undefined) return;
  const adapter = adapterOf(procedure, step);
  if (adapter) attempt(faults, `${path}.adapter`, () => settingRatio(adapter));
  else faults.push({ path: `${path}.adapter`, message: procedureFile.noLever(step.tool) });
}

/** Each pass by itself first, so that all that is wrong is told at once; then the schedule as a whole. */
function checkPasses(
  faults: Fault[],
  { pattern, order }: Planable,
  { final, passes }: TightenStep,
  path: string,
): void {
  const before = faults.length;
  if (final) attempt(faults, `${path}.final.target`, () => torqueTarget(final.target, final.window));
  const schedule = { pattern, order, ...(final ? { final } : {}) };
  if (faults.length === before) {
    for (const [i, pass] of passes.entries()) checkPass(faults, schedule, pass, `${path}.passes.${i}`);
  }
  if (faults.length > before) return;
  const down = (): number => passes.findIndex((_, i) => goesDown({ ...schedule, passes: passes.slice(0, i + 1) }));
  attempt(
    faults,
    (code) => (code === 'pass-goes-down' ? `${path}.passes.${down()}` : `${path}.passes`),
    () => planPasses({ ...schedule, passes }),
  );
}

type Schedule = Parameters<typeof planPasses>[0];

function checkPass(faults: Fault[], schedule: Omit<Schedule, 'passes'>, pass: PassSpec, path: string): void {
  const { only: some, order: own } = pass;
  const scope = attempt(faults, `${path}.only`, () => (some ? only(schedule.pattern, some) : schedule.pattern));
  if (scope === null || (own && !checkOrder(faults, scope, own, `${path}.order`))) return;
  const order = narrowed(schedule.order, numbersOf(scope));
  attempt(
    faults,
    (code) => `${path}${PASS_FIELDS[code] ?? ''}`,
    () => planPasses({ ...schedule, pattern: scope, order, passes: [pass] }),
  );
}

/** The field of a pass that a refusal is about; the pass itself where it is none of them. */
const PASS_FIELDS: Readonly<Partial<Record<string, string>>> = {
  'bad-target': '.target',
  'bad-percent': '.percent',
  'bad-step': '.step',
  'bad-angle': '.tolerance',
  'bad-time': '.afterHours',
  'bad-count': '.only',
  'order-does-not-fit': '.only',
};

function goesDown(schedule: Schedule): boolean {
  try {
    planPasses(schedule);
    return false;
  } catch (error) {
    return isRefused(error) && error.code === 'pass-goes-down';
  }
}

function checkLoosening(
  faults: Fault[],
  { pattern, order: tightening }: Planable,
  step: StepOf<'loosen'>,
  path: string,
): void {
  if (step.order && !checkOrder(faults, pattern, step.order, `${path}.order`)) return;
  if (step.heldBefore === 'last group' && !step.groups) {
    faults.push({ path: `${path}.heldBefore`, message: procedureFile.noGroups });
  }
  attempt(faults, step.groups ? `${path}.groups` : path, () => planRelease(step, pattern, tightening));
}

function checkLift(faults: Fault[], procedure: Procedure): void {
  const { component, lift } = procedure;
  if ((component.retains?.value ?? 0) > 0 && component.fluid === undefined) {
    faults.push({ path: 'component.fluid', message: procedureFile.noFluid });
    return;
  }
  const tasks = liftTasks(procedure);
  if (tasks === null || lift === undefined) return;
  // The grip is that of both ends: its fault is told once.
  for (const end of ['origin', 'destination'] as const) {
    if (faults.some(({ path }) => path === 'lift.coupling')) return;
    attempt(
      faults,
      (code) => (code === 'coupling-not-good' ? 'lift.coupling' : `lift.${end}`),
      () => assessLift(tasks[end], lift.system),
    );
  }
}
