import { describe, expect, test } from 'vitest';
import { compileFlite, FLITE_VOICES, runFlite, type FliteVoice } from '../../src/speaking/flite.ts';
import { separateDigits } from '../../src/speaking/digits.ts';
import { expectedMs } from '../../src/speaking/speed.ts';
import { durationMs, peak } from '../../src/speaking/sound.ts';
import { activeLevel } from '../support/noise.ts';
import { loadFlite, synthesise } from '../support/speech.ts';

const READBACK = 'stud four. two four point five newton metres';

describe('the embedded voice', () => {
  test.each(FLITE_VOICES)('%s speaks a readback at 16 kHz, loud enough and of a plausible length', async (voice) => {
    const sound = await synthesise(READBACK, { voice });
    expect(sound.rate).toBe(16_000);
    expect(peak(sound)).toBeGreaterThan(0.1);
    expect(activeLevel(sound)).toBeGreaterThan(0.02);
    // Nine words at 150 to 250 words a minute (common rates of speech), and the voice's own silences.
    expect(durationMs(sound)).toBeGreaterThan(2000);
    expect(durationMs(sound)).toBeLessThan(4500);
  });

  test('gives the same samples for the same text', async () => {
    const module = await loadFlite();
    const first = runFlite(module, READBACK, { voice: 'kal16' });
    const second = runFlite(module, READBACK, { voice: 'kal16' });
    expect(second.samples).toEqual(first.samples);
  });

  test('gives other samples for another text, even one that is near', async () => {
    const fifteen = await synthesise('fifteen', { voice: 'kal16' });
    const fifty = await synthesise('fifty', { voice: 'kal16' });
    expect(fifteen.samples).not.toEqual(fifty.samples);
  });

  test('a stretch makes it longer in proportion', async () => {
    const normal = durationMs(await synthesise(READBACK, { voice: 'kal16' }));
    const slow = durationMs(await synthesise(READBACK, { voice: 'kal16', stretch: 1.5 }));
    expect(slow / normal).toBeGreaterThan(1.4);
    expect(slow / normal).toBeLessThan(1.6);
  });

  test.each(['stud one', READBACK, 'caution. the cooler still holds hot oil. keep the ports up until all caps are on'])(
    'takes as long as the watchdog expects, within a factor of two: %s',
    async (text) => {
      const ratio = durationMs(await synthesise(separateDigits(text), { voice: 'kal16' })) / expectedMs(text, 1);
      expect(ratio).toBeGreaterThan(1 / 2);
      expect(ratio).toBeLessThan(2);
    },
  );

  test.each(['-o other.wav', '"quoted" <b>&', 'é two 漢'])('takes odd text as text: %s', async (text) => {
    expect(durationMs(await synthesise(text, { voice: 'kal16' }))).toBeGreaterThan(100);
  });

  test('refuses an unknown voice, which the program would take for its worst one', async () => {
    const module = await loadFlite();
    expect(() => runFlite(module, 'one', { voice: 'nobody' as FliteVoice })).toThrow(
      /No voice is named nobody: use one of/,
    );
  });

  test.each([0, 0.4, 3.1, NaN, -1])('refuses a stretch of %d', async (stretch) => {
    const module = await loadFlite();
    expect(() => runFlite(module, 'one', { voice: 'kal16', stretch })).toThrow(RangeError);
  });

  test('refuses bytes that are not WebAssembly, such as an error page', async () => {
    const bytes = new TextEncoder().encode('<!doctype html>');
    await expect(compileFlite(bytes)).rejects.toThrow('the voice file is not WebAssembly (15 bytes)');
  });
});
