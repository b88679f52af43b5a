import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Resampler } from '../../src/hearing/resampler.ts';

const tone = (hertz: number, rate: number, length: number): Float32Array<ArrayBuffer> =>
  Float32Array.from({ length }, (_, at) => Math.sin((2 * Math.PI * hertz * at) / rate));

describe('changing the rate of sound', () => {
  it.each([
    [8_000, 300],
    [8_000, 3_000],
    [11_025, 4_000],
    [12_000, 1_000],
    [48_000, 1_000],
    [44_100, 3_000],
  ])('from %i Hz gives the same tone of %i Hz, sample by sample', (rate, hertz) => {
    const raised = new Resampler(rate, 16_000).take(tone(hertz, rate, rate));
    const wanted = tone(hertz, 16_000, raised.length);
    // At its very beginning the tone starts out of nothing, which no rate can carry.
    for (let at = 200; at < raised.length; at++)
      expect(Math.abs((raised[at] ?? 0) - (wanted[at] ?? 0))).toBeLessThan(0.01);
  });

  it('gives the same output however the sound is cut into pieces', () => {
    const sound = tone(440, 8_000, 3_000);
    const whole = new Resampler(8_000, 16_000).take(sound);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 700 }), { minLength: 1, maxLength: 30 }), (sizes) => {
        const resampler = new Resampler(8_000, 16_000);
        const output: number[] = [];
        let at = 0;
        for (const size of [...sizes, sound.length]) {
          output.push(...resampler.take(sound.slice(at, at + size)));
          at = Math.min(sound.length, at + size);
        }
        expect(output).toEqual([...whole]);
      }),
      { numRuns: 50 },
    );
  });

  it('loses nothing but its lag', () => {
    const resampler = new Resampler(8_000, 16_000);
    expect(resampler.take(new Float32Array(8_000))).toHaveLength(16_000 - resampler.lag);
    expect(resampler.take(new Float32Array(8_000))).toHaveLength(16_000);
  });

  it('cuts off what a lower rate cannot carry', () => {
    const lowered = new Resampler(48_000, 16_000).take(tone(12_000, 48_000, 48_000));
    for (const sample of lowered.slice(200)) expect(Math.abs(sample)).toBeLessThan(0.01);
  });

  it('refuses what is no rate', () => {
    expect(() => new Resampler(0, 16_000)).toThrow(RangeError);
  });
});
