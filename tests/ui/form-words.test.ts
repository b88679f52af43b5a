import { expect, test } from 'vitest';
import { formWords, isMissing } from '../../src/ui/editor/form-words.ts';

test.each([
  ['missing, expected words in quotes', 'Fill in words'],
  ['missing, expected a torque such as { "value": "24.5", "unit": "N·m" }', 'Fill in a torque such as 24.5 N·m'],
  ['found nothing, expected a name in quotes', 'Fill in a choice'],
  [
    'found "24,5", expected a decimal number such as "24.5" (a point, no exponent, no thousands mark)',
    'Found "24,5", expected a decimal number such as 24.5, with a point',
  ],
  ['no step uses the tool wrench', 'No step uses the tool wrench'],
])('“%s” is said as “%s” to somebody who never sees the file', (fault, words) => {
  expect(formWords(fault)).toBe(words);
});

test('what was not filled in yet is told from what is wrong', () => {
  expect(isMissing('missing, expected words in quotes')).toBe(true);
  expect(isMissing('found "24,5", expected a decimal number')).toBe(false);
});
