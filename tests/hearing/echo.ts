/** Sounds with which echoes are tried. */

/** Coloured noise, about as speech is: strong below 1 kHz, in syllables. The same for the same seed. @param rate in hertz */
export function speechLike(seconds: number, rate: number, seed: number): Float32Array<ArrayBuffer> {
  let state = seed;
  let [slow, low] = [0, 0];
  return Float32Array.from({ length: Math.round(seconds * rate) }, (_, at) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    const white = state / 2 ** 31 - 1;
    slow += 0.2 * (white - slow);
    low += 0.2 * (slow - low);
    return low * (0.55 + 0.45 * Math.sin((2 * Math.PI * 4 * at) / rate + seed));
  });
}

/** A path from loudspeaker to microphone: so late, in samples, and with walls behind it. */
export function throughRoom(played: Float32Array, delay: number): Float32Array<ArrayBuffer> {
  const walls = [
    [0, 0.6],
    [37, 0.2],
    [121, -0.15],
    [310, 0.08],
    [555, -0.05],
  ] as const;
  return Float32Array.from(played, (_, at) =>
    walls.reduce((sum, [later, gain]) => sum + gain * (played[at - delay - later] ?? 0), 0),
  );
}

export const power = (samples: Float32Array): number =>
  samples.reduce((sum, sample) => sum + sample ** 2, 0) / Math.max(1, samples.length);

/** How far one sound is below another, in dB. */
export const below = (quiet: Float32Array, loud: Float32Array): number => 10 * Math.log10(power(loud) / power(quiet));

export const sum = (a: Float32Array, b: Float32Array): Float32Array<ArrayBuffer> =>
  Float32Array.from(a, (sample, at) => sample + (b[at] ?? 0));
