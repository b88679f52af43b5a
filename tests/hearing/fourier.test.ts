import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fourier } from '../../src/hearing/fourier.ts';

describe.each([4, 8, 32])('the Fourier transform of %i numbers', (size) => {
  const sound = fc.array(fc.float({ min: -1, max: 1, noNaN: true }), { minLength: size, maxLength: size });
  const fourier = new Fourier(size);

  it('is the sum of its definition', () => {
    fc.assert(
      fc.property(sound, sound, (re, im) => {
        const [real, imaginary] = [Float32Array.from(re), Float32Array.from(im)];
        fourier.there(real, imaginary);
        for (let bin = 0; bin < size; bin++) {
          let [x, y] = [0, 0];
          for (let at = 0; at < size; at++) {
            const angle = (-2 * Math.PI * bin * at) / size;
            x += (re[at] ?? 0) * Math.cos(angle) - (im[at] ?? 0) * Math.sin(angle);
            y += (re[at] ?? 0) * Math.sin(angle) + (im[at] ?? 0) * Math.cos(angle);
          }
          expect(real[bin]).toBeCloseTo(x, 4);
          expect(imaginary[bin]).toBeCloseTo(y, 4);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('comes back to what it began with, by the same way with the parts changed over', () => {
    fc.assert(
      fc.property(sound, sound, (re, im) => {
        const [real, imaginary] = [Float32Array.from(re), Float32Array.from(im)];
        fourier.there(real, imaginary);
        fourier.there(imaginary, real);
        for (let at = 0; at < size; at++) {
          expect((real[at] ?? NaN) / size).toBeCloseTo(re[at] ?? NaN, 5);
          expect((imaginary[at] ?? NaN) / size).toBeCloseTo(im[at] ?? NaN, 5);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('is for powers of two', () => {
    for (const size of [0, 2, 3, 12, -4, NaN]) expect(() => new Fourier(size)).toThrow(RangeError);
  });
});
