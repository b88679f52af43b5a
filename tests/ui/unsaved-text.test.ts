import { expect, test } from 'vitest';
import { unsavedText } from '../../src/ui/unsaved-text.ts';

test.each([
  [0, false, 'On this device only: it was never saved as a sealed file.'],
  [11, false, 'Not all of it was saved: 1 entry is newer than the sealed file.'],
  [12, true, 'Its sounds were too large for the sealed file: they are not in it.'],
  [
    10,
    true,
    'Not all of it was saved: 2 entries are newer than the sealed file. Its sounds were too large for the sealed file: they are not in it.',
  ],
  [12, false, null],
])('of 12 entries with %i saved, sounds left behind: %s', (entries, lacksSounds, text) =>
  expect(unsavedText(12, { entries, lacksSounds })).toBe(text),
);
