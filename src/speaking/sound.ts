/** Mono sound. Samples lie in -1 to 1; `rate` is in samples per second. */
export interface Sound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly rate: number;
}

/** Length in milliseconds. */
export const durationMs = ({ samples, rate }: Sound): number => (samples.length / rate) * 1000;

/** The largest absolute sample; 0 for silence. */
export function peak({ samples }: Sound): number {
  let largest = 0;
  for (const sample of samples) largest = Math.max(largest, Math.abs(sample));
  return largest;
}

/** Part of the peak under which a sample counts as silence: 34 dB down, above the hiss of a voice's pauses. */
const SILENCE = 0.02;

/** Drops silence from both ends but keeps `keepMs` of it, so that no soft first consonant is lost. */
export function trimSilence(sound: Sound, keepMs: number): Sound {
  const { samples, rate } = sound;
  const threshold = peak(sound) * SILENCE;
  const isSound = (sample: number): boolean => Math.abs(sample) > threshold;
  const first = samples.findIndex(isSound);
  if (first < 0) return sound;
  const keep = Math.round((keepMs / 1000) * rate);
  return { samples: samples.slice(Math.max(0, first - keep), samples.findLastIndex(isSound) + 1 + keep), rate };
}

/** Scales so that the peak is `to` (0 to 1): voices differ by 8 dB, and a workshop needs all of it. */
export function scalePeak(sound: Sound, to: number): Sound {
  const factor = to / (peak(sound) || to);
  return { samples: sound.samples.map((sample) => sample * factor), rate: sound.rate };
}
