import * as v from 'valibot';
import type { Layout as LayoutSpec } from '../tightening/pattern.ts';
import type { Order as OrderSpec } from '../tightening/order.ts';
import type { PassSpec } from '../tightening/passes.ts';
import { Decimal, Text, Whole, positive, quantity } from './fields.ts';

const MOST_FASTENERS = 1000;

const Numbers = v.array(Whole(1, 9999), 'expected a list of fastener numbers, such as [1, 2, 3]');
const Direction = v.picklist(['clockwise', 'counter-clockwise'], 'expected one of: clockwise, counter-clockwise');
const Degrees = v.pipe(Decimal, v.transform(Number));
const numbers = v.exactOptional(Numbers);
const round = { startAngle: v.exactOptional(Degrees), direction: v.exactOptional(Direction), numbers };

/** Where the fasteners sit and which numbers are marked on them. */
export const Layout = v.variant(
  'shape',
  [
    v.strictObject({ shape: v.literal('ring'), count: Whole(1, MOST_FASTENERS), ...round }),
    v.strictObject({
      shape: v.literal('double ring'),
      outer: Whole(1, MOST_FASTENERS),
      inner: Whole(1, MOST_FASTENERS),
      ...round,
    }),
    v.strictObject({
      shape: v.literal('rectangle'),
      columns: Whole(1, MOST_FASTENERS),
      rows: Whole(1, MOST_FASTENERS),
      fill: v.picklist(['edge', 'grid'], 'expected one of: edge, grid'),
      direction: v.exactOptional(Direction),
      numbers,
    }),
    v.strictObject({
      shape: v.literal('free'),
      places: v.pipe(
        v.array(v.strictObject({ x: Degrees, y: Degrees })),
        v.minLength(1, 'expected at least one place'),
      ),
      numbers,
    }),
  ],
  'expected a shape: ring, double ring, rectangle or free',
) satisfies v.GenericSchema<unknown, LayoutSpec>;

/** The order in which they are tightened. A list from the manual (`explicit`) always wins. */
export const Order: v.GenericSchema<OrderInput, OrderSpec> = v.lazy(() => OrderVariants);

const OrderVariants = v.variant(
  'kind',
  [
    v.strictObject({ kind: v.literal('explicit'), numbers: Numbers }),
    v.strictObject({ kind: v.literal('crosswise') }),
    v.strictObject({ kind: v.literal('circular') }),
    v.strictObject({ kind: v.literal('spiral') }),
    v.strictObject({ kind: v.literal('grouped'), size: Whole(1, MOST_FASTENERS) }),
    v.strictObject({
      kind: v.literal('in turn'),
      parts: v.array(v.strictObject({ numbers: Numbers, order: Order })),
    }),
    v.strictObject({ kind: v.literal('reverse'), of: Order }),
  ],
  'expected a kind of order: explicit, crosswise, circular, spiral, grouped, in turn or reverse',
);

type OrderInput = OrderSpec;

export const Window = v.pipe(
  v.strictObject(
    { min: positive('torque'), max: positive('torque') },
    'expected a window: { "min": a torque, "max": a torque }',
  ),
);

const scope = { name: v.exactOptional(Text), order: v.exactOptional(Order), only: v.exactOptional(Numbers) };

/** One line of the schedule of passes. */
export const Pass = v.variant(
  'kind',
  [
    v.strictObject({ kind: v.literal('snug'), ...scope }),
    v.strictObject({ kind: v.literal('torque'), ...scope, target: positive('torque'), window: Window }),
    v.strictObject({ kind: v.literal('percent'), ...scope, percent: v.pipe(Decimal, v.transform(Number)) }),
    v.strictObject({ kind: v.literal('increments'), ...scope, from: positive('torque'), step: positive('torque') }),
    v.strictObject({ kind: v.literal('angle'), ...scope, angle: positive('angle'), tolerance: quantity('angle') }),
    v.strictObject({ kind: v.literal('circular check'), ...scope }),
    v.strictObject({
      kind: v.literal('re-check'),
      ...scope,
      afterHours: v.pipe(Decimal, v.transform(Number)),
    }),
  ],
  'expected a kind of pass: snug, torque, percent, increments, angle, circular check or re-check',
) satisfies v.GenericSchema<unknown, PassSpec>;
