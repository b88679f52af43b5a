import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { verdictOn, type Fitness, type Measured } from '../../src/hearing/fitness.ts';

const good: Measured = { noise: -60, speech: -30, isClipped: false, asked: 5, right: 5 };
const WORSE: readonly Fitness[] = ['fit', 'fit with care', 'do not start by voice'];
const rank = (measured: Measured): number => WORSE.indexOf(verdictOn(measured).fitness);

describe('the verdict of a microphone check', () => {
  test.each<[string, Partial<Measured>, Fitness, readonly string[]]>([
    ['all is well', {}, 'fit', []],
    ['one of five is misheard', { right: 4 }, 'fit with care', ['some wrong']],
    ['two of five are misheard', { right: 3 }, 'fit with care', ['some wrong']],
    ['three of five are misheard', { right: 2 }, 'do not start by voice', ['too many wrong']],
    ['nothing was heard', { speech: null, right: 0 }, 'do not start by voice', ['not heard']],
    ['no sound came', { noise: null, speech: null, right: 0 }, 'do not start by voice', ['no sound']],
    ['speech stands 15 dB out', { noise: -45 }, 'fit with care', ['loud']],
    ['speech stands 9 dB out', { noise: -39 }, 'do not start by voice', ['too loud']],
    ['speech is faint', { noise: -80, speech: -55 }, 'fit with care', ['faint']],
    ['speech is cut off', { isClipped: true }, 'fit with care', ['clipped']],
    [
      'it is so loud that nobody was asked to speak',
      { noise: -20, speech: null, asked: 0, right: 0 },
      'do not start by voice',
      ['too loud'],
    ],
    ['two are misheard and it is loud', { noise: -45, right: 3 }, 'fit with care', ['loud', 'some wrong']],
  ])('where %s', (_, change, fitness, findings) => {
    expect(verdictOn({ ...good, ...change })).toEqual({ fitness, findings });
  });

  const measured: fc.Arbitrary<Measured> = fc.record({
    noise: fc.double({ min: -90, max: 0, noNaN: true }),
    speech: fc.option(fc.double({ min: -90, max: 0, noNaN: true })),
    isClipped: fc.boolean(),
    asked: fc.constant(5),
    right: fc.integer({ min: 0, max: 5 }),
  });
  test('has findings exactly where it is not fit', () =>
    fc.assert(
      fc.property(measured, (each) => {
        const { fitness, findings } = verdictOn(each);
        expect(findings.length === 0).toBe(fitness === 'fit');
      }),
    ));
  test('is never better in more noise, with fewer right, or when cut off', () =>
    fc.assert(
      fc.property(measured, fc.double({ min: 0, max: 40, noNaN: true }), (each, more) => {
        expect(rank({ ...each, noise: (each.noise ?? 0) + more })).toBeGreaterThanOrEqual(rank(each));
        expect(rank({ ...each, right: Math.max(0, each.right - 1) })).toBeGreaterThanOrEqual(rank(each));
        expect(rank({ ...each, isClipped: true })).toBeGreaterThanOrEqual(rank({ ...each, isClipped: false }));
      }),
    ));
});
