/** Samples that are taken together: a quarter of a millisecond at 16 kHz is close enough to begin with. */
const TOGETHER = 4;
/** Less alike is chance, or the room alone. */
const LEAST_ALIKE = 0.25;

/**
 * How much later something that was played is heard, by the lag at which the two are most alike.
 * @param played begins `most` samples before `heard`, and is longer by `most - least`
 * @param least and `most` are lags in samples; the least may be negative
 * @returns in samples; null where what is heard holds nothing of it
 */
export function echoDelay(heard: Float32Array, played: Float32Array, least: number, most: number): number | null {
  const [near, far] = [coarse(heard), coarse(played)];
  const lags = Math.floor((most - least) / TOGETHER);
  const energy = near.reduce((sum, sample) => sum + sample ** 2, 0);
  let [best, bestLag] = [0, 0];
  for (let lag = 0; lag <= lags; lag++) {
    const from = lags - lag;
    let [product, other] = [0, 0];
    for (let at = 0; at < near.length; at++) {
      const sample = far[from + at] ?? 0;
      product += (near[at] ?? 0) * sample;
      other += sample ** 2;
    }
    const alike = Math.abs(product) / Math.sqrt(energy * other || Infinity);
    if (alike > best) [best, bestLag] = [alike, lag];
  }
  return best < LEAST_ALIKE ? null : least + bestLag * TOGETHER;
}

/** Without the hum of a room, which is alike at every lag, and with fewer samples. */
function coarse(samples: Float32Array): Float32Array {
  return Float32Array.from({ length: Math.floor(samples.length / TOGETHER) }, (_, at) => {
    let sum = 0;
    for (let i = 0; i < TOGETHER; i++) {
      const from = at * TOGETHER + i;
      sum += (samples[from] ?? 0) - (samples[from - TOGETHER] ?? 0);
    }
    return sum;
  });
}
