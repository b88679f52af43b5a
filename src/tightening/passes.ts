/** Passes: from the manual's schedule to the numbered passes that are worked, each with its order, target and window. */
import { compare, type Torque } from '../units/index.ts';
import { passes as words } from '../words/passes.ts';
import { narrowed, only, type Order, orderGroups } from './order.ts';
import type { PassSpec, PlannedPass } from './pass.ts';
import { valuesOf } from './pass-values.ts';
import { numbersOf, type Pattern } from './pattern.ts';
import { refuse } from './refusal.ts';
import { type TorqueTarget, written } from './target.ts';

export type { PassSpec, PlannedPass } from './pass.ts';

export interface Schedule {
  readonly pattern: Pattern;
  readonly order: Order;
  /** The value all percentages, increments and checks refer to. */
  readonly final?: TorqueTarget;
  readonly passes: readonly PassSpec[];
}

/**
 * The passes of a schedule, in time linear in fasteners × passes.
 * @throws Refused `no-passes`, `no-final-target`, `bad-target`, `bad-percent`, `bad-step`, `bad-angle`, `bad-time`;
 * `pass-goes-down` when a fastener would get less than it had; `missing-fastener` when one is in no pass at all; and
 * whatever the orders refuse.
 */
export function planPasses({ pattern, order, final, passes }: Schedule): PlannedPass[] {
  const worked = passes.flatMap((spec) => {
    const scope = spec.only === undefined ? pattern : only(pattern, spec.only);
    const own = spec.order ?? (isRoundTheRing(spec.kind) ? CIRCULAR : narrowed(order, numbersOf(scope)));
    const groups = orderGroups(scope, own);
    return valuesOf(spec, final).map((value) => ({ ...value, groups, order: groups.flat(), orderKind: own.kind }));
  });
  if (worked.length === 0) refuse('no-passes', words.noPasses);
  const planned = worked.map((pass, i) => ({ ...pass, index: i + 1, of: worked.length }));
  neverDown(planned);
  nobodyLeftOut(planned, pattern);
  return planned;
}

const CIRCULAR: Order = { kind: 'circular' };
const isRoundTheRing = (kind: PassSpec['kind']): boolean => kind === 'circular check' || kind === 're-check';

function neverDown(planned: readonly PlannedPass[]): void {
  const reached = new Map<number, Torque>();
  for (const pass of planned) {
    if (pass.target === null) continue;
    for (const fastener of pass.order) {
      const before = reached.get(fastener);
      if (before !== undefined && compare(pass.target, before) < 0) {
        refuse('pass-goes-down', words.goesDown(pass.index, fastener, written(pass.target), written(before)));
      }
      reached.set(fastener, pass.target);
    }
  }
}

function nobodyLeftOut(planned: readonly PlannedPass[], pattern: Pattern): void {
  const worked = new Set(planned.flatMap(({ order }) => order));
  const left = numbersOf(pattern).filter((number) => !worked.has(number));
  if (left.length > 0) refuse('missing-fastener', words.leftOut(left));
}

/** How a pattern is freed: in stages, in the manual's order or else in reverse of the tightening order. */
export interface Loosening {
  readonly pattern: Pattern;
  readonly tightening: Order;
  /** The manual's own order for removal; it wins. */
  readonly order?: Order;
  /** What is done to each fastener in each stage. */
  readonly stages?: readonly string[];
}

/** Freed a little all round first, so that no stud takes the whole load (common practice). */
export const looseningStages = (): readonly string[] => words.stages;

/** @throws Refused `no-passes` for an empty list of stages, and whatever the order refuses. */
export function planLoosening({ pattern, tightening, order, stages = looseningStages() }: Loosening): PlannedPass[] {
  if (stages.length === 0) refuse('no-passes', words.noStages);
  const own: Order = order ?? { kind: 'reverse', of: tightening };
  const groups = orderGroups(pattern, own);
  const shared = { kind: 'loosen', target: null, window: null, groups, order: groups.flat() } as const;
  return stages.map((name, i) => ({ ...shared, name, orderKind: own.kind, index: i + 1, of: stages.length }));
}
