import { signalToNoise, type Sound } from '../hearing/sound-meter.ts';
import { isFaint, judgeBackground, type Background } from '../hearing/sound-judgement.ts';

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

/** In words, the gravest first: what to do about it, where something is to be done. */
export function soundInWords({ noise, signalToNoise: snr, background, isClipped, isFaint }: HeardSound): string {
  if (noise === null) return 'Background: not measured yet';
  const measured = snr === null ? `${signed(noise)} dB` : `voice ${Math.max(0, snr)} dB over the noise`;
  if (background === 'too loud to trust') return `▲ Too loud to trust: ${measured}. Tap or use the pedal.`;
  if (isClipped) return '▲ Too close: the microphone cuts the sound off.';
  if (isFaint) return '▲ Voice too quiet: come closer to the microphone.';
  if (background === 'loud') return `△ Loud: ${measured}. Check each read-back.`;
  return background === 'quiet' ? `Quiet: ${measured}` : `Background ${measured}`;
}

/** With a minus that a screen reader says and an eye sees at 3 m. */
export const signed = (decibels: number): string => String(Math.round(decibels)).replace('-', '−');
