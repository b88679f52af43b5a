/** What becomes of readings of three digits in the loop: heard, read back, and said again where that was not what was said. */
import { powerOf } from '../../hearing/level.ts';
import { peak, scalePeak, trimSilence, type Sound } from '../../speaking/sound.ts';
import type { Input } from '../hear/inputs.ts';
import { readRecording } from '../hear/wav-file.ts';
import type { Ears } from './host.ts';
import { loudness } from './loudness.ts';
import type { Heard } from './page.ts';

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const READINGS = 100;
/** Who is not understood three times types the value. */
const TAKES = 3;
const RATE = 16_000;
/** Digits of one number follow each other so closely; it is quiet so long before and after. */
const BETWEEN_MS = 60;
const QUIET_MS = 1000;
const SIGNAL_TO_NOISE_DB = 10;

type FirstTake = 'right' | 'asked about' | 'not heard' | 'wrong and not asked about';

/**
 * A hundred readings, put together of digits that different people said alone, each said up to three times by other
 * voices. Whoever says it hears what is read back, and says it again where that is another value; that these answers are
 * understood is taken for granted. Twice: as recorded, and in the noise of recordings listed as `noise-only`.
 */
export async function benchLoop(ears: Ears, inputs: readonly Input[]): Promise<void> {
  const listed = (kind: string): readonly Input[] => inputs.filter((input) => input.listed?.kind === kind);
  const alone = await Promise.all(
    listed('isolated').map(async (input) => ({ word: input.listed?.transcript, sound: await soundOf(input) })),
  );
  const voices = DIGITS.map((digit) =>
    alone.filter(({ word, sound }) => word === digit && sound.rate === RATE).map(({ sound }) => sound),
  );
  const said = [...voices.keys()].filter((digit) => voices[digit]?.length !== 0);
  if (said.length === 0) throw new Error('In these recordings nobody says a digit alone.');
  const noises = await Promise.all(listed('noise-only').map(soundOf));
  await ofAll(ears, 'As recorded', said, (value, at) => spoken(value, at, voices));
  if (noises.length > 0)
    await ofAll(ears, `At ${SIGNAL_TO_NOISE_DB} dB of signal to noise`, said, (value, at) =>
      noisy(spoken(value, at, voices), pick(noises, at)),
    );
}

const soundOf = async ({ file }: Input): Promise<Sound> => (await readRecording(file)).sound;

/** @param say the same value in other voices at each of the places */
async function ofAll(
  ears: Ears,
  where: string,
  said: readonly number[],
  say: (value: string, at: number) => Sound,
): Promise<void> {
  const first = new Map<FirstTake, number>();
  let [right, givenUp] = [0, 0];
  for (let number = 0; number < READINGS; number++) {
    const value = valueOf(number, said);
    for (let take = 0; take < TAKES; take++) {
      const heard = await ears.hear(say(value, number + 5 * take), { kind: 'three figures' }, 'words');
      const taken = heard.find(({ meaning }) => meaning !== null) ?? null;
      const result = judged(taken, value);
      if (take === 0) first.set(result, (first.get(result) ?? 0) + 1);
      if (take === 0 && result === 'wrong and not asked about')
        console.log(`  ${value}: “${heard.map(({ text }) => text).join(' / ')}”`);
      // What is read back right is affirmed, in doubt or not.
      if (taken?.value === value) {
        right++;
        break;
      }
      if (take === TAKES - 1) givenUp++;
    }
  }
  const counts = (['right', 'asked about', 'not heard', 'wrong and not asked about'] as const)
    .map((result) => `${result} ${first.get(result) ?? 0}`)
    .join(', ');
  console.log(
    `${where}, of ${READINGS} readings: at once ${counts}; after the questions right ${right}, not understood in ${TAKES} takes ${givenUp}`,
  );
}

/** @param taken the first utterance with a meaning: what comes after it finds the loop at its read-back */
function judged(taken: Heard | null, value: string): FirstTake {
  if (!taken) return 'not heard';
  if (taken.isAsked || taken.value === null) return 'asked about';
  return taken.value === value ? 'right' : 'wrong and not asked about';
}

/** Three digits of those that somebody says, spread over all such numbers; the first is not zero. */
function valueOf(number: number, said: readonly number[]): string {
  const at = 1 + number * 367;
  const count = said.length;
  return [said.filter((digit) => digit > 0), said, said]
    .map((digits, place) => pick(digits, Math.floor(at / count ** place)))
    .join('');
}

const pick = <Item>(items: readonly Item[], at: number): Item => {
  const item = items[at % items.length];
  if (item === undefined) throw new Error('Nothing to pick from.');
  return item;
};

function spoken(value: string, at: number, voices: readonly (readonly Sound[])[]): Sound {
  const digits = [...value].map((digit, place) => pick(pick(voices, Number(digit)), at + 3 * place));
  const quiet = (ms: number): Float32Array => new Float32Array((RATE * ms) / 1000);
  // One person speaks: all are as loud as the first.
  const level = loudness(pick(digits, 0));
  const parts = digits.map((sound) => louder(trimSilence(sound, BETWEEN_MS / 2), level / loudness(sound)).samples);
  return { rate: RATE, samples: joined([quiet(QUIET_MS), ...parts, quiet(QUIET_MS)]) };
}

function joined(parts: readonly Float32Array[]): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return samples;
}

/** At the signal-to-noise ratio of the loud parts of the speech to the whole noise, within full scale. */
function noisy(speech: Sound, noise: Sound): Sound {
  const gain = (loudness(speech) / (rms(noise.samples) || 1)) * 10 ** (-SIGNAL_TO_NOISE_DB / 20);
  const samples = speech.samples.map((sample, at) => sample + gain * (noise.samples[at % noise.samples.length] ?? 0));
  const mixed = { rate: speech.rate, samples };
  return peak(mixed) > 1 ? scalePeak(mixed, 1) : mixed;
}

const louder = ({ samples, rate }: Sound, factor: number): Sound => ({
  samples: samples.map((sample) => sample * factor),
  rate,
});

const rms = (samples: Float32Array): number => Math.sqrt(powerOf(samples));
