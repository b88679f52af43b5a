import type { Sound } from '../../speaking/sound.ts';

/** Zero crossings of the sinc on either side: 16 put the images of speech more than 50 dB down. */
const CROSSINGS = 16;

/**
 * Changes the rate by a sinc under a Hann window. When the rate falls, the sinc is widened so that it also removes what
 * the lower rate cannot carry; linear interpolation would fold that back onto the consonants.
 * @param rate in hertz
 */
export function resample(sound: Sound, rate: number): Sound {
  if (rate === sound.rate) return sound;
  const ratio = rate / sound.rate;
  const cutoff = Math.min(1, ratio);
  const reach = CROSSINGS / cutoff;
  const samples = new Float32Array(Math.round(sound.samples.length * ratio));
  for (let i = 0; i < samples.length; i++) {
    const centre = i / ratio;
    let sum = 0;
    for (let j = Math.max(0, Math.ceil(centre - reach)); j <= centre + reach && j < sound.samples.length; j++)
      sum += (sound.samples[j] ?? 0) * cutoff * windowedSinc((centre - j) * cutoff);
    samples[i] = sum;
  }
  return { samples, rate };
}

function windowedSinc(x: number): number {
  if (x === 0) return 1;
  if (Math.abs(x) >= CROSSINGS) return 0;
  return (Math.sin(Math.PI * x) / (Math.PI * x)) * (0.5 + 0.5 * Math.cos((Math.PI * x) / CROSSINGS));
}
