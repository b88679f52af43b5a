/** Layouts and orders that the tightening room refuses, as faults at their place. */
import { layOut, type Layout, type Pattern } from '../tightening/pattern.ts';
import { only, type Order, orderGroups } from '../tightening/order.ts';
import { attempt, type Fault } from './fault.ts';

/** The pattern of a layout; null after a fault. */
export const checkLayout = (faults: Fault[], layout: Layout, path: string): Pattern | null =>
  attempt(
    faults,
    (code) => (code === 'bad-place' ? `${path}.places` : code === 'bad-count' ? path : `${path}.numbers`),
    () => layOut(layout),
  );

/** Whether an order works every fastener once. Goes into nested orders, so that a fault is put where it is. */
export function checkOrder(faults: Fault[], pattern: Pattern, order: Order, path: string): boolean {
  const before = faults.length;
  switch (order.kind) {
    case 'reverse':
      return checkOrder(faults, pattern, order.of, `${path}.of`);
    case 'in turn': {
      const all = order.parts.flatMap(({ numbers }) => numbers);
      if (attempt(faults, `${path}.parts`, () => orderGroups(pattern, { kind: 'explicit', numbers: all }))) {
        for (const [i, part] of order.parts.entries()) {
          checkOrder(faults, only(pattern, part.numbers), part.order, `${path}.parts.${i}.order`);
        }
      }
      return faults.length === before;
    }
    case 'explicit':
      return attempt(faults, `${path}.numbers`, () => orderGroups(pattern, order)) !== null;
    case 'grouped':
      return attempt(faults, `${path}.size`, () => orderGroups(pattern, order)) !== null;
    case 'crosswise':
    case 'circular':
    case 'spiral':
      return attempt(faults, path, () => orderGroups(pattern, order)) !== null;
  }
}
