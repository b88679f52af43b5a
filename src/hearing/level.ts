/** Mean power of the samples: that of a full-scale square wave is 1. What is no number counts as silence. */
export function powerOf(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += Number.isFinite(sample) ? sample * sample : 0;
  return sum / Math.max(samples.length, 1);
}

/** Root mean square of the samples in dBFS, where a full-scale square wave has 0 dBFS; −∞ for exact zeros. */
export const levelOf = (samples: Float32Array): number => 10 * Math.log10(powerOf(samples));
