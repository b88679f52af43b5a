import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

// Reckoned from the sheet itself, so that a colour that is changed there is a colour that is checked here.

const SHEET = readFileSync('src/ui/style/theme.css', 'utf8');
const block = (selector: string): string => {
  const from = SHEET.indexOf(`${selector} {`);
  expect(from, selector).toBeGreaterThanOrEqual(0);
  return SHEET.slice(from, SHEET.indexOf('}', from));
};

type Rgb = readonly [number, number, number];

/** The colours that a block names, for a light or a dark scheme. */
function coloursIn(text: string, scheme: 'light' | 'dark'): Map<string, Rgb> {
  const found = new Map<string, Rgb>();
  for (const [, name = '', value = ''] of text.matchAll(/--([\w-]+): ([^;]+);/g)) {
    const [light, dark = light] = [...value.matchAll(/#[\da-f]{6}/g)].map(([hex]) => hex);
    const hex = scheme === 'light' ? light : dark;
    if (hex !== undefined)
      found.set(name, [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)) as unknown as Rgb);
  }
  return found;
}

const both = (first: Map<string, Rgb>, second: Map<string, Rgb>): Map<string, Rgb> => new Map([...first, ...second]);
const THEMES = {
  light: coloursIn(block(':root'), 'light'),
  dark: coloursIn(block(':root'), 'dark'),
  'bright sun': both(coloursIn(block(':root'), 'light'), coloursIn(block(":root[data-theme='bright sun']"), 'light')),
  'light, more contrast': both(
    coloursIn(block(':root'), 'light'),
    coloursIn(block("  :root:not([data-theme='bright sun'])"), 'light'),
  ),
  'dark, more contrast': both(
    coloursIn(block(':root'), 'dark'),
    coloursIn(block("  :root:not([data-theme='bright sun'])"), 'dark'),
  ),
} as const;

/** sRGB, IEC 61966-2-1. */
const linear = (rgb: Rgb): Rgb =>
  rgb.map((part) =>
    part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4,
  ) as unknown as Rgb;
const times = (matrix: readonly Rgb[], [r, g, b]: Rgb): Rgb =>
  matrix.map(([x, y, z]) => x * r + y * g + z * b) as unknown as Rgb;

/** WCAG 2.2, relative luminance and contrast ratio. */
const luminance = (rgb: Rgb): number => times([[0.2126, 0.7152, 0.0722]], linear(rgb))[0];
function contrast(one: Rgb, other: Rgb): number {
  const [brighter, darker] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((brighter ?? 0) + 0.05) / ((darker ?? 0) + 0.05);
}

/** Text and the grounds it stands on. */
const TEXT_ON: readonly (readonly [text: string, ground: string])[] = [
  ...['ink', 'ink-soft', 'accent', 'out', 'next'].flatMap((text) =>
    ['ground', 'panel'].map((ground) => [text, ground] as const),
  ),
  ['ink', 'out-ground'],
  ['ink', 'next-ground'],
  ['ink', 'caution-ground'],
  ['ink-soft', 'caution-ground'],
  ['out', 'out-ground'],
  ['on-accent', 'accent'],
  ['ground', 'ink'],
  ['ground', 'out'],
  ...['danger', 'warning', 'caution', 'notice'].map((word) => [`on-${word}-sign`, `${word}-sign`] as const),
];

const EYES: Readonly<Record<string, readonly Rgb[]>> = {
  'eyes with all cones': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

describe.each(Object.entries(THEMES))('the colours of “%s”', (_, colours) => {
  const colour = (name: string): Rgb => {
    const found = colours.get(name);
    if (!found) throw new Error(`There is no --${name}.`);
    return found;
  };
  test.each(TEXT_ON)('keep 7:1 for %s on %s (WCAG 2.2, 1.4.6)', (text, ground) =>
    expect(contrast(colour(text), colour(ground))).toBeGreaterThanOrEqual(7),
  );
  test('keep 3:1 for lines (WCAG 2.2, 1.4.11)', () =>
    expect(contrast(colour('line'), colour('ground'))).toBeGreaterThanOrEqual(3));

  // Simulation by the matrices of Machado, Oliveira and Fernandes, 2009, doi 10.1109/TVCG.2009.113 [from memory], severity 1.
  test.each(Object.entries(EYES))('keep done, next and doubt apart for %s', (_eyes, matrix) => {
    const [done, next, doubt] = ['accent', 'next', 'out'].map((name) => lab(times(matrix, linear(colour(name)))));
    for (const [one, other] of [
      [done, next],
      [done, doubt],
      [next, doubt],
    ] as const) {
      // CIE 1976: a difference of 2.3 is just seen side by side; this is over six times as much.
      expect(difference(one, other)).toBeGreaterThan(15);
    }
  });
});

/** CIE L*a*b* of linear sRGB, white D65. */
function lab(rgb: Rgb): Rgb {
  const held = rgb.map((part) => Math.min(1, Math.max(0, part))) as unknown as Rgb;
  const [x, y, z] = times(
    [
      [0.4124, 0.3576, 0.1805],
      [0.2126, 0.7152, 0.0722],
      [0.0193, 0.1192, 0.9505],
    ],
    held,
  );
  const root = (part: number): number => (part > 0.008856 ? Math.cbrt(part) : 7.787 * part + 16 / 116);
  const [fx, fy, fz] = [root(x / 0.95047), root(y), root(z / 1.08883)];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}
const difference = (one: Rgb | undefined, other: Rgb | undefined): number =>
  Math.hypot(...[0, 1, 2].map((at) => (one?.[at] ?? NaN) - (other?.[at] ?? NaN)));
