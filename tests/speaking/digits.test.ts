import fc from 'fast-check';
import { expect, test } from 'vitest';
import { separateDigits } from '../../src/speaking/digits.ts';

test.each([
  ['stud four. two four point five newton metres', 'stud four. two, four, point, five newton metres'],
  ['one three five inch pounds', 'one, three, five inch pounds'],
  ['pass two. stud one zero', 'pass two. stud one, zero'],
  ['zero point six.', 'zero, point, six.'],
  ['stud four', 'stud four'],
  ['twelve studs', 'twelve studs'],
  ['One Two', 'One, Two'],
])('%j is spoken as %j', (text, spoken) => {
  expect(separateDigits(text)).toBe(spoken);
});

const word = fc.constantFrom('one', 'two', 'point', 'niner', 'stud', 'pass.', 'four.', 'five,');

test('only commas are added: the words and their order stay', () => {
  fc.assert(
    fc.property(fc.array(word, { minLength: 1 }), (words) => {
      const text = words.join(' ');
      const bare = (some: string): string => some.replaceAll(',', '');
      expect(bare(separateDigits(text))).toBe(bare(text));
    }),
  );
});

test('text that is separated already stays as it is', () => {
  fc.assert(
    fc.property(fc.array(word, { minLength: 1 }), (words) => {
      const once = separateDigits(words.join(' '));
      expect(separateDigits(once)).toBe(once);
    }),
  );
});
