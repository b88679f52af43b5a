import { describe, expect, test } from 'vitest';
import { durationMs, peak, scalePeak, trimSilence, type Sound } from '../../src/speaking/sound.ts';
import { activeLevel, mix, seededRandom, workshopNoise } from '../support/noise.ts';
import { gain, join, resample, silence, synthesise } from '../support/speech.ts';

const sine = (hertz: number, ms: number, rate: number): Sound => ({
  samples: Float32Array.from({ length: (ms / 1000) * rate }, (_, i) => Math.sin((2 * Math.PI * hertz * i) / rate)),
  rate,
});
const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample ** 2, 0) / samples.length);
const decibels = (ratio: number): number => 20 * Math.log10(ratio);

describe('shaping', () => {
  test('trims silence from both ends but keeps a margin', () => {
    const sound = join(silence(300, 16_000), sine(400, 200, 16_000), silence(500, 16_000));
    expect(durationMs(trimSilence(sound, 40))).toBeCloseTo(280, 0);
  });

  test('leaves plain silence alone', () => {
    expect(durationMs(scalePeak(trimSilence(silence(100, 16_000), 40), 0.9))).toBe(100);
  });

  test('scales to the peak it is asked for', () => {
    expect(peak(scalePeak(gain(sine(400, 100, 16_000), -20), 0.9))).toBeCloseTo(0.9, 5);
  });

  test('a gain of 6.02 dB doubles', () => {
    expect(peak(gain(sine(1000, 100, 16_000), 6.0206))).toBeCloseTo(2, 3);
  });

  test('sounds of different rates are not joined', () => {
    expect(() => join(silence(10, 8000), silence(10, 16_000))).toThrow('Sounds at 8000 and 16000 Hz cannot be joined.');
  });
});

describe('a change of rate', () => {
  test.each([8000, 22_050, 44_100, 48_000])('from 16 kHz to %d Hz keeps a tone, its length and its level', (rate) => {
    const changed = resample(sine(1000, 500, 16_000), rate);
    expect(durationMs(changed)).toBeCloseTo(500, 0);
    // The ends lack neighbours on one side.
    const inner = (sound: Sound): Float32Array => sound.samples.subarray(sound.rate * 0.05, sound.rate * 0.45);
    const ideal = inner(sine(1000, 500, rate));
    const wrong = inner(changed).map((sample, i) => sample - (ideal[i] ?? 0));
    expect(decibels(rms(wrong) / rms(ideal))).toBeLessThan(-50);
  });

  test('to a lower one removes what it cannot carry', () => {
    const changed = resample(sine(6000, 500, 16_000), 8000);
    expect(decibels(rms(changed.samples.subarray(400, 3600)))).toBeLessThan(-50);
  });
});

describe('workshop noise', () => {
  test('is the same for the same seed, another for another, and lies near its level', () => {
    const noise = workshopNoise(1, 16_000, 7);
    expect(workshopNoise(1, 16_000, 7).samples).toEqual(noise.samples);
    expect(workshopNoise(1, 16_000, 8).samples).not.toEqual(noise.samples);
    expect(rms(noise.samples)).toBeCloseTo(0.1, 3);
  });

  test.each([20, 10, 0, -5])('lies %d dB under the speech it is mixed with', async (snr) => {
    const speech = gain(await synthesise('stud four. two four point five newton metres', { voice: 'rms' }), -20);
    const mixed = mix(speech, workshopNoise(2, 16_000, 3), snr);
    const added = mixed.samples.map((sample, i) => sample - (speech.samples[i] ?? 0));
    expect(decibels(activeLevel(speech) / rms(added))).toBeCloseTo(snr, 1);
  });

  test('that would clip turns the whole mix down', async () => {
    const speech = await synthesise('stud four', { voice: 'rms' });
    expect(peak(mix(speech, workshopNoise(1, 16_000, 3), -20))).toBeCloseTo(1, 5);
  });

  test('its random numbers are spread evenly', () => {
    const random = seededRandom(1);
    const tenths = new Array<number>(10).fill(0);
    for (let i = 0; i < 10_000; i++) {
      const tenth = Math.floor(random() * 10);
      tenths[tenth] = (tenths[tenth] ?? NaN) + 1;
    }
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });

  test('the level of speech does not count its pauses', async () => {
    const speech = await synthesise('stud four', { voice: 'rms' });
    const tone = sine(400, 1000, 16_000);
    expect(decibels(activeLevel(join(tone, silence(3000, 16_000), tone, tone, tone)) / rms(tone.samples))).toBeCloseTo(
      0,
      1,
    );
    expect(activeLevel(speech)).toBeGreaterThan(rms(speech.samples));
  });
});
