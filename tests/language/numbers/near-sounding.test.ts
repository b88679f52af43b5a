import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearReadings, nearSounding, soundsLike } from '../../../src/language/numbers/index.ts';

const near = (decimal: string) => soundsLike(decimal).map(({ number }) => number.digits);
const meant = (text: string) => nearReadings(text.split(' ')).map(({ number, because }) => [number.digits, because]);

describe('near-sounding numbers', () => {
  test.each([
    ['13', '30'],
    ['14', '40'],
    ['15', '50'],
    ['16', '60'],
    ['17', '70'],
    ['18', '80'],
    ['19', '90'],
  ])('%s and %s, hospital safety page', (teen, ty) => {
    expect(nearSounding(teen, ty)).toBe(true);
    expect(soundsLike(teen).find(({ number }) => number.digits === ty)?.because).toBe('teen-ty');
  });

  test.each([
    ['115', '150', 'teen and ty inside a longer number'],
    ['15.5', '50.5', 'teen and ty before a point'],
    ['35', '135', '"thirty five" and "thirteen five"'],
    ['6', '60', 'six and sixty (from memory)'],
    ['25', '29', 'five and nine (from memory)'],
    ['24.5', '245', 'the point lost (from memory)'],
    ['24', '24.5', '"and a half" lost (from memory)'],
    ['1', '9', 'one and nine, measured with the small model'],
    ['13', '15', 'thirteen and fifteen, measured with the small model'],
    ['18', '15', 'eighteen and fifteen, measured with the small model'],
    ['884', '84', 'a doubled digit lost, measured with the small model'],
    ['104', '140', '"one hundred and four" and "one hundred and forty"'],
  ])('%s and %s: %s', (one, other) => {
    expect(nearSounding(one, other)).toBe(true);
    expect(nearSounding(other, one)).toBe(true);
  });

  test.each([
    ['15', '15'],
    ['24.5', '24.50'],
    ['24', '024'],
    ['20', '70'],
    ['24.5', '135'],
    ['12', '20'],
  ])('%s and %s are not', (one, other) => expect(nearSounding(one, other)).toBe(false));

  test('are near both ways, never near themselves, and told once each', () => {
    const decimal = fc.integer({ min: 0, max: 99_999 }).map((tenths) => `${tenths / 10}`);
    fc.assert(
      fc.property(decimal, (one) => {
        const partners = near(one);
        expect(nearSounding(one, one)).toBe(false);
        expect(new Set(partners.map(Number)).size).toBe(partners.length);
        for (const other of partners) expect(nearSounding(other, one)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  test('need a decimal', () => expect(() => soundsLike('fifteen')).toThrow(RangeError));
});

describe('what else may have been meant by the words heard', () => {
  test('"forty zero" is no number, but may be "four zero"', () => {
    expect(meant('forty zero')).toContainEqual(['40', 'unit-ty']);
  });
  test('"eight four" may be "eight eight four"', () => {
    expect(meant('eight four')).toContainEqual(['884', 'doubled-digit']);
  });
  test('"double eight four" may be "eight four"', () => {
    expect(meant('double eight four')).toContainEqual(['84', 'doubled-digit']);
  });
  test('the number itself is not another: "forty five" is not near "four five"', () => {
    expect(meant('forty five').map(([digits]) => digits)).not.toContain('45');
  });
  test('"niner" sounds like "nine" does', () => {
    expect(meant('two niner')).toEqual(meant('two nine'));
  });
  test('words far from any number give none', () => expect(meant('stand by')).toEqual([]));
});
