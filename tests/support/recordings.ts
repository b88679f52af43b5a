import { existsSync } from 'node:fs';
import path from 'node:path';
import { join, silence, synthesise, type Sound } from './speech.ts';
import { readWav } from './wav.ts';

const folder = path.resolve(import.meta.dirname, '../../../shared/speech-model/testset/wav');

/** Recordings of people lie beside the project, not in it. Why they cannot be used, or false. */
export const recordingsMissing: string | false = existsSync(folder)
  ? false
  : 'the recordings of people are not beside the project';

/**
 * One recording of a word, without the quiet around it. Where the recordings are absent, the embedded voice says the word,
 * which the name holds: "sc_one_…" is "one".
 */
export async function recorded(name: string): Promise<Sound> {
  const [, word = name] = name.split('_');
  return trimmed(
    recordingsMissing ? await synthesise(word, { voice: 'rms' }) : await readWav(path.join(folder, `${name}.wav`)),
  );
}

/** Recordings one after another, as one person pauses between digits. */
export async function recordedString(...names: readonly [string, ...string[]]): Promise<Sound> {
  const sounds = await Promise.all(names.map(recorded));
  return spaced(sounds);
}

/** Sounds with a short pause between them, whatever quiet they brought along: a long pause would end the utterance. */
export function spaced(sounds: readonly Sound[]): Sound {
  const [first, ...others] = sounds.map(trimmed);
  if (!first) throw new Error('At least one sound is needed.');
  return join(first, ...others.flatMap((sound) => [silence(60, sound.rate), sound]));
}

/** Samples per loudness frame: 10 ms at 16 kHz. */
const FRAME = 160;

function trimmed({ samples, rate }: Sound): Sound {
  const loudness = Array.from({ length: Math.floor(samples.length / FRAME) }, (_, i) =>
    Math.hypot(...samples.subarray(i * FRAME, (i + 1) * FRAME)),
  );
  const threshold = 0.05 * Math.max(...loudness);
  const isLoud = (level: number): boolean => level > threshold;
  const from = Math.max(0, loudness.findIndex(isLoud) - 6);
  const to = Math.min(loudness.length, loudness.findLastIndex(isLoud) + 8);
  return { samples: samples.slice(from * FRAME, to * FRAME), rate };
}
