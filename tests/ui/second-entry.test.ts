/** A value keyed in: every key leads towards a value of a scale, or does nothing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isWellFormed } from '../../src/session/intent.ts';
import { deleted, isValue, keyedIn, typedOver } from '../../src/ui/second-entry.ts';

const keyed = (keys: string): string =>
  [...keys].reduce((text, key) => (key === '<' ? deleted(text) : keyedIn(text, key)), '');

describe('keys', () => {
  test('whatever is pressed, what stands there is a value, or becomes one by one more figure', () =>
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,<'), maxLength: 40 }), (keys) => {
        const text = keyed(keys);
        const couldBe = text === '' || [text, `${text}0`].some((value) => isWellFormed({ fastener: null, value }));
        expect(couldBe).toBe(true);
        expect(isValue(text)).toBe(isWellFormed({ fastener: null, value: text }));
        expect(typedOver(text)).toBe(text);
      }),
    ));
  test('a value comes out as it was keyed in, noughts after the point kept', () =>
    fc.assert(
      fc.property(
        fc.nat(9999),
        fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 4 }),
        (whole, places) => {
          expect(keyed(`${whole}.${places}`)).toBe(`${whole}.${places}`);
        },
      ),
    ));
  test.each([
    ['24.5', '24.5'],
    ['.5', '0.5'],
    ['24,5', '24.5'],
    ['24..5', '24.5'],
    ['2.4.5', '2.45'],
    ['007', '0'],
    ['24.5<<<5', '25'],
    ['<', ''],
    ['1234567890123', '123456789012'],
  ])('%s leads to "%s"', (keys, text) => expect(keyed(keys)).toBe(text));
  test('a point alone is no value yet', () => {
    expect(isValue('24.')).toBe(false);
    expect(isValue('')).toBe(false);
    expect(isValue('24')).toBe(true);
  });
});

test('what is pasted is taken as a value or not at all', () => {
  expect(typedOver(' 24,5 ')).toBe('24.5');
  for (const text of ['-3', '1,234.5', '24.5 N·m', 'abc', '1e3', '00']) expect(typedOver(text)).toBeNull();
});
