/** Fastener patterns, orders and passes as they stand in a file. */
import * as v from 'valibot';
import type { Layout as LayoutSpec } from '../tightening/pattern.ts';
import type { Order as OrderSpec } from '../tightening/order.ts';
import type { PassSpec } from '../tightening/passes.ts';
import { expected } from '../words/expected.ts';
import { fields, NumberText, oneOf, positive, quantity, Text, TorqueRange, Whole } from './fields.ts';

const MOST_FASTENERS = 1000;

const Numbers = v.pipe(
  v.array(Whole(1, 9999), () => expected.list('fastener numbers')),
  v.minLength(1, () => expected.atLeast('one fastener number')),
);
/** Some of the fasteners; in no order, so that the same one twice is a slip. */
export const Some = v.pipe(
  Numbers,
  v.check(
    (numbers) => new Set(numbers).size === numbers.length,
    () => expected.eachNumberOnce,
  ),
);

const numbers = v.exactOptional(Numbers);
const direction = v.exactOptional(oneOf('clockwise', 'counter-clockwise'));
const round = { startAngle: v.exactOptional(NumberText), direction, numbers };

/** Where the fasteners sit and which numbers are marked on them. */
export const Layout = v.variant(
  'shape',
  [
    fields({ shape: v.literal('ring'), count: Whole(1, MOST_FASTENERS), ...round }),
    fields({
      shape: v.literal('double ring'),
      outer: Whole(1, MOST_FASTENERS),
      inner: Whole(1, MOST_FASTENERS),
      ...round,
    }),
    fields({
      shape: v.literal('rectangle'),
      columns: Whole(1, MOST_FASTENERS),
      rows: Whole(1, MOST_FASTENERS),
      fill: oneOf('edge', 'grid'),
      direction,
      numbers,
    }),
    fields({
      shape: v.literal('free'),
      places: v.pipe(
        v.array(fields({ x: NumberText, y: NumberText }), () => expected.list('places')),
        v.minLength(1, () => expected.atLeast('one place')),
        v.maxLength(MOST_FASTENERS, () => expected.atMost(MOST_FASTENERS, 'places')),
      ),
      numbers,
    }),
  ],
  () => expected.shape,
) satisfies v.GenericSchema<unknown, LayoutSpec>;

/** An order holds orders: the parts of one worked in turn, and the one that is reversed. */
export const Order: v.GenericSchema<OrderSpec> = v.lazy(() => OrderVariants);

/** The order in which they are tightened. A list from the manual (`explicit`) always wins. */
export const OrderVariants = v.variant(
  'kind',
  [
    fields({ kind: v.literal('explicit'), numbers: Numbers }),
    fields({ kind: v.literal('crosswise') }),
    fields({ kind: v.literal('circular') }),
    fields({ kind: v.literal('spiral') }),
    fields({ kind: v.literal('grouped'), size: Whole(1, MOST_FASTENERS) }),
    fields({
      kind: v.literal('in turn'),
      parts: v.pipe(
        v.array(fields({ numbers: Some, order: Order }), () => expected.list('parts')),
        v.minLength(1, () => expected.atLeast('one part')),
      ),
    }),
    fields({ kind: v.literal('reverse'), of: Order }),
  ],
  () => expected.order,
);

/** A target to reach and the window in which a reading is accepted. */
export const Target = fields({ target: positive('torque'), window: TorqueRange });

const scope = { name: v.exactOptional(Text), order: v.exactOptional(Order), only: v.exactOptional(Some) };

/** One line of the schedule of passes. */
export const Pass = v.variant(
  'kind',
  [
    fields({ kind: v.literal('snug'), ...scope }),
    fields({ kind: v.literal('torque'), ...scope, ...Target.entries }),
    fields({ kind: v.literal('percent'), ...scope, percent: NumberText }),
    fields({ kind: v.literal('increments'), ...scope, from: positive('torque'), step: positive('torque') }),
    fields({ kind: v.literal('angle'), ...scope, angle: positive('angle'), tolerance: quantity('angle') }),
    fields({ kind: v.literal('circular check'), ...scope }),
    fields({ kind: v.literal('re-check'), ...scope, afterHours: NumberText }),
  ],
  () => expected.pass,
) satisfies v.GenericSchema<unknown, PassSpec>;
