import { describe, expect, test } from 'vitest';
import {
  bindingsFor,
  DEFAULT_BINDINGS,
  isBindable,
  readBindings,
  signalOf,
  switchOf,
  whileChoosing,
  type Bindings,
} from '../../src/gesture/bindings.ts';

const faultsOf = (raw: unknown): readonly string[] => {
  const read = readBindings(raw);
  return read.kind === 'faulty' ? read.faults.map(({ path, message }) => `${path}: ${message}`) : [];
};
const of = (change: Partial<Bindings>): Bindings => ({ ...DEFAULT_BINDINGS, ...change });

describe('bindings that come from outside', () => {
  test.each([
    ['the defaults', DEFAULT_BINDINGS],
    ['one switch', bindingsFor(['b'])],
    ['two switches', bindingsFor(['PageDown', 'PageUp'])],
    ['three switches', bindingsFor(['F7', 'F8', 'MediaPlayPause'])],
  ])('are taken as they are: %s', (_, bindings) =>
    expect(readBindings(JSON.parse(JSON.stringify(bindings)))).toEqual({ kind: 'valid', bindings }),
  );
  test.each<[string, unknown, RegExp]>([
    ['nothing', null, /Object/],
    ['no switch', of({ switches: [] }), /^switches: At least one switch/],
    [
      'four',
      of({ switches: ['a', 'b', 'c', 'd'].map((key) => ({ keys: [key], press: 'forward' })) }),
      /Three switches/,
    ],
    [
      'a switch without a key',
      of({ switches: [{ keys: [], press: 'forward' }] }),
      /^switches\.0\.keys: Press the switch/,
    ],
    [
      'a key of the browser',
      of({ switches: [{ keys: ['Tab'], press: 'forward' }] }),
      /^switches\.0\.keys\.0: This key/,
    ],
    ['a figure', of({ switches: [{ keys: ['7'], press: 'forward' }] }), /^switches\.0\.keys\.0: This key/],
    [
      'two switches of one key',
      of({
        switches: [
          { keys: ['a'], press: 'forward' },
          { keys: ['a'], press: 'backward' },
        ],
      }),
      /^switches: Two switches send the same key/,
    ],
    ['an unknown signal', { ...DEFAULT_BINDINGS, switches: [{ keys: ['a'], press: 'sign' }] }, /press: Choose one of/],
    ['nothing that goes on', of({ switches: [{ keys: ['a'], press: 'backward' }] }), /^switches: No press goes on/],
    ['one switch that waits for another', of({ switches: [{ keys: ['a'], press: 'pick' }] }), /^pace: /],
    ['too short a long press', of({ timing: { ...DEFAULT_BINDINGS.timing, longPress: 100 } }), /^timing.longPress: /],
    ['a pace that nobody can follow', of({ pace: 100 }), /^pace: Give 400/],
    ['more than is known', { ...DEFAULT_BINDINGS, colour: 'red' }, /^colour: /],
  ])('are refused by place, with the mend: %s', (_, raw, fault) => expect(faultsOf(raw).join('\n')).toMatch(fault));
});

test.each(['PageDown', 'ArrowRight', 'Enter', ' ', 'b', 'F9', 'MediaTrackNext', 'AudioVolumeUp'])(
  'a switch may send “%s”',
  (key) => expect(isBindable(key)).toBe(true),
);
test.each(['', 'Tab', 'Escape', 'Shift', 'AltGraph', 'Dead', '0', '9', '.', ','])('no switch may send “%s”', (key) =>
  expect(isBindable(key)).toBe(false),
);

test('what nobody taught is as pedals and page-turners come: page keys and arrows', () => {
  const signal = (key: string) => {
    const at = switchOf(DEFAULT_BINDINGS, key);
    return at === null ? null : signalOf(DEFAULT_BINDINGS, at, 'press');
  };
  expect(['PageDown', 'ArrowRight', 'PageUp', 'ArrowLeft', 'b'].map(signal)).toEqual([
    'forward',
    'forward',
    'backward',
    'backward',
    null,
  ]);
});
test('no press of any switch can be taught to sign', () =>
  expect(faultsOf({ ...DEFAULT_BINDINGS, switches: [{ keys: ['a'], press: 'forward', long: 'sign' }] })).not.toEqual(
    [],
  ));

describe('what a count of switches begins with', () => {
  const signals = (...keys: readonly string[]) => {
    const bindings = bindingsFor(keys);
    return keys.map((_, at) =>
      (['press', 'long press', 'double press'] as const).map((of) => signalOf(bindings, at, of)),
    );
  };
  test('reaches the choices by short presses alone: many pedals send no long one', () => {
    for (const keys of [['b'], ['b', 'c'], ['b', 'c', 'd']])
      expect(signals(...keys).flatMap(([short, , double]) => [short, double])).toContain('pick');
  });
  test('lets what goes on count as it goes down, with two and with three', () => {
    for (const keys of [
      ['b', 'c'],
      ['b', 'c', 'd'],
    ])
      expect(signals(...keys)[0]).toEqual(['forward', null, null]);
  });
});

test('while something is chosen, a double press opens no choices, and one that asks for something else stays', () => {
  const [on, back] = bindingsFor(['b', 'c']).switches;
  if (!on || !back) throw new Error('There are two.');
  const bindings = of({ switches: [{ ...on, double: 'help' }, back] });
  expect(whileChoosing(bindings).switches).toEqual([
    { ...on, double: 'help' },
    { keys: ['c'], press: 'backward', long: 'stand by' },
  ]);
  expect(whileChoosing(DEFAULT_BINDINGS)).toEqual(DEFAULT_BINDINGS);
});
