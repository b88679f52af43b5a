/** Root mean square of the samples in dBFS, where a full-scale square wave has 0 dBFS; −∞ for exact zeros. */
export function levelOf(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += Number.isFinite(sample) ? sample * sample : 0;
  return 10 * Math.log10(sum / Math.max(samples.length, 1));
}
