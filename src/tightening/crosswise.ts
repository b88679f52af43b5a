/**
 * The crosswise order of a closed round of n fasteners, as places 0 … n−1 counted round it.
 *
 * Every count has a rule that works right across the joint and then moves well away:
 * - n = 4q: crosses of four a, a+2q, a+q, a+3q, with a spread over a quarter of the round. For 4 to 24 this is the
 *   legacy cross pattern of flange work (12: 1-7-4-10, 2-8-5-11, 3-9-6-12).
 * - n = 2h, h odd: opposite pairs a, a+h, each pair nearly a quarter turn on from the last
 *   (6: 1-4-2-5-3-6; 10: 1-6-3-8-5-10-7-2-9-4).
 * - n odd: a star, nearly half a turn each time (5: 1-3-5-2-4).
 *
 * Laws: every place once; for even counts every second fastener is opposite the one before; from five up no two
 * neighbours follow each other.
 */

/** The order in groups that belong together: crosses of four, opposite pairs, or the whole star. */
export function crosswisePlaces(count: number): number[][] {
  if (count % 4 === 0) {
    const quarter = count / 4;
    return spread(quarter).map((a) => [a, a + 2 * quarter, a + quarter, a + 3 * quarter]);
  }
  if (count % 2 === 0) {
    const half = count / 2;
    const step = (half - 1) / 2;
    return Array.from({ length: half }, (_, i) => [(i * step) % count, (i * step + half) % count]);
  }
  return [spread(count)];
}

/** 0 … n−1 with followers far apart: odd n in steps of (n−1)/2, even n the two halves by turns. */
function spread(n: number): number[] {
  if (n % 2 === 0) return Array.from({ length: n }, (_, i) => (i % 2 === 0 ? i / 2 : (n + i - 1) / 2));
  const step = Math.max((n - 1) / 2, 1);
  return Array.from({ length: n }, (_, i) => (i * step) % n);
}
