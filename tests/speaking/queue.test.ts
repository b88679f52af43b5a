import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, EMPTY_QUEUE, finish, itemsOf, startNext, type Queue } from '../../src/speaking/queue.ts';

interface Item {
  readonly name: number;
  readonly urgent: boolean;
}
const calm = (name: number): Item => ({ name, urgent: false });
const urgent = (name: number): Item => ({ name, urgent: true });
const waiting = (...items: Item[]): Queue<Item> =>
  items.reduce<Queue<Item>>((queue, item) => add(queue, item).queue, EMPTY_QUEUE);
const names = (queue: Queue<Item>): number[] => itemsOf(queue).map(({ name }) => name);

/** Speaks a queue out to its end and returns the names in the order in which they were started. */
function speakOut(queue: Queue<Item>): number[] {
  const started = startNext(queue);
  return started.speaking ? [started.speaking.name, ...speakOut(finish(started, started.speaking))] : [];
}

describe('the queue', () => {
  test('speaks in the order of arrival', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat()), (order) => {
        expect(speakOut(waiting(...order.map(calm)))).toEqual(order);
      }),
    );
  });

  test('keeps the order among urgent and among other items, urgent ones first', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean()), (kinds) => {
        const items = kinds.map((isUrgent, name) => ({ name, urgent: isUrgent }));
        const inOrder = [...items.filter((item) => item.urgent), ...items.filter((item) => !item.urgent)];
        expect(speakOut(waiting(...items))).toEqual(inOrder.map(({ name }) => name));
      }),
    );
  });

  test('an urgent item cuts short what is being spoken and goes next', () => {
    const speaking = startNext(waiting(calm(1), calm(2)));
    const { queue, cutShort } = add(speaking, urgent(3));
    expect(cutShort).toEqual(calm(1));
    expect(queue.speaking).toBeNull();
    expect(speakOut(queue)).toEqual([3, 2]);
  });

  test('an urgent item waits for another urgent one to end', () => {
    const { queue, cutShort } = add(startNext(waiting(urgent(1), calm(2))), urgent(3));
    expect(cutShort).toBeNull();
    expect(names(queue)).toEqual([1, 3, 2]);
  });

  test('starts nothing while something is being spoken', () => {
    const speaking = startNext(waiting(calm(1), calm(2)));
    expect(startNext(speaking)).toEqual(speaking);
  });

  test('the late end of an item that was cut short does not end its successor', () => {
    const first = calm(1);
    const { queue } = add(startNext(waiting(first)), urgent(2));
    const successor = startNext(queue);
    expect(finish(successor, first).speaking).toEqual(urgent(2));
  });
});
