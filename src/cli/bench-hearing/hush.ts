/** How surely and how soon a spoken "stop" hushes the app's own voice, and how often that voice hushes itself. */
import { announce } from '../../language/announce.ts';
import { spokenWords } from '../../language/hush.ts';
import { SITUATION_NAMES, stateIn } from '../../language/named-situations.ts';
import { prompt } from '../../language/prompt.ts';
import { separateDigits } from '../../speaking/digits.ts';
import { compileFlite, runFlite } from '../../speaking/flite.ts';
import { scalePeak, trimSilence, type Sound } from '../../speaking/sound.ts';
import type { Input } from '../hear/inputs.ts';
import { speechEnd } from '../hear/speech-end.ts';
import { readRecording } from '../hear/wav-file.ts';
import type { Ears } from './host.ts';
import { loudness } from './loudness.ts';
import { fliteBytes } from './shop.ts';

const RATE = 16_000;
/** As the app plays it. */
const PEAK = 0.9;
const QUIET_S = 0.25;
/** How much louder the person is than the voice, at the microphone, in dB. */
const LEVELS = [6, 0, -6];
/** Where in the announcement the word begins, as parts of it. */
const PLACES = [0.15, 0.4, 0.65];

/** What is said at each named moment, to each question too. */
const TEXTS = [
  ...new Set(
    SITUATION_NAMES.map(stateIn).flatMap((state) => [
      ...prompt(state),
      ...(['place', 'left', 'why', 'last readings'] as const).flatMap((about) =>
        announce(state, [{ kind: 'asked', question: { about } }]),
      ),
    ]),
  ),
];

export async function benchHush(ears: Ears, inputs: readonly Input[]): Promise<void> {
  const flite = await compileFlite(await fliteBytes());
  const say = (text: string): Sound =>
    scalePeak(trimSilence(runFlite(flite, separateDigits(text), { voice: 'kal16' }), 40), PEAK);
  const stops = inputs.filter(({ listed }) => listed?.transcript === 'stop');
  for (const isTakenOut of [true, false]) {
    console.log(isTakenOut ? 'The voice taken out of what is heard:' : 'What is heard as it is:');
    if (stops.length > 0) await hits(ears, say, stops, isTakenOut);
    await falseStops(ears, say, isTakenOut);
  }
}

async function falseStops(ears: Ears, say: (text: string) => Sound, isTakenOut: boolean): Promise<void> {
  let [seconds, closed] = [0, 0];
  const hushed: string[] = [];
  for (const text of TEXTS) {
    const voice = say(text);
    const sound = mixed(inRoom(voice), null, 0);
    const announced = { words: spokenWords(text), voice: voice.samples, from: isTakenOut ? FROM_MS : null };
    const { at, isListening } = await ears.hush(sound, announced);
    if (isListening) seconds += sound.samples.length / RATE;
    else closed++;
    if (at !== null) hushed.push(text);
  }
  console.log(
    `${(seconds / 60).toFixed(1)} minutes of announcements: hushed by themselves ${hushed.length}; ${closed} more hold the word and are not listened to`,
  );
  for (const text of hushed) console.log(`  ${text}`);
}

async function hits(
  ears: Ears,
  say: (text: string) => Sound,
  stops: readonly Input[],
  isTakenOut: boolean,
): Promise<void> {
  const long = TEXTS.filter((text) => spokenWords(text).length > 8 && !/\bstop/i.test(text));
  for (const decibels of LEVELS) {
    const delays: number[] = [];
    let [trials, early] = [0, 0];
    for (const { file } of stops) {
      const { sound: stop } = await readRecording(file);
      for (const place of PLACES) {
        const text = long[(trials * 7) % long.length] ?? '';
        const voice = say(text);
        const heard = inRoom(voice);
        const from = QUIET_S + (place * voice.samples.length) / RATE;
        const louder = scalePeak(stop, (loudness(heard) / loudness(stop)) * peakOf(stop) * 10 ** (decibels / 20));
        const announced = { words: spokenWords(text), voice: voice.samples, from: isTakenOut ? FROM_MS : null };
        const { at } = await ears.hush(mixed(heard, louder, from), announced);
        trials++;
        if (at === null) continue;
        if (at < from) early++;
        else delays.push((at - from - (speechEnd(stop.samples, stop.rate, Infinity) ?? 0)) * 1000);
      }
    }
    delays.sort((a, b) => a - b);
    const quantile = (part: number): string => (delays[Math.floor(part * delays.length)] ?? NaN).toFixed(0);
    console.log(
      `${decibels} dB: heard ${delays.length} of ${trials} (${early} more too early); ms after its end: median ${quantile(0.5)}, 90th percentile ${quantile(0.9)}; within 300 ms: ${delays.filter((ms) => ms <= 300).length}`,
    );
  }
}

/** From when the loudspeaker is given the voice until the microphone hears it, as over a wireless one. */
const ON_THE_WAY_MS = 120;
const FROM_MS = QUIET_S * 1000 - ON_THE_WAY_MS;
/** Of a workshop's walls: in 0.4 s what they give back is 60 dB down, and together as loud as a third of the direct sound. */
const REVERBERATION_S = 0.4;
const WALLS = 150;
const walls = reverberation();

function reverberation(): readonly { readonly later: number; readonly gain: number }[] {
  let seed = 1;
  const chance = (): number => (seed = (Math.imul(seed, 1_103_515_245) + 12_345) & 0x7fffffff) / 0x7fffffff;
  const all = Array.from({ length: WALLS }, () => {
    const part = chance();
    return { later: Math.round(part * REVERBERATION_S * RATE), gain: (chance() - 0.5) * 10 ** (-3 * part) };
  });
  const energy = all.reduce((sum, { gain }) => sum + gain ** 2, 0);
  return all.map(({ later, gain }) => ({ later, gain: gain / (3 * Math.sqrt(energy)) }));
}

/** The voice as a small loudspeaker at full volume gives it, with what the walls give back. */
function inRoom({ samples, rate }: Sound): Sound {
  const loud = samples.map((sample) => Math.tanh(1.2 * sample) / 1.2);
  const heard = new Float32Array(loud.length + REVERBERATION_S * RATE + 1);
  heard.set(loud);
  for (const { later, gain } of walls)
    loud.forEach((sample, at) => (heard[at + later] = (heard[at + later] ?? 0) + sample * gain));
  return { rate, samples: heard };
}

/** The voice, with a person over it from this time on, in a quiet room, within full scale. */
function mixed(voice: Sound, person: Sound | null, from: number): Sound {
  const samples = new Float32Array(voice.samples.length + 4 * QUIET_S * RATE);
  const add = (sound: Sound, at: number): void =>
    sound.samples.forEach((sample, i) => (samples[at + i] = (samples[at + i] ?? 0) + sample));
  add(voice, QUIET_S * RATE);
  if (person) add(person, Math.round(from * RATE));
  return {
    rate: RATE,
    samples: samples.map((sample, at) => Math.max(-1, Math.min(1, sample / 2)) + 3e-4 * Math.sin(at * at)),
  };
}

const peakOf = ({ samples }: Sound): number => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
