/** Samples that are taken together to begin with: half a millisecond at 16 kHz. */
const TOGETHER = 8;
/** Less alike is chance, or the room alone. */
const LEAST_ALIKE = 0.25;

/**
 * How much later something that was played is heard, by the lag at which the two are most alike: coarsely first, then to
 * the sample.
 * @param played begins `most` samples before `heard`, and is longer by `most - least`
 * @param least and `most` are lags in samples; the least may be negative
 * @returns in samples; null where what is heard holds nothing of it
 */
export function echoDelay(heard: Float32Array, played: Float32Array, least: number, most: number): number | null {
  const lags = Math.floor((most - least) / TOGETHER);
  const roughly = mostAlike(coarse(heard), coarse(played), lags, 0, lags);
  if (roughly.alike < LEAST_ALIKE) return null;
  const lag = roughly.lag * TOGETHER;
  const [from, to] = [Math.max(0, lag - TOGETHER), Math.min(most - least, lag + TOGETHER)];
  return least + mostAlike(heard, played, most - least, from, to).lag;
}

/** @param first where `played` has what is heard without any lag; lags `from` … `to` are tried */
function mostAlike(
  heard: Float32Array,
  played: Float32Array,
  first: number,
  from: number,
  to: number,
): { readonly lag: number; readonly alike: number } {
  const energy = heard.reduce((sum, sample) => sum + sample ** 2, 0);
  let best = { lag: from, alike: 0 };
  for (let lag = from; lag <= to; lag++) {
    let [product, other] = [0, 0];
    for (let at = 0; at < heard.length; at++) {
      const sample = played[first - lag + at] ?? 0;
      product += (heard[at] ?? 0) * sample;
      other += sample ** 2;
    }
    const alike = Math.abs(product) / Math.sqrt(energy * other || Infinity);
    if (alike > best.alike) best = { lag, alike };
  }
  return best;
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
