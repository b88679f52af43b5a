import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wavFile } from '../../src/record/wav.ts';
import { decodeWav } from '../../src/speaking/wav.ts';

test('a WAV file holds every sample as it was', () => {
  fc.assert(
    fc.property(fc.int16Array({ maxLength: 500 }), fc.constantFrom(8000, 16_000, 44_100, 48_000), (samples, rate) => {
      const read = decodeWav(wavFile(samples, rate));
      expect(read.rate).toBe(rate);
      expect(Int16Array.from(read.samples, (sample) => sample * 32768)).toEqual(samples);
    }),
  );
});
// Multimedia Programming Interface and Data Specifications 1.0 (RIFF WAVE, August 1991), from memory.
test('[M] its header is the 44 bytes of plain PCM', () => {
  const bytes = wavFile(Int16Array.of(1, -1), 16_000);
  expect(Buffer.from(bytes).toString('hex')).toBe(
    '52494646' +
      '28000000' +
      '57415645' +
      '666d7420' +
      '10000000' +
      '0100' +
      '0100' +
      '803e0000' +
      '007d0000' +
      '0200' +
      '1000' +
      '64617461' +
      '04000000' +
      '0100' +
      'ffff',
  );
});
