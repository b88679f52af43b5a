/** Which switches a person works with, and what each press of them asks for. Pure data, checked at the door. */
import * as v from 'valibot';
import { habits } from '../words/habits.ts';

/**
 * What a press asks for. `forward`: whatever goes on at this moment, a read-back affirmed or a step done. `backward`: a step
 * back, or a read-back that is wrong. `pick`: opens what may be done now, one choice lit after another, and takes the lit
 * one. `value`: opens the entry of a value without voice.
 */
export const SIGNALS = ['forward', 'backward', 'stand by', 'say again', 'help', 'pick', 'value'] as const;
export type Signal = (typeof SIGNALS)[number];

/** How a switch was worked. */
export type PressKind = 'press' | 'long press' | 'double press';

/** Keys that belong to the browser, to the way through a page, or to figures that are typed. */
const RESERVED = /^(Tab|Shift|Control|Alt|AltGraph|Meta|CapsLock|Escape|Dead|Unidentified|Process|[0-9.,])$/;

/** Whether a switch may send this key (the `key` of a KeyboardEvent, or the name of a media key). */
export const isBindable = (key: string): boolean => key.length > 0 && key.length <= 40 && !RESERVED.test(key);

const Key = v.pipe(
  v.string(),
  v.check(isBindable, () => habits.keyNotBindable),
);
const Signalled = v.picklist(SIGNALS, () => habits.chooseSignal(SIGNALS));

const Switch = v.strictObject({
  /** One switch may send several keys, as a headset does; all mean the same. */
  keys: v.pipe(
    v.array(Key),
    v.minLength(1, () => habits.pressTheSwitch),
    v.maxLength(4),
  ),
  press: Signalled,
  long: v.exactOptional(Signalled),
  double: v.exactOptional(Signalled),
});

const between = (least: number, most: number) => {
  const words = (): string => habits.giveMilliseconds(least, most);
  return v.pipe(v.number(words), v.integer(words), v.minValue(least, words), v.maxValue(most, words));
};

/** In milliseconds, and of one person: how long a long press is at least, and how far apart a double press may be. */
const Timing = v.strictObject({
  longPress: between(300, 3000),
  doublePress: between(200, 1000),
  /** A contact that opens and closes again within this time has only bounced. */
  bounce: between(0, 150),
});

const Bindings = v.pipe(
  v.strictObject({
    switches: v.pipe(
      v.array(Switch),
      v.minLength(1, () => habits.oneAtLeast),
      v.maxLength(3, () => habits.threeAtMost),
    ),
    timing: Timing,
    /** How long each choice is lit, in milliseconds; null where the switch for `backward` moves the light. */
    pace: v.nullable(between(400, 10_000)),
    /** Whether the choice that is lit is spoken as well. */
    isSpoken: v.boolean(),
  }),
  v.forward(
    v.check(
      ({ switches }) => {
        const keys = switches.flatMap((each) => each.keys);
        return new Set(keys).size === keys.length;
      },
      () => habits.sameKey,
    ),
    ['switches'],
  ),
  v.forward(
    v.check(
      ({ switches }) => signalsOf(switches).some((signal) => signal === 'forward' || signal === 'pick'),
      () => habits.nothingGoesOn,
    ),
    ['switches'],
  ),
  v.forward(
    v.check(
      ({ switches, pace }) => pace !== null || switches.some(({ press }) => press === 'backward'),
      () => habits.nothingMovesLight,
    ),
    ['pace'],
  ),
);

export type Switch = v.InferOutput<typeof Switch>;
export type Timing = v.InferOutput<typeof Timing>;
export type Bindings = v.InferOutput<typeof Bindings>;

/** A fault in bindings: where, and how it is mended. */
export interface BindingFault {
  readonly path: string;
  readonly message: string;
}
export type BindingsRead =
  | { readonly kind: 'valid'; readonly bindings: Bindings }
  | { readonly kind: 'faulty'; readonly faults: readonly BindingFault[] };

/** Reads bindings from anywhere outside: storage, a form. It never throws. */
export function readBindings(raw: unknown): BindingsRead {
  const parsed = v.safeParse(Bindings, raw);
  if (parsed.success) return { kind: 'valid', bindings: parsed.output };
  return {
    kind: 'faulty',
    faults: parsed.issues.map((issue) => ({ path: v.getDotPath(issue) ?? '', message: issue.message })),
  };
}

const signalsOf = (switches: readonly Switch[]): readonly Signal[] =>
  switches.flatMap(({ press, long, double }) => [press, long, double].filter((signal) => signal !== undefined));

/** What a press of a switch asks for; null where it asks for nothing. */
export function signalOf({ switches }: Bindings, at: number, kind: PressKind): Signal | null {
  const pressed = switches[at];
  switch (kind) {
    case 'press':
      return pressed?.press ?? null;
    case 'long press':
      return pressed?.long ?? null;
    case 'double press':
      return pressed?.double ?? null;
  }
}

/** The place of the switch that sends a key; null where none does. */
export function switchOf({ switches }: Pick<Bindings, 'switches'>, key: string): number | null {
  const at = switches.findIndex(({ keys }) => keys.includes(key));
  return at < 0 ? null : at;
}

export const TIMING: Timing = { longPress: 800, doublePress: 400, bounce: 30 };
const PACE = 1500;

/** What holds where nobody has taught anything: keys, pedals and page-turners as they come out of their box. */
export const DEFAULT_BINDINGS: Bindings = {
  switches: [
    { keys: ['PageDown', 'ArrowRight'], press: 'forward' },
    { keys: ['PageUp', 'ArrowLeft'], press: 'backward' },
  ],
  timing: TIMING,
  pace: null,
  isSpoken: false,
};

/** A sensible start for one, two or three switches, in the order in which they were pressed. */
export function bindingsFor(keys: readonly string[]): Bindings {
  const [first = '', second, third] = keys;
  if (second === undefined)
    return {
      switches: [{ keys: [first], press: 'pick', long: 'stand by' }],
      timing: TIMING,
      pace: PACE,
      isSpoken: false,
    };
  // What goes on is bound to nothing else, so that it counts as it goes down.
  const on: Switch = { keys: [first], press: 'forward' };
  const back: Switch = { keys: [second], press: 'backward', long: 'stand by' };
  // Twice, because many page-turners send no long press.
  return third === undefined
    ? { ...DEFAULT_BINDINGS, switches: [on, { ...back, double: 'pick' }] }
    : { ...DEFAULT_BINDINGS, switches: [on, back, { keys: [third], press: 'pick', long: 'say again' }] };
}

/**
 * The same bindings while something is chosen: a double press that would open choices is two presses there. Whoever counts
 * up to five presses fast, and no press waits for a second one.
 */
export const whileChoosing = (bindings: Bindings): Bindings => ({
  ...bindings,
  switches: bindings.switches.map(({ double, ...rest }) =>
    double === undefined || double === 'pick' || double === 'value' ? rest : { ...rest, double },
  ),
});
