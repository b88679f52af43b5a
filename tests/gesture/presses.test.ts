import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TIMING, type Bindings } from '../../src/gesture/bindings.ts';
import { afterKey, NO_PRESSES, type KeyInput, type Pressed } from '../../src/gesture/presses.ts';

const bindings: Bindings = {
  switches: [
    { keys: ['a'], press: 'forward' },
    { keys: ['b'], press: 'backward', long: 'stand by' },
    { keys: ['c'], press: 'forward', long: 'stand by', double: 'pick' },
  ],
  timing: TIMING,
  pace: null,
  isSpoken: false,
};
const { longPress, doublePress, bounce } = TIMING;

function play(inputs: readonly KeyInput[]): readonly Pressed[] {
  let presses = NO_PRESSES;
  return inputs.flatMap((input) => {
    const after = afterKey(presses, input, bindings);
    presses = after.presses;
    return after.done;
  });
}
const down = (key: string, at: number): KeyInput => ({ kind: 'down', key, at });
const up = (key: string, at: number): KeyInput => ({ kind: 'up', key, at });
const time = (at: number): KeyInput => ({ kind: 'time', at });
const told = (inputs: readonly KeyInput[]) => play(inputs).map(({ of, kind, at }) => [of, kind, at]);

describe('a switch with one meaning', () => {
  test('counts as it goes down, and once however long it stays', () =>
    expect(told([down('a', 0), time(5000), up('a', 9000)])).toEqual([[0, 'press', 0]]));
  test('that bounces is one press', () =>
    expect(told([down('a', 0), up('a', 50), down('a', 50 + bounce - 1), up('a', 300)])).toEqual([[0, 'press', 0]]));
  test('whose coming up was not seen counts again', () =>
    expect(told([down('a', 0), down('a', 2000)])).toHaveLength(2));
});

describe('a switch with a long press', () => {
  test('counts as short when it comes up before', () =>
    expect(told([down('b', 0), up('b', longPress - 1)])).toEqual([[1, 'press', longPress - 1]]));
  test('counts as long while it is still down, and not again as it comes up', () =>
    expect(told([down('b', 0), time(longPress), up('b', 5000)])).toEqual([[1, 'long press', longPress]]));
  test('counts as long also where nobody looked at the clock before it came up', () =>
    expect(told([down('b', 0), up('b', 5000)])).toEqual([[1, 'long press', longPress]]));
  test('is less sure the nearer to the bound it comes up', () => {
    const sureness = (lasted: number) => play([down('b', 0), up('b', lasted)])[0]?.sureness;
    expect([100, longPress / 2, longPress * 0.75, longPress - 1].map(sureness)).toEqual([
      1,
      1,
      0.5,
      expect.closeTo(0, 2),
    ]);
  });
  test('stays down while its contacts bounce as they close', () => {
    const bouncing = [down('b', 0), up('b', 3), down('b', 6), up('b', 9), down('b', 12)];
    expect(told([...bouncing, time(longPress), up('b', 5000)])).toEqual([[1, 'long press', longPress]]);
    expect(told([...bouncing, up('b', 200), time(5000)])).toEqual([[1, 'press', 200]]);
  });
  test('counts once nothing bounces any more, where it was up again at once', () => {
    expect(told([down('b', 0), up('b', 10), time(9 + bounce)])).toEqual([]);
    expect(told([down('b', 0), up('b', 10), time(10 + bounce), down('b', 500), up('b', 600)])).toEqual([
      [1, 'press', 10 + bounce],
      [1, 'press', 600],
    ]);
    expect(told([down('b', 0), up('b', 10), { kind: 'lost', at: 15 }, time(500)])).toEqual([[1, 'press', 10 + bounce]]);
  });
  test('that is down while the page loses its keys means nothing', () =>
    expect(told([down('b', 0), { kind: 'lost', at: 10 }, time(5000), up('b', 6000)])).toEqual([]));
});

describe('a switch with a double press', () => {
  test('waits for the second, which counts as it goes down', () =>
    expect(told([down('c', 0), up('c', 100), down('c', 300), up('c', 400), time(9000)])).toEqual([
      [2, 'double press', 300],
    ]));
  test('is a plain press when no second one comes', () =>
    expect(told([down('c', 0), up('c', 100), time(100 + doublePress)])).toEqual([[2, 'press', 100 + doublePress]]));
  test('is two presses when the second comes too late', () =>
    expect(told([down('c', 0), up('c', 100), down('c', 1000), up('c', 1100), time(5000)])).toEqual([
      [2, 'press', 100 + doublePress],
      [2, 'press', 1100 + doublePress],
    ]));
  test('that bounces is no double press', () =>
    expect(told([down('c', 0), up('c', 100), down('c', 100 + bounce - 1), up('c', 200), time(5000)])).toEqual([
      [2, 'press', 200 + doublePress],
    ]));
});

test('a key that is no switch means nothing', () => expect(told([down('x', 0), up('x', 10), time(900)])).toEqual([]));
test('it says when to look at the clock again', () => {
  expect(afterKey(NO_PRESSES, down('a', 10), bindings).wakeAt).toBeNull();
  expect(afterKey(NO_PRESSES, down('b', 10), bindings).wakeAt).toBe(10 + longPress);
});

/** Anything that keys can do, in order of time. */
const anything: fc.Arbitrary<readonly KeyInput[]> = fc
  .array(
    fc.tuple(
      fc.constantFrom('down', 'up', 'time', 'lost'),
      fc.constantFrom('a', 'b', 'c', 'x'),
      fc.constantFrom(0, 4, 20, 100, 350, 500, 900),
    ),
    { maxLength: 40 },
  )
  .map((steps) => {
    let at = 0;
    return steps.map(([kind, key, later]): KeyInput => {
      at += later;
      return kind === 'time' || kind === 'lost' ? { kind, at } : { kind, key, at };
    });
  });

describe('whatever keys do', () => {
  test('no switch is pressed more often than it goes down', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        for (const [of, key] of ['a', 'b', 'c'].entries()) {
          const downs = inputs.filter((input) => input.kind === 'down' && input.key === key).length;
          expect(play(inputs).filter((press) => press.of === of).length).toBeLessThanOrEqual(downs);
        }
      }),
    ));
  test('presses come in the order of their times, surely or not, and never without a bound kind', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        const done = play(inputs);
        expect(done.map(({ at }) => at)).toEqual(done.map(({ at }) => at).toSorted((one, other) => one - other));
        for (const { of, kind, sureness, from, at } of done) {
          expect(from).toBeLessThanOrEqual(at);
          expect(sureness).toBeGreaterThanOrEqual(0);
          expect(sureness).toBeLessThanOrEqual(1);
          if (kind === 'long press') expect(of).toBeGreaterThan(0);
          if (kind === 'double press') expect(of).toBe(2);
        }
      }),
    ));
  test('looking at the clock more often changes nothing', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        const watched = inputs.flatMap((input, index) => {
          const before = inputs[index - 1]?.at ?? 0;
          return [time(before), time((before + input.at) / 2), time(input.at), input];
        });
        expect(play(watched)).toEqual(play(inputs));
      }),
    ));
  test('at another hour it is the same', () =>
    fc.assert(
      fc.property(anything, fc.integer({ min: 0, max: 1_000_000 }), (inputs, hour) => {
        const later = inputs.map((input) => ({ ...input, at: input.at + hour }));
        expect(play(later)).toEqual(
          play(inputs).map((press) => ({ ...press, from: press.from + hour, at: press.at + hour })),
        );
      }),
    ));
});
