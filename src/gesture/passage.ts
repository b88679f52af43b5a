/** Whether something passes across the picture: a band of what is new that follows one line through time. Pure. */

/** Of each column of the view, the part of its height that is not as it was, at a time. */
export interface Profile {
  readonly time: number;
  readonly parts: Float32Array;
}

export interface Passage {
  /** Milliseconds for the whole width of the view, to the right; negative to the left. */
  readonly crossing: number;
  /** The first and the last picture that show it. */
  readonly from: number;
  readonly to: number;
  readonly frames: number;
  /** Mean height of the band, and the least of any picture, as parts of the view. */
  readonly height: number;
  readonly least: number;
  /** How much is new elsewhere, ahead of the band and behind it. */
  readonly ahead: number;
  readonly behind: number;
  /** What was new just before it came. */
  readonly before: number;
}

/** Milliseconds for the width that are tried. */
const CROSSINGS = [90, 120, 160, 200, 250, 310, 380, 460, 560, 680, 820];
/** How far the middle of the band must have come, as a part of the view. */
const ALMOST_OVER = 0.78;
/** Half of the band that is looked at, and how far from its middle nothing should be new: parts of the view. */
const HALF_BAND = 0.075;
const CLEAR = 0.3;
/** It was over so long ago at most. */
const LATEST_MS = 220;
/** Lines that are tried in the time of one crossing. */
const STEPS = 14;
/** Less is a glint. */
const LEAST_HEIGHT = 0.15;
/** It must be seen so far along the view, at first and at last. */
const SEEN = { first: 0.45, last: 0.55, span: 0.35 };
/** What was there before it is looked at for so long. */
const BEFORE_MS = 300;

interface Line {
  readonly crossing: number;
  /** When the band is in the middle of the view. */
  readonly middle: number;
}

/** The passage that has just come to its end; null where nothing of the kind is seen. */
export function passageOf(profiles: readonly Profile[], notBefore: number): Passage | null {
  const now = profiles.at(-1)?.time ?? 0;
  if (profiles.filter(({ parts }) => parts.some((part) => part >= LEAST_HEIGHT)).length < 2) return null;
  const sums = profiles.map(({ parts }) => {
    const sum = new Float32Array(parts.length + 1);
    for (let x = 0; x < parts.length; x++) sum[x + 1] = (sum[x] ?? 0) + (parts[x] ?? 0);
    return sum;
  });
  let best: Passage | null = null;
  for (const crossing of CROSSINGS) {
    for (const direction of [1, -1]) {
      // The band is at the part p of its way at the time middle + (p − 0.5) × crossing.
      const latest = now - (ALMOST_OVER - 0.5) * crossing;
      const earliest = Math.max(now - 0.6 * crossing - LATEST_MS, notBefore + 0.5 * crossing);
      for (let middle = latest; middle >= earliest; middle -= crossing / STEPS) {
        const found = along(profiles, sums, { crossing: direction * crossing, middle });
        if (found && (!best || clearness(found) > clearness(best))) best = found;
      }
    }
  }
  return best;
}

const clearness = ({ height, least, ahead, behind }: Passage): number => height + least - ahead - behind;

/** Found by logistic regression over drawn films of gestures and of work. */
const WEIGHTS = {
  bias: -12.86,
  height: 11.18,
  least: 10.2,
  ahead: -10.89,
  behind: -1.51,
  before: -12.04,
  /** Who walks by is slower; what seems to cross in a wink is light. */
  slow: -5.89,
  quick: -3.83,
  frames: 2.26,
};

/** The odds that it is a wave, 0 to 1. */
export function passageSureness({ crossing, frames, height, least, ahead, behind, before }: Passage): number {
  const span = Math.abs(crossing);
  const sum =
    WEIGHTS.bias +
    WEIGHTS.height * height +
    WEIGHTS.least * least +
    WEIGHTS.ahead * ahead +
    WEIGHTS.behind * behind +
    WEIGHTS.before * before +
    WEIGHTS.slow * Math.max(0, (span - 450) / 300) +
    WEIGHTS.quick * Math.max(0, (200 - span) / 100) +
    WEIGHTS.frames * Math.min(5, frames);
  return 1 / (1 + Math.exp(-sum));
}

function along(
  profiles: readonly Profile[],
  sums: readonly Float32Array[],
  { crossing, middle }: Line,
): Passage | null {
  let [frames, height, least, ahead, behind, before, beforeCount] = [0, 0, Infinity, 0, 0, 0, 0];
  let [first, last, from, to] = [1, 0, 0, 0];
  const span = Math.abs(crossing);
  profiles.forEach(({ time }, i) => {
    const sum = sums[i];
    if (!sum) return;
    const way = (time - middle) / span + 0.5;
    const columns = sum.length - 1;
    const mean = (low: number, high: number): number => {
      // A line to the left is one to the right in the mirror.
      const [l, h] = crossing > 0 ? [low, high] : [1 - high, 1 - low];
      const a = Math.max(0, Math.round(l * columns));
      const b = Math.min(columns, Math.round(h * columns));
      return b > a ? ((sum[b] ?? 0) - (sum[a] ?? 0)) / (b - a) : 0;
    };
    if (way < -0.25 && way > -0.25 - BEFORE_MS / span) {
      before += mean(0, 1);
      beforeCount += 1;
    }
    if (way < -0.02 || way > 1.02) return;
    const here = mean(way - HALF_BAND, way + HALF_BAND);
    if (frames === 0) [first, from] = [way, time];
    [last, to] = [way, time];
    frames += 1;
    height += here;
    least = Math.min(least, here);
    ahead += mean(way + CLEAR, 1);
    behind += mean(0, way - CLEAR);
  });
  if (frames < 2 || first > SEEN.first || last < SEEN.last || last - first < SEEN.span) return null;
  if (height / frames < LEAST_HEIGHT) return null;
  return {
    crossing,
    from,
    to,
    frames,
    least,
    height: height / frames,
    ahead: ahead / frames,
    behind: behind / frames,
    before: beforeCount > 0 ? before / beforeCount : 0,
  };
}
