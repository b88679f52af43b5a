import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Fourier } from '../../src/hearing/fourier.ts';

const SIZE = 16;
const sound = fc.array(fc.float({ min: -1, max: 1, noNaN: true }), { minLength: SIZE, maxLength: SIZE });

describe('the Fourier transform', () => {
  const fourier = new Fourier(SIZE);

  it('is the sum of its definition', () => {
    fc.assert(
      fc.property(sound, sound, (re, im) => {
        const [real, imaginary] = [Float32Array.from(re), Float32Array.from(im)];
        fourier.there(real, imaginary);
        for (let bin = 0; bin < SIZE; bin++) {
          let [x, y] = [0, 0];
          for (let at = 0; at < SIZE; at++) {
            const angle = (-2 * Math.PI * bin * at) / SIZE;
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

  it('comes back to what it began with', () => {
    fc.assert(
      fc.property(sound, sound, (re, im) => {
        const [real, imaginary] = [Float32Array.from(re), Float32Array.from(im)];
        fourier.there(real, imaginary);
        fourier.back(real, imaginary);
        for (let at = 0; at < SIZE; at++) {
          expect(real[at]).toBeCloseTo(re[at] ?? NaN, 5);
          expect(imaginary[at]).toBeCloseTo(im[at] ?? NaN, 5);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('is for powers of two', () => {
    for (const size of [0, 1, 3, 12, 2 ** 17, NaN]) expect(() => new Fourier(size)).toThrow(RangeError);
  });
});
