import { signalToNoise, type Sound } from './sound-meter.ts';

/** How far the background lets speech be trusted. */
export type Background = 'quiet' | 'loud' | 'too loud to trust';

/**
 * In dB of `signalToNoise`. The model is unreliable on connected numbers where speech stands 5 dB above the mean of
 * workshop noise, and clearly worse at 10 than without noise (its report). The floor of such noise lies 3 to 6 dB under its
 * mean, as measured on noise made by code.
 */
export const TOO_LOUD_BELOW_DB = 10;
export const LOUD_BELOW_DB = 20;
/** No speech is louder than this without its peaks being cut off: they stand some 15 dB above the level, common practice. */
export const LOUDEST_SPEECH_DBFS = -15;
/** A word that changes to and fro with every breath cannot be read: it stays until the sound is better or worse by this. */
const STEADY_DB = 2;

/**
 * Judges the background against speech; before anything was said, against the loudest speech there can be. null where
 * that does not show enough to say anything.
 * @param before what was judged last
 */
export function judgeBackground(
  sound: Pick<Sound, 'noise' | 'speech'>,
  before: Background | null = null,
): Background | null {
  const known = signalToNoise(sound);
  if (sound.noise === null) return null;
  const snr = known ?? LOUDEST_SPEECH_DBFS - sound.noise;
  if (snr < TOO_LOUD_BELOW_DB + (before === 'too loud to trust' ? STEADY_DB : 0)) return 'too loud to trust';
  if (snr < LOUD_BELOW_DB + (before === 'loud' || before === 'too loud to trust' ? STEADY_DB : 0)) return 'loud';
  return known === null ? null : 'quiet';
}

/** Under this level of speech, words begin to be lost however quiet the room is. */
export const FAINT_BELOW_DBFS = -50;

export const isFaint = ({ speech }: Pick<Sound, 'speech'>): boolean => speech !== null && speech < FAINT_BELOW_DBFS;
