/**
 * The units and their exact sizes. Every factor is a fraction of whole numbers built from the exact definitions
 * (1 in = 0.0254 m, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s², 1 US gal = 231 in³, 1 Imp gal = 4.54609 L),
 * so nothing here is a rounded constant that somebody typed.
 */

/** Every unit by its kind, spelled as on the tool and in the file. */
export interface Units {
  torque: 'N·m' | 'kgf·m' | 'kgf·cm' | 'lbf·in' | 'lbf·ft' | 'ozf·in';
  mass: 'kg' | 'g' | 'lb';
  length: 'm' | 'cm' | 'mm' | 'in' | 'ft';
  volume: 'L' | 'mL' | 'US gal' | 'US qt' | 'Imp gal';
  angle: '°';
  density: 'kg/L' | 'lb/US gal';
}
export type Kind = keyof Units;
export type Unit<K extends Kind> = Units[K];

interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

const fraction = (top: bigint, bottom = 1n): Fraction => ({ top, bottom });
const times = (...parts: readonly Fraction[]): Fraction =>
  parts.reduce((product, part) => fraction(product.top * part.top, product.bottom * part.bottom));
const over = (a: Fraction, b: Fraction): Fraction => fraction(a.top * b.bottom, a.bottom * b.top);

const ONE = fraction(1n);
const CENTI = fraction(1n, 100n);
const MILLI = fraction(1n, 1000n);
const INCH = fraction(254n, 10_000n);
const FOOT = times(fraction(12n), INCH);
const POUND = fraction(45_359_237n, 100_000_000n);
const GRAVITY = fraction(980_665n, 100_000n);
const POUND_FORCE = times(POUND, GRAVITY);
const LITRES_IN_A_CUBIC_METRE = fraction(1000n);
const US_GALLON = times(fraction(231n), INCH, INCH, INCH, LITRES_IN_A_CUBIC_METRE);

/** Size of each unit in N·m, kg, m, L, ° and kg/L. */
const SIZES: { readonly [K in Kind]: Readonly<Record<Units[K], Fraction>> } = {
  torque: {
    'N·m': ONE,
    'kgf·m': GRAVITY,
    'kgf·cm': times(GRAVITY, CENTI),
    'lbf·in': times(POUND_FORCE, INCH),
    'lbf·ft': times(POUND_FORCE, FOOT),
    'ozf·in': times(POUND_FORCE, INCH, fraction(1n, 16n)),
  },
  mass: { kg: ONE, g: MILLI, lb: POUND },
  length: { m: ONE, cm: CENTI, mm: MILLI, in: INCH, ft: FOOT },
  volume: {
    L: ONE,
    mL: MILLI,
    'US gal': US_GALLON,
    'US qt': times(US_GALLON, fraction(1n, 4n)),
    'Imp gal': fraction(454_609n, 100_000n),
  },
  angle: { '°': ONE },
  density: { 'kg/L': ONE, 'lb/US gal': over(POUND, US_GALLON) },
};

/** Multiply by `times`, then divide by `over`: both are whole numbers, so 12 in is 1 ft exactly and 1 in is 25.4 mm. */
export interface Ratio {
  readonly times: number;
  readonly over: number;
}

/** The fraction in lowest terms. Whole numbers too long for a double fall back to one rounded quotient. */
function ratioOf({ top, bottom }: Fraction): Ratio {
  let [divisor, rest] = [top, bottom];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  const [p, q] = [top / divisor, bottom / divisor];
  const whole = BigInt(Number(p)) === p && BigInt(Number(q)) === q;
  return whole ? { times: Number(p), over: Number(q) } : { times: Number(p) / Number(q), over: 1 };
}

const RATIOS: ReadonlyMap<string, Ratio> = new Map(
  Object.values(SIZES).flatMap((sizes: Readonly<Record<string, Fraction>>) =>
    Object.entries(sizes).flatMap(([from, a]) =>
      Object.entries(sizes).map(([to, b]): [string, Ratio] => [`${from}→${to}`, ratioOf(over(a, b))]),
    ),
  ),
);

/** The exact ratio between two units of one kind; undefined when either is unknown or their kinds differ. */
export const ratioBetween = (from: string, to: string): Ratio | undefined => RATIOS.get(`${from}→${to}`);

/** All units of a kind, in the order they are offered. */
export function unitsOf<K extends Kind>(kind: K): readonly Unit<K>[] {
  return Object.keys(SIZES[kind]) as Unit<K>[];
}

export function isUnit<K extends Kind>(kind: K, text: string): text is Unit<K> {
  return Object.hasOwn(SIZES[kind], text);
}
