/** How surely and how soon a spoken "stop" hushes the app's own voice, and how often that voice hushes itself. */
import path from 'node:path';
import { announce } from '../../language/announce.ts';
import { CALL_WORD, hushWords, spokenWords } from '../../language/hush.ts';
import { SITUATION_NAMES, stateIn } from '../../language/named-situations.ts';
import { prompt } from '../../language/prompt.ts';
import { separateDigits } from '../../speaking/digits.ts';
import { compileFlite, runFlite } from '../../speaking/flite.ts';
import { scalePeak, trimSilence, type Sound } from '../../speaking/sound.ts';
import type { Input } from '../hear/inputs.ts';
import { speechEnd } from '../hear/speech-end.ts';
import { readRecording } from '../hear/wav-file.ts';
import type { Ears } from './host.ts';
import type { Listened } from './hush-page.ts';
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

/** Somebody who says a word. */
interface Speaker {
  readonly name: string;
  readonly sound: Sound;
}

/** Voices that call for help, and how slowly. The limits of the ear were chosen with the two other voices. */
const CALLERS = (['rms', 'kal16'] as const).flatMap((voice) => [0.9, 1, 1.15].map((stretch) => ({ voice, stretch })));

export async function benchHush(ears: Ears, inputs: readonly Input[]): Promise<void> {
  const flite = await compileFlite(await fliteBytes());
  const say = (text: string): Sound =>
    scalePeak(trimSilence(runFlite(flite, separateDigits(text), { voice: 'kal16' }), 40), PEAK);
  const stops = await Promise.all(
    inputs
      .filter(({ listed }) => listed?.transcript === 'stop')
      .map(async ({ file }): Promise<Speaker> => ({
        name: path.basename(file),
        sound: (await readRecording(file)).sound,
      })),
  );
  const calls = CALLERS.map(({ voice, stretch }): Speaker => ({
    name: `${voice} ${stretch}`,
    sound: runFlite(flite, CALL_WORD, { voice, stretch }),
  }));
  const chance = dice();
  const waver = (): number => WAVER_MS * (2 * chance() - 1);
  for (const isTakenOut of [true, false]) {
    console.log(isTakenOut ? 'The voice taken out of what is heard:' : 'What is heard as it is:');
    const hear = (heard: Sound, text: string, voice: Sound, isCallWanted: boolean): Promise<Listened> => {
      const words = spokenWords(text);
      const hush = hushWords(words, isCallWanted);
      return ears.hush(heard, { words, hush, voice: voice.samples, from: isTakenOut ? FROM_MS + waver() : null });
    };
    if (stops.length > 0) await hits(hear, say, 'stop', stops);
    await hits(hear, say, CALL_WORD, calls);
    for (const isCallWanted of [false, true]) await falseHushes(hear, say, isCallWanted);
  }
}

/** @param isCallWanted whether the call for help is listened for too */
type Hear = (heard: Sound, text: string, voice: Sound, isCallWanted: boolean) => Promise<Listened>;

async function falseHushes(hear: Hear, say: (text: string) => Sound, isCallWanted: boolean): Promise<void> {
  let [seconds, closed] = [0, 0];
  const found: string[] = [];
  for (const text of TEXTS) {
    const voice = say(text);
    const sound = mixed(inRoom(voice), null, 0);
    const { hushed, isListening } = await hear(sound, text, voice, isCallWanted);
    if (isListening) seconds += sound.samples.length / RATE;
    else closed++;
    if (hushed) found.push(`“${hushed.word}” ${hushed.at.toFixed(1)} s: ${text}`);
  }
  console.log(
    `${(seconds / 60).toFixed(1)} minutes of announcements, ${isCallWanted ? `“stop” and “${CALL_WORD}”` : 'only “stop”'} listened for: hushed by themselves ${found.length}; ${closed} more hold the word and are not listened to`,
  );
  for (const text of found) console.log(`  ${text}`);
}

async function hits(
  hear: Hear,
  say: (text: string) => Sound,
  word: string,
  speakers: readonly Speaker[],
): Promise<void> {
  const isCall = word === CALL_WORD;
  const long = TEXTS.filter((text) => {
    const words = spokenWords(text);
    return words.length > 8 && !/\bstop/i.test(text) && (!isCall || hushWords(words, true).includes(word));
  });
  for (const decibels of LEVELS) {
    const heard: { readonly late: number; readonly answer: number }[] = [];
    let [trials, early] = [0, 0];
    const missed: string[] = [];
    for (const { name, sound: person } of speakers) {
      for (const place of PLACES) {
        const text = long[(trials * 7) % long.length] ?? '';
        const voice = say(text);
        const echo = inRoom(voice);
        const from = QUIET_S + (place * voice.samples.length) / RATE;
        const louder = scalePeak(person, (loudness(echo) / loudness(person)) * peakOf(person) * 10 ** (decibels / 20));
        const { hushed } = await hear(mixed(echo, louder, from), text, voice, isCall);
        trials++;
        const end = from + (speechEnd(person.samples, person.rate, Infinity) ?? 0);
        if (hushed?.word !== word) missed.push(`${name} over “${text}”${hushed ? `: taken for “${hushed.word}”` : ''}`);
        else if (hushed.at < from) early++;
        else heard.push({ late: (hushed.at - end) * 1000, answer: hushed.answer * 1000 });
      }
    }
    // Whatever else the machine does makes answers late: the quickest tenth shows best what they take.
    const quick = quantile(
      heard.map(({ answer }) => answer),
      0.1,
    );
    const within = (ms: (each: (typeof heard)[number]) => number): number =>
      heard.filter((each) => ms(each) <= 300).length;
    const lates = heard.map(({ late }) => late);
    console.log(
      [
        `“${word}” ${decibels} dB: heard ${heard.length} of ${trials} (${early} more too early)`,
        `sound after its end until it is noticed, in ms: median ${quantile(lates, 0.5).toFixed(0)}, 90th percentile ${quantile(lates, 0.9).toFixed(0)}, most ${Math.max(...lates).toFixed(0)}`,
        `the engine's answer took ${quantile(
          heard.map(({ answer }) => answer),
          0.5,
        ).toFixed(0)} ms (median by the clock), ${quick.toFixed(0)} at its quickest`,
        `with it within 300 ms: ${within(({ late, answer }) => late + answer)} by the clock, ${within(({ late }) => late + quick)} with quick answers`,
      ].join('; '),
    );
    for (const each of missed) console.log(`  missed: ${each}`);
  }
}

function quantile(values: readonly number[], part: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(part * sorted.length)] ?? NaN;
}

/** From when the loudspeaker is given the voice until the microphone hears it, as over a wireless one. */
const ON_THE_WAY_MS = 120;
const FROM_MS = QUIET_S * 1000 - ON_THE_WAY_MS;
/** Nobody is told to the millisecond when something begins to sound: how far that is off, at most. */
const WAVER_MS = 10;
/** Of a workshop's walls: in 0.4 s what they give back is 60 dB down, and together as loud as a third of the direct sound. */
const REVERBERATION_S = 0.4;
const WALLS = 150;
const walls = reverberation();

/** Numbers from 0 to 1 by chance, the same ones each time. */
function dice(): () => number {
  let seed = 1;
  return () => (seed = (Math.imul(seed, 1_103_515_245) + 12_345) & 0x7fffffff) / 0x7fffffff;
}

function reverberation(): readonly { readonly later: number; readonly gain: number }[] {
  const chance = dice();
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
