/** A component comes off in groups of fasteners, the last of them while somebody holds its weight; it goes on in reverse. */
import { orderOf, type Order } from '../tightening/order.ts';
import { planLoosening, type PlannedPass } from '../tightening/passes.ts';
import { layOut, type Pattern } from '../tightening/pattern.ts';
import type { Procedure } from './schema.ts';
import type { StepOf } from './steps.ts';

type LoosenStep = StepOf<'loosen'>;

/** The stages of a release: group after group, those of a group in the order of the step. @throws Refused as the order does */
export function planRelease(step: LoosenStep, pattern: Pattern, tightening: Order): PlannedPass[] {
  const { groups, order, stages } = step;
  const planned = { pattern, tightening, ...(stages ? { stages } : {}) };
  if (!groups) return planLoosening({ ...planned, ...(order ? { order } : {}) });
  const whole = orderOf(pattern, order ?? { kind: 'reverse', of: tightening });
  const parts = groups.map(({ numbers }) => ({
    numbers,
    order: { kind: 'explicit' as const, numbers: whole.filter((number) => numbers.includes(number)) },
  }));
  return planLoosening({ ...planned, order: { kind: 'in turn', parts } });
}

/** Fasteners that come off together, in order. The name is that of their group. */
export interface ReleasePart {
  readonly name: string | null;
  readonly numbers: readonly number[];
  /** Freed only while the weight is held; on refit, it is held until these are started. */
  readonly held: boolean;
}

/** They follow from the procedure alone, which never changes once it is loaded, and are asked for with each call. */
const known = new WeakMap<LoosenStep, readonly ReleasePart[]>();

/** The parts in which a step frees its fasteners in its last stage, first to last. */
export function releaseParts(procedure: Procedure, step: LoosenStep): readonly ReleasePart[] {
  const before = known.get(step);
  if (before) return before;
  const found = makeParts(procedure, step);
  known.set(step, found);
  return found;
}

function makeParts({ patterns }: Procedure, step: LoosenStep): readonly ReleasePart[] {
  const described = patterns.find(({ id }) => id === step.pattern);
  const order = described && planRelease(step, layOut(described.layout), described.order).at(-1)?.order;
  if (!order) return [];
  const groups = step.groups ?? [{ name: null, numbers: order }];
  const parts = groups.map(({ name, numbers }, i) => ({
    name,
    numbers: order.filter((number) => numbers.includes(number)),
    held: step.heldBefore === 'last group' && i === groups.length - 1,
  }));
  const last = parts.at(-1);
  if (step.heldBefore !== 'last fastener' || !last) return parts;
  const before = { ...last, numbers: last.numbers.slice(0, -1) };
  const alone = { name: null, numbers: last.numbers.slice(-1), held: true };
  return [...parts.slice(0, -1), ...(before.numbers.length > 0 ? [before] : []), alone];
}

/**
 * The parts in which the fasteners of a pattern are started by hand at a step: as they came off, in reverse. One part where
 * no earlier step took them off in parts.
 */
export function startParts(procedure: Procedure, step: string, pattern: string): readonly ReleasePart[] {
  const at = procedure.steps.findIndex(({ id }) => id === step);
  const release = procedure.steps
    .slice(0, Math.max(0, at))
    .findLast((each): each is LoosenStep => each.kind === 'loosen' && each.pattern === pattern);
  const parts = release ? releaseParts(procedure, release) : [];
  return parts.map((part) => ({ ...part, numbers: [...part.numbers].reverse() })).reverse();
}

/** The steps of the refit that a tightening is part of: all between the releases of its pattern before and after it. */
export function refitOf({ steps }: Procedure, tightening: StepOf<'tighten'>): Procedure['steps'] {
  const at = steps.indexOf(tightening);
  const isRelease = (step: Procedure['steps'][number]): boolean =>
    step.kind === 'loosen' && step.pattern === tightening.pattern;
  const from = steps.slice(0, at).findLastIndex(isRelease);
  const to = steps.findIndex((step, i) => i > at && isRelease(step));
  return steps.slice(from + 1, to < 0 ? undefined : to);
}
