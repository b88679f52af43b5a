import fc from 'fast-check';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { decodeWav, WavError } from '../../src/speaking/wav.ts';
import { encodeWav, readWav, writeWav } from '../support/wav.ts';

const HALF_A_STEP = 0.5 / 32768;

describe('a WAV file', () => {
  test('comes back as it was written, to half a step of 16 bits', () => {
    const sample = fc.float({ min: -1, max: Math.fround(0.9999), noNaN: true });
    fc.assert(
      fc.property(fc.array(sample), fc.integer({ min: 8000, max: 192_000 }), (samples, rate) => {
        const back = decodeWav(encodeWav({ samples: Float32Array.from(samples), rate }));
        expect(back.rate).toBe(rate);
        expect(back.samples).toHaveLength(samples.length);
        samples.forEach((value, i) =>
          expect(Math.abs((back.samples[i] ?? NaN) - value)).toBeLessThanOrEqual(HALF_A_STEP),
        );
      }),
    );
  });

  test('is read from disk, and one that cannot be read is named', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'wav-'));
    const file = path.join(folder, 'tone.wav');
    await writeWav(file, { samples: Float32Array.of(0, 0.5, -0.5), rate: 22_050 });
    expect([...(await readWav(file)).samples]).toEqual([0, 0.5, -0.5]);
    await expect(readWav(import.meta.filename)).rejects.toThrow(/wav\.test\.ts.*Not a WAV file/);
    await rm(folder, { recursive: true });
  });

  test('in stereo becomes the mean of its channels', () => {
    const bytes = encodeWav({ samples: Float32Array.of(0.5, 0.25, -0.5, 0), rate: 44_100 });
    bytes[22] = 2;
    expect([...decodeWav(bytes).samples]).toEqual([0.375, -0.25]);
  });

  test('may carry other chunks, of odd length too, before its data', () => {
    const plain = encodeWav({ samples: Float32Array.of(0.25), rate: 16_000 });
    const note = [...new TextEncoder().encode('LIST'), 3, 0, 0, 0, 1, 2, 3, 0];
    const bytes = Uint8Array.from([...plain.subarray(0, 36), ...note, ...plain.subarray(36)]);
    expect([...decodeWav(bytes).samples]).toEqual([0.25]);
  });

  test('whose stream was never closed is read as far as it goes', () => {
    const bytes = encodeWav({ samples: Float32Array.of(0.25, 0.5), rate: 16_000 });
    bytes.fill(0xff, 40, 44);
    expect([...decodeWav(bytes).samples]).toEqual([0.25, 0.5]);
  });

  test('with 24 bits is refused by name', () => {
    const bytes = encodeWav({ samples: Float32Array.of(0), rate: 16_000 });
    bytes[34] = 24;
    expect(() => decodeWav(bytes)).toThrow('Only 16-bit PCM is read; this WAV file has encoding 1 with 24 bits.');
  });

  test('cut off anywhere, or damaged, gives sound or a WavError and nothing else', () => {
    const whole = encodeWav({ samples: Float32Array.of(0.25, 0.5, 0.75), rate: 16_000 });
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(whole.length - 1), fc.nat(255), (length, at, value) => {
        const bytes = whole.slice(0, length);
        if (at < length) bytes[at] = value;
        try {
          decodeWav(bytes);
        } catch (error) {
          expect(error).toBeInstanceOf(WavError);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
