import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heardSound, isTrusted } from '../../src/ui/heard-sound.ts';

const sound = (snr: number) => heardSound({ level: -40, noise: -50, speech: -50 + snr, isClipped: false }, null);

describe('an utterance is trusted', () => {
  test('where both it and what was said before stand well above the noise', () =>
    fc.assert(
      fc.property(fc.integer({ min: -10, max: 40 }), fc.integer({ min: -10, max: 40 }), (own, before) => {
        expect(isTrusted(own, sound(before))).toBe(own >= 10 && before >= 10);
      }),
    ));
  test('not where nothing of it was measured, as in the first half second of listening', () => {
    expect([sound(15), sound(5), null].map((room) => isTrusted(undefined, room))).toEqual([false, false, false]);
  });
});
