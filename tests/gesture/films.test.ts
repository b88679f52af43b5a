import { describe, expect, test } from 'vitest';
import { busyFilm, gestureFilm } from '../support/gesture-clips/film.ts';
import { score } from '../support/gesture-clips/score.ts';

// A small sample: it keeps what is found from getting worse unnoticed, and says little about how good it is.
describe('films of other people and places', () => {
  test('most gestures are found within a quarter of a second of their end', () => {
    const acts = Array.from({ length: 3 }, (_, i) => score(gestureFilm(2000 + i))).flatMap((result) => result.acts);
    expect(acts).toHaveLength(15);
    expect(acts.filter(({ found }) => found !== null).length).toBeGreaterThanOrEqual(0.8 * acts.length);
    for (const { found } of acts) {
      if (!found) continue;
      expect(found.gesture.confidence).toBeGreaterThan(0);
      expect(found.gesture.confidence).toBeLessThanOrEqual(1);
      expect(found.gesture.to).toBeGreaterThan(found.gesture.from);
      expect(found.gesture.why).toMatch(/\d/);
    }
  });
  test('forty seconds of work give hardly any', () => {
    const wrong = score(busyFilm(2100, 40)).wrong;
    expect(wrong.length).toBeLessThanOrEqual(1);
  });
});
