import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterTouch, type Touch, type Touched, type TouchInput } from '../../src/gesture/touch.ts';
import { readThresholds, TOUCH_THRESHOLDS } from '../../src/gesture/touch-thresholds.ts';

const { longPress, resting, palm, travel, swipe, together, near } = TOUCH_THRESHOLDS;
const FINGER = 10;
const KNUCKLE = 25;
const ELBOW = 45;

function play(inputs: readonly TouchInput[]): readonly Touched[] {
  let touch: Touch = null;
  const last = inputs.at(-1)?.at ?? 0;
  return [...inputs, { kind: 'time', at: last + 1000 } as const].flatMap((input) => {
    const after = afterTouch(touch, input, TOUCH_THRESHOLDS);
    touch = after.touch;
    return after.done;
  });
}
const told = (inputs: readonly TouchInput[]) =>
  play(inputs).map((touched) => (touched.kind === 'rejected' ? touched.why : touched.kind));

const placed =
  (kind: 'down' | 'move') =>
  (at: number, x: number, width = FINGER, id = 1, y = 50): TouchInput => ({ kind, id, at, x, y, width });
const down = placed('down');
const move = placed('move');
const up = (at: number, id = 1): TouchInput => ({ kind: 'up', id, at });

describe('one contact', () => {
  test('is a tap where it began', () =>
    expect(play([down(0, 30), up(100)])).toEqual([{ kind: 'tap', from: 0, to: 100, x: 30, y: 50, sureness: 1 }]));
  test('that stays is a long press, told when it is over', () =>
    expect(told([down(0, 30), up(longPress)])).toEqual(['long press']));
  test('that stays longer than anybody presses rests, and means nothing', () =>
    expect(told([down(0, 30), up(resting + 1)])).toEqual(['resting']));
  test.each([
    ['to the right', 30, 30 + swipe, 'swipe right'],
    ['to the left', 130, 130 - swipe, 'swipe left'],
  ])('that goes far across is a swipe %s', (_, from, to, kind) =>
    expect(told([down(0, from), move(100, (from + to) / 2), move(200, to), up(220)])).toEqual([kind]),
  );
  test('that slides further than a press and less far than a swipe means nothing', () =>
    expect(told([down(0, 30), move(100, 30 + travel + 1), up(200)])).toEqual(['slid too far']));
  test('that goes far and comes back was no press', () =>
    expect(told([down(0, 30), move(100, 30 + swipe), move(300, 30), up(400)])).toEqual(['slid too far']));
  test('that the system takes for itself means nothing', () =>
    expect(told([down(0, 30), { kind: 'cancel', id: 1, at: 90 }])).toEqual(['taken by the system']));
});

describe('a knuckle or an elbow', () => {
  test.each([
    ['knuckle', KNUCKLE],
    ['elbow', ELBOW],
  ])('is one press, though it is wide, slow and slides: %s', (_, width) =>
    expect(told([down(0, 30, width * 0.6), move(200, 36, width), move(500, 40, width), up(700)])).toEqual(['tap']),
  );
  test('that loses the screen for a moment is one press', () =>
    expect(told([down(0, 30, ELBOW), up(200), down(200 + together, 38, ELBOW, 2), up(500, 2)])).toEqual(['tap']));
  test('that the screen takes for two near contacts is one press', () =>
    expect(told([down(0, 30), down(20, 30 + near - 5, FINGER, 2), up(200), up(220, 2)])).toEqual(['tap']));
});

test('a swipe that loses the screen for a moment goes on', () =>
  expect(
    told([down(0, 30), move(80, 55), up(90), down(120, 60, FINGER, 2), move(200, 80, FINGER, 2), up(210, 2)]),
  ).toEqual(['swipe right']));

describe('what must mean nothing', () => {
  test('a palm, from whenever it is as wide as one', () => {
    expect(told([down(0, 30, palm + 1), up(100)])).toEqual(['palm']);
    expect(told([down(0, 30), move(50, 30, palm + 1), move(80, 30), up(100)])).toEqual(['palm']);
  });
  test('two contacts far apart, also when one goes up first', () =>
    expect(told([down(0, 30), down(50, 30 + near + 1, FINGER, 2), up(100), up(200, 2)])).toEqual(['two at once']));
  test('contacts that together are as wide as a palm', () =>
    expect(told([down(0, 30), down(5, 65, FINGER, 2), move(9, 94, FINGER, 2), up(90), up(90, 2)])).toEqual(['palm']));
});

test('two taps far apart are two, however soon one follows', () =>
  expect(told([down(0, 30), up(50), down(60, 30 + near + 1, FINGER, 2), up(100, 2)])).toEqual(['tap', 'tap']));
test('two taps of one place are two once the first can have no follower', () =>
  expect(told([down(0, 30), up(50), down(51 + together, 30, FINGER, 2), up(300 + together, 2)])).toEqual([
    'tap',
    'tap',
  ]));
test('the nearer to a bound, the less sure', () => {
  const sureness = (inputs: readonly TouchInput[]) => {
    const [touched] = play(inputs);
    return touched?.kind === 'rejected' ? null : touched?.sureness;
  };
  const lasting = [100, 600, 799].map((lasted) => sureness([down(0, 30), up(lasted)]) ?? NaN);
  expect(lasting).toEqual(lasting.toSorted((one, other) => other - one));
  expect(lasting[0]).toBe(1);
  expect(lasting[2]).toBeLessThan(0.01);
});

/** Anything that up to three contacts can do, in order of time. */
const anything: fc.Arbitrary<readonly TouchInput[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom('down' as const, 'move' as const, 'up' as const, 'cancel' as const, 'time' as const),
      id: fc.constantFrom(1, 2, 3),
      later: fc.constantFrom(0, 10, 60, 130, 500, 1500),
      x: fc.integer({ min: 0, max: 300 }),
      y: fc.integer({ min: 0, max: 200 }),
      width: fc.constantFrom(0, FINGER, KNUCKLE, ELBOW, 90),
    }),
    { maxLength: 30 },
  )
  .map((steps) => {
    let at = 0;
    const isDown = new Set<number>();
    return steps.flatMap(({ kind, id, later, x, y, width }): readonly TouchInput[] => {
      at += later;
      if (kind === 'time') return [{ kind, at }];
      // A screen tells of a contact only between its coming down and its going up.
      if ((kind === 'down') === isDown.has(id)) return [];
      if (kind === 'down') isDown.add(id);
      if (kind === 'up' || kind === 'cancel') isDown.delete(id);
      return [kind === 'down' || kind === 'move' ? { kind, id, at, x, y, width } : { kind, id, at }];
    });
  });

describe('whatever contacts do', () => {
  test('there are no more touches than contacts', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        expect(play(inputs).length).toBeLessThanOrEqual(inputs.filter(({ kind }) => kind === 'down').length);
      }),
    ));
  test('a touch in which any contact was as wide as a palm means nothing', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        const wide = inputs.map((input) =>
          input.kind === 'down' || input.kind === 'move' ? { ...input, width: palm + 1 } : input,
        );
        for (const touched of play(wide)) expect(touched.kind).toBe('rejected');
      }),
    ));
  test('looking at the clock more often changes nothing', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        const watched = inputs.flatMap((input, index) => {
          const before = inputs[index - 1]?.at ?? 0;
          return [{ kind: 'time', at: (before + input.at) / 2 } as const, input];
        });
        expect(play(watched)).toEqual(play(inputs));
      }),
    ));
  test('at another place and hour it is the same', () =>
    fc.assert(
      fc.property(anything, fc.integer({ min: 0, max: 1000 }), (inputs, by) => {
        const shifted = inputs.map((input) =>
          input.kind === 'down' || input.kind === 'move'
            ? { ...input, at: input.at + by, x: input.x + by, y: input.y + by }
            : { ...input, at: input.at + by },
        );
        const plain = (touched: readonly Touched[]) =>
          touched.map((each) => (each.kind === 'rejected' ? each.why : [each.kind, Math.round(each.sureness * 1e6)]));
        expect(plain(play(shifted))).toEqual(plain(play(inputs)));
      }),
    ));
  test('seen in a mirror, only left and right change over', () =>
    fc.assert(
      fc.property(anything, (inputs) => {
        const mirrored = inputs.map((input) =>
          input.kind === 'down' || input.kind === 'move' ? { ...input, x: -input.x } : input,
        );
        const turned: Readonly<Record<string, string>> = { 'swipe left': 'swipe right', 'swipe right': 'swipe left' };
        expect(told(mirrored)).toEqual(told(inputs).map((kind) => turned[kind] ?? kind));
      }),
    ));
});

describe('bounds that come from outside', () => {
  test('are taken as they are', () =>
    expect(readThresholds({ ...TOUCH_THRESHOLDS })).toEqual({ kind: 'valid', thresholds: TOUCH_THRESHOLDS }));
  test.each([
    ['nothing', null, ''],
    ['too long a press', { ...TOUCH_THRESHOLDS, longPress: 1e9 }, 'longPress'],
    ['a long press that rests', { ...TOUCH_THRESHOLDS, longPress: 2000, resting: 1500 }, 'longPress'],
    ['a press that swipes', { ...TOUCH_THRESHOLDS, travel: 40, swipe: 30 }, 'travel'],
    ['no number', { ...TOUCH_THRESHOLDS, palm: NaN }, 'palm'],
  ])('are refused by place: %s', (_, raw, path) =>
    expect(readThresholds(raw)).toMatchObject({
      kind: 'faulty',
      faults: expect.arrayContaining([expect.objectContaining({ path })]) as unknown,
    }),
  );
});
