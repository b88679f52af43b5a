import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isFaint, judgeBackground, type Background } from '../../src/hearing/sound-judgement.ts';

const ORDER: readonly Background[] = ['quiet', 'loud', 'too loud to trust'];
const dBFS = fc.double({ min: -90, max: 0, noNaN: true });

describe('the background is judged', () => {
  test.each([
    [30, 'quiet'],
    [20, 'quiet'],
    [19, 'loud'],
    [10, 'loud'],
    [9, 'too loud to trust'],
    [-5, 'too loud to trust'],
  ] as const)('with speech %i dB over it as %s', (snr, expected) => {
    expect(judgeBackground({ noise: -50, speech: -50 + snr })).toBe(expected);
  });
  test('by the ratio alone, however loud both are', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: -80, max: -40 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 30 }),
        (noise, snr, by) => {
          expect(judgeBackground({ noise: noise + by, speech: noise + by + snr })).toBe(
            judgeBackground({ noise, speech: noise + snr }),
          );
        },
      ),
    ));
  test('no better where it is louder', () =>
    fc.assert(
      fc.property(dBFS, dBFS, fc.double({ min: 0, max: 30, noNaN: true }), (noise, speech, more) => {
        const rank = (sound: { noise: number; speech: number }): number =>
          ORDER.indexOf(judgeBackground(sound) ?? 'quiet');
        expect(rank({ noise: noise + more, speech })).toBeGreaterThanOrEqual(rank({ noise, speech }));
      }),
    ));
  test('before anything was said, only where no speech could stand out of it', () => {
    expect(judgeBackground({ noise: -20, speech: null })).toBe('too loud to trust');
    expect(judgeBackground({ noise: -30, speech: null })).toBe('loud');
    expect(judgeBackground({ noise: -50, speech: null })).toBeNull();
    expect(judgeBackground({ noise: null, speech: -20 })).toBeNull();
  });
  test('without changing to and fro at a limit', () => {
    expect(judgeBackground({ noise: -50, speech: -39 }, 'too loud to trust')).toBe('too loud to trust');
    expect(judgeBackground({ noise: -50, speech: -37 }, 'too loud to trust')).toBe('loud');
    expect(judgeBackground({ noise: -50, speech: -29 }, 'loud')).toBe('loud');
    expect(judgeBackground({ noise: -50, speech: -27 }, 'loud')).toBe('quiet');
  });
});

test('speech is faint below −50 dBFS, and not before there was any', () => {
  expect([-51, -49, null].map((speech) => isFaint({ speech }))).toEqual([true, false, false]);
});
