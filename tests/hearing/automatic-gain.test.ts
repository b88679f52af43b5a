import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AutomaticGain, CEILING, MOST_GAIN_DB, TARGET_DBFS } from '../../src/hearing/automatic-gain.ts';
import { activeLevel, seededRandom, workshopNoise } from '../support/noise.ts';
import { gain, join, silence, synthesise, type Sound } from '../support/speech.ts';

const RATE = 16_000;
const decibelsOf = (sound: Sound): number => 20 * Math.log10(activeLevel(sound));

function white(dBFS: number, ms: number): Sound {
  const random = seededRandom(7);
  const peak = 10 ** (dBFS / 20) * Math.sqrt(3);
  return { rate: RATE, samples: Float32Array.from({ length: (RATE * ms) / 1000 }, () => peak * (2 * random() - 1)) };
}

function through(automatic: AutomaticGain, { samples }: Sound, chunk = 683): Sound {
  const out = new Float32Array(samples.length);
  for (let at = 0; at < samples.length; at += chunk)
    out.set(automatic.process(samples.slice(at, at + chunk), RATE), at);
  return { rate: RATE, samples: out };
}

const sum = (one: Sound, other: Sound): Sound => ({
  rate: RATE,
  samples: one.samples.map((sample, i) => sample + (other.samples[i % other.samples.length] ?? 0)),
});

/** Three phrases with a room around them, the speech at this level in dBFS. */
async function speechAt(dBFS: number): Promise<Sound> {
  const speech = await synthesise('one two five point three', { voice: 'rms' });
  const level = gain(speech, dBFS - decibelsOf(speech));
  const pause = silence(700, RATE);
  return sum(join(pause, level, pause, level, pause, level, pause), white(dBFS - 40, 500));
}

describe('automatic gain', () => {
  test.each([-60, -50, -40])('brings speech of %i dBFS near its target', async (dBFS) => {
    const automatic = new AutomaticGain();
    through(automatic, await speechAt(dBFS));
    const second = through(automatic, await speechAt(dBFS));
    expect(Math.abs(decibelsOf(second) - Math.min(TARGET_DBFS, dBFS + MOST_GAIN_DB))).toBeLessThan(6);
  });
  test('leaves speech alone that is loud enough', async () => {
    const sound = await speechAt(-20);
    expect(through(new AutomaticGain(), sound)).toEqual(sound);
  });
  test.each([-80, -60, -40])('never makes noise of %i dBFS louder', (dBFS) => {
    const automatic = new AutomaticGain();
    through(automatic, white(dBFS, 5000));
    expect(automatic.gain).toBe(0);
  });
  test('keeps its gain through a pause of any length', async () => {
    const automatic = new AutomaticGain();
    through(automatic, await speechAt(-55));
    const { gain: before } = automatic;
    expect(before).toBeGreaterThan(10);
    through(automatic, white(-95, 8000));
    expect(automatic.gain).toBe(before);
  });
  test('stays between 0 and 30 dB, makes nothing softer, and cuts nothing off, whatever comes', () =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -90, max: 5 }), fc.integer({ min: 20, max: 600 })), { maxLength: 6 }),
        fc.option(fc.integer({ min: -120, max: 0 })),
        (pieces, expected) => {
          const automatic = new AutomaticGain();
          if (expected !== null) automatic.expect(expected);
          for (const [dBFS, ms] of pieces) {
            const before = white(dBFS, ms);
            const after = through(automatic, before);
            expect(automatic.gain).toBeGreaterThanOrEqual(0);
            expect(automatic.gain).toBeLessThanOrEqual(MOST_GAIN_DB);
            const isKept = before.samples.every((sample, i) => {
              const [was, is] = [Math.abs(sample), Math.abs(after.samples[i] ?? 0)];
              return is >= was && is <= Math.max(was, CEILING) * 1.000_01;
            });
            expect(isKept).toBe(true);
          }
        },
      ),
      { numRuns: 60 },
    ));
  test('begins with what is known of a voice', async () => {
    const automatic = new AutomaticGain();
    automatic.expect(-55);
    expect(automatic.gain).toBe(TARGET_DBFS + 55);
    const first = through(automatic, await speechAt(-55));
    expect(Math.abs(decibelsOf(first) - TARGET_DBFS)).toBeLessThan(6);
  });
  test('survives samples that are no numbers', () => {
    const automatic = new AutomaticGain();
    automatic.process(Float32Array.of(NaN, 0.1, Infinity), RATE);
    expect(Number.isFinite(automatic.gain)).toBe(true);
  });
  test('does not take a workshop for speech for long: its gain stays under six decibels', () => {
    const automatic = new AutomaticGain();
    through(automatic, gain(workshopNoise(8, RATE, 5), -25));
    expect(automatic.gain).toBeLessThan(6);
  });
});
