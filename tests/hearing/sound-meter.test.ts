import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TOO_LOUD_BELOW_DB } from '../../src/hearing/sound-judgement.ts';
import { SoundMeter, signalToNoise, type Sound } from '../../src/hearing/sound-meter.ts';
import type { Word } from '../../src/hearing/types.ts';
import { FLITE_VOICES } from '../../src/speaking/flite.ts';
import { activeLevel, seededRandom, workshopNoise } from '../support/noise.ts';
import { gain, join, silence, synthesise } from '../support/speech.ts';

const RATE = 16_000;

/** White noise at a level in dBFS. */
function white(dBFS: number, ms: number, seed = 7): Float32Array {
  const random = seededRandom(seed);
  const peak = 10 ** (dBFS / 20) * Math.sqrt(3);
  return Float32Array.from({ length: (RATE * ms) / 1000 }, () => peak * (2 * random() - 1));
}

const after = (...parts: readonly Float32Array[]): Float32Array =>
  Float32Array.from(parts.flatMap((part) => [...part]));

/** What is measured after each chunk. Words are told before the last one: the recogniser is late with them. */
function measured(samples: Float32Array, words: readonly Word[] = [], chunk = 683): readonly Sound[] {
  const meter = new SoundMeter(RATE);
  return Array.from({ length: Math.ceil(samples.length / chunk) }, (_, i) => {
    const at = i * chunk;
    if (at + chunk >= samples.length) meter.spoke(words);
    return meter.take({ samples: samples.slice(at, at + chunk), time: (at / RATE) * 1000 });
  });
}

const last = (all: readonly Sound[]): Sound => {
  const sound = all.at(-1);
  if (!sound) throw new Error('Nothing was measured.');
  return sound;
};

const word = (start: number, end: number, text = 'one'): Word => ({ word: text, start, end, confidence: 1 });

describe('the background', () => {
  test.each([-80, -50, -30])('of steady noise at %i dBFS is that, to a decibel', (dBFS) => {
    expect(Math.abs((last(measured(white(dBFS, 3000))).noise ?? 0) - dBFS)).toBeLessThan(1);
  });
  test('is not known in the first half second', () => {
    expect(last(measured(white(-50, 400))).noise).toBeNull();
  });
  test('is not raised by speech, which has pauses', async () => {
    const speech = gain(await synthesise('one two five point three, newton metres', { voice: 'rms' }), -10);
    const noise = white(-60, 8000);
    const mixed = speech.samples.map((sample, i) => sample + (noise[i] ?? 0));
    expect(last(measured(after(white(-60, 2000), mixed))).noise).toBeLessThan(-55);
  });
  test('is never above the level of the same moment', () =>
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer({ min: -80, max: 0 }), fc.integer({ min: 1, max: 20 }))), (pieces) => {
        const samples = after(...pieces.map(([dBFS, frames], i) => white(dBFS, frames * 20, i)));
        for (const { level, noise } of measured(samples)) expect(noise ?? level).toBeLessThanOrEqual(level);
      }),
      { numRuns: 50 },
    ));
  test('goes up when a machine starts and down when it stops, within five seconds', () => {
    expect(last(measured(after(white(-60, 2000), white(-35, 4500)))).noise).toBeGreaterThan(-37);
    expect(last(measured(after(white(-35, 4000), white(-60, 500)))).noise).toBeLessThan(-58);
  });
  test('of workshop noise lies three to six decibels under its mean', () => {
    for (let seed = 1; seed <= 4; seed++) {
      // Its root mean square is 0.1: −20 dBFS.
      const settled = measured(workshopNoise(6, RATE, seed).samples).slice(100);
      const mean = settled.reduce((sum, { noise }) => sum + (noise ?? 0), 0) / settled.length;
      expect(-20 - mean).toBeGreaterThan(3);
      expect(-20 - mean).toBeLessThan(6);
    }
  });
  test('does not know exact zeros nor a constant: no room is like that', () => {
    const dead = last(measured(after(white(-50, 2000), new Float32Array(RATE), new Float32Array(RATE).fill(0.1))));
    expect(Math.abs((dead.noise ?? 0) + 50)).toBeLessThan(1);
  });
  test('is the same in whatever chunks the sound comes, and with a constant added by the sound card', () => {
    const samples = white(-45, 3000);
    const whole = last(measured(samples)).noise ?? 0;
    expect(last(measured(samples, [], 2048)).noise).toBeCloseTo(whole, 1);
    expect(last(measured(samples.map((sample) => sample + 0.05))).noise).toBeCloseTo(whole, 1);
  });
  test('survives samples that are no numbers', () => {
    expect(last(measured(after(white(-50, 2000), new Float32Array(3200).fill(NaN)))).noise).toBeLessThan(-49);
  });
});

describe('speech over the background', () => {
  /** Two seconds of background, then speech so far above the mean of it, then background. */
  async function spokenIn(snr: number, seed: number): Promise<{ samples: Float32Array; words: readonly Word[] }> {
    const speech = await synthesise('one two five point three', { voice: 'rms' });
    const noise = workshopNoise(6, RATE, seed).samples;
    // The root mean square of the noise is 0.1.
    const factor = (activeLevel(speech) * 10 ** (-snr / 20)) / 0.1;
    const { samples } = join(silence(2000, RATE), speech, silence(500, RATE));
    const mixed = samples.map((sample, i) => sample + factor * (noise[i % noise.length] ?? 0));
    return { samples: mixed, words: [word(2000, 2000 + (speech.samples.length / RATE) * 1000)] };
  }

  test('is not known before anything was said, nor from what is in no phrase', () => {
    expect(signalToNoise(last(measured(white(-50, 3000))))).toBeNull();
    expect(last(measured(white(-50, 3000), [word(1000, 2000, '[unk]')])).speech).toBeNull();
  });
  test.each([0, 5, 10, 20])(
    'in workshop noise at %i dB is measured some decibels more, since the floor is lower',
    async (snr) => {
      for (let seed = 1; seed <= 4; seed++) {
        const { samples, words } = await spokenIn(snr, seed);
        const found = signalToNoise(last(measured(samples, words))) ?? 0;
        expect(found - snr).toBeGreaterThan(2);
        expect(found - snr).toBeLessThan(9);
      }
    },
  );
  test('of the word back is enough to trust it from 10 dB on, whoever says it, and that of a beep on nothing never is', async () => {
    for (let seed = 1; seed <= 4; seed++) {
      const noise = workshopNoise(6, RATE, seed).samples;
      for (const voice of FLITE_VOICES) {
        const speech = await synthesise('back', { voice });
        const factor = activeLevel(speech) * 10 ** (-10 / 20) * 10;
        const { samples } = join(silence(2000, RATE), speech, silence(500, RATE));
        const mixed = samples.map((sample, i) => sample + factor * (noise[i % noise.length] ?? 0));
        const meter = new SoundMeter(RATE);
        meter.take({ samples: mixed, time: 0 });
        const overNoise = meter.spoke([word(2000, 2000 + (speech.samples.length / RATE) * 1000, 'back')]);
        expect(overNoise, `${voice}, noise ${seed}`).toBeGreaterThanOrEqual(TOO_LOUD_BELOW_DB);
      }
    }
    // Twenty milliseconds of a tone every half second, and exact zeros between.
    const beep = Float32Array.from({ length: 20 * RATE }, (_, i) =>
      i % (RATE / 2) < RATE / 50 ? 0.5 * Math.sin((2 * Math.PI * 400 * i) / RATE) : 0,
    );
    const meter = new SoundMeter(RATE);
    meter.take({ samples: beep, time: 0 });
    expect(meter.spoke([word(19_000, 19_400, 'back')])).toBeLessThan(TOO_LOUD_BELOW_DB);
  });
  test('stays the same when all is made louder or softer', async () => {
    const { samples, words } = await spokenIn(10, 3);
    const ratio = (factor: number): number | null =>
      signalToNoise(
        last(
          measured(
            samples.map((sample) => sample * factor),
            words,
          ),
        ),
      );
    const plain = ratio(1) ?? NaN;
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 0 }), (decibels) => {
        expect(ratio(10 ** (decibels / 20))).toBeCloseTo(plain, 2);
      }),
      { numRuns: 15 },
    );
  });
  test('falls at once when the background rises, before anything more is said', async () => {
    const { samples, words } = await spokenIn(20, 1);
    const meter = new SoundMeter(RATE);
    meter.take({ samples, time: 0 });
    meter.spoke(words);
    const end = (samples.length / RATE) * 1000;
    const before = signalToNoise(meter.take({ samples: white(-60, 20), time: end })) ?? 0;
    const louder = signalToNoise(meter.take({ samples: white(-20, 4500), time: end + 20 })) ?? 0;
    expect(louder).toBeLessThan(before - 10);
  });
});

describe('clipping', () => {
  const sine = (peak: number): Float32Array =>
    Float32Array.from({ length: RATE }, (_, i) =>
      Math.max(-1, Math.min(1, peak * Math.sin((2 * Math.PI * 440 * i) / RATE))),
    );
  test('is seen where a tone is cut off, and never below full scale', () =>
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 4, noNaN: true }), (peak) => {
        fc.pre(peak < 0.985 || peak > 1.02);
        expect(last(measured(sine(peak))).isClipped).toBe(peak > 1);
      }),
      { numRuns: 40 },
    ));
  test('is told for three seconds and then forgotten; a single full-scale sample is none', () => {
    expect(last(measured(after(sine(2), white(-50, 2500)))).isClipped).toBe(true);
    expect(last(measured(after(sine(2), white(-50, 3500)))).isClipped).toBe(false);
    expect(last(measured(after(white(-50, 500), Float32Array.of(1), white(-50, 500)))).isClipped).toBe(false);
  });
});
