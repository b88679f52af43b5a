import { describe, expect, test } from 'vitest';
import { cameIn, isMeasured } from '../../src/record/came-in.ts';
import type { Heard, Source } from '../../src/session/intent.ts';

const TYPED: Heard = { text: '12', words: [{ word: '12', confidence: '1.00' }] };
const SPOKEN: Heard = { ...TYPED, spoken: { from: '2026-03-01T00:00:00.000Z', to: '2026-03-01T00:00:01.000Z' } };

describe('the words of an entry', () => {
  test.each<[Source, Heard, string]>([
    ['voice', SPOKEN, 'heard'],
    ['key', TYPED, 'typed'],
    ['pedal', TYPED, 'entered'],
    ['touch', TYPED, 'entered'],
    ['gesture', TYPED, 'entered'],
    ['gesture', SPOKEN, 'seen'],
  ])('by %s (%j) were %s', (source, heard, how) => expect(cameIn(source, heard)).toBe(how));
});

test.each<[Source, boolean]>([
  ['voice', true],
  ['gesture', true],
  ['key', false],
  ['pedal', false],
  ['touch', false],
])('how surely was measured by %s: %s', (source, measured) => expect(isMeasured(source)).toBe(measured));
