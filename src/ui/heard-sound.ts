import { signalToNoise, type Sound } from '../hearing/sound-meter.ts';
import { isFaint, judgeBackground, TOO_LOUD_BELOW_DB, type Background } from '../hearing/sound-judgement.ts';
import { microphone } from '../words/microphone.ts';

/** The sound at the microphone with what it is worth, as the screen shows it. Levels in dBFS, ratios in dB, rounded. */
export interface HeardSound {
  readonly noise: number | null;
  readonly signalToNoise: number | null;
  readonly background: Background | null;
  readonly isClipped: boolean;
  readonly isFaint: boolean;
}

/** @param before the last judgement, which stays where the sound is about as good as it was */
export function heardSound(sound: Sound, before: Background | null): HeardSound {
  const { noise, isClipped } = sound;
  const snr = signalToNoise(sound);
  return {
    noise: noise === null ? null : Math.round(noise),
    signalToNoise: snr === null ? null : Math.round(snr),
    background: judgeBackground(sound, before),
    isClipped,
    isFaint: isFaint(sound),
  };
}

/** Whether an utterance can be trusted that stood so far above the background, in dB, in this sound. What was not measured is not. */
export const isTrusted = (overNoise: number | undefined, sound: HeardSound | null): boolean =>
  sound?.background !== 'too loud to trust' && overNoise !== undefined && overNoise >= TOO_LOUD_BELOW_DB;

/** Whether something is to be done before the ear can be trusted. */
export const isBad = ({ noise, background, isClipped, isFaint }: HeardSound): boolean =>
  noise !== null && (background === 'too loud to trust' || isClipped || isFaint);

/** In words, the gravest first: what to do about it, where something is to be done. */
export function soundInWords({ noise, signalToNoise: snr, background, isClipped, isFaint }: HeardSound): string {
  if (noise === null) return microphone.notMeasured;
  const measured = snr === null ? microphone.decibels(signed(noise)) : microphone.overNoise(Math.max(0, snr));
  if (background === 'too loud to trust') return microphone.tooLoud(measured);
  if (isClipped) return microphone.tooClose;
  if (isFaint) return microphone.tooQuiet;
  if (background === 'loud') return microphone.loud(measured);
  return background === 'quiet' ? microphone.quiet(measured) : microphone.background(measured);
}

/** With a minus that a screen reader says and an eye sees at 3 m. */
export const signed = (decibels: number): string => String(Math.round(decibels)).replace('-', '−');
