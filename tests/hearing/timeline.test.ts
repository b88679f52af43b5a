import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Timeline } from '../../src/hearing/timeline.ts';

const chunks = fc.array(
  fc.record({ samples: fc.integer({ min: 1, max: 5_000 }), gap: fc.integer({ min: 0, max: 60_000 }) }),
  { minLength: 1, maxLength: 30 },
);
const rates = fc.constantFrom(8_000, 16_000, 44_100, 48_000);

/** Feeds chunks with pauses before them that the recogniser never gets; tells when each began. */
function fed(timeline: Timeline, rate: number, list: readonly { samples: number; gap: number }[]) {
  let [position, time] = [0, 1_000];
  return list.map(({ samples, gap }) => {
    time += gap;
    timeline.append(samples, time);
    const chunk = { from: position / rate, time, seconds: samples / rate };
    position += samples;
    time += (samples / rate) * 1000;
    return chunk;
  });
}

test('every moment of the fed audio is placed where it was taken, whatever was left out in between', () => {
  fc.assert(
    fc.property(rates, chunks, fc.double({ min: 0, max: 0.999, noNaN: true }), (rate, list, part) => {
      const timeline = new Timeline(rate);
      for (const { from, time, seconds } of fed(timeline, rate, list)) {
        // Nearer to a boundary than a thousandth of a sample, either side of the pause is right.
        const inside = Math.max(part * seconds, 1e-3 / rate);
        expect(timeline.timeAt(from + inside)).toBeCloseTo(time + inside * 1000, 3);
      }
    }),
  );
});

test('forgetting what lies before leaves what comes after as it was', () => {
  fc.assert(
    fc.property(rates, chunks, fc.nat({ max: 29 }), (rate, list, pick) => {
      const [whole, short] = [new Timeline(rate), new Timeline(rate)];
      const all = fed(whole, rate, list);
      fed(short, rate, list);
      const chunk = all[pick % all.length];
      const middle = (chunk?.from ?? 0) + (chunk?.seconds ?? 0) / 2;
      short.forgetBefore(middle);
      for (const { from, seconds } of all.filter((one) => one.from + one.seconds / 2 >= middle)) {
        expect(short.timeAt(from + seconds / 2)).toBe(whole.timeAt(from + seconds / 2));
      }
    }),
  );
});

test('nothing fed: there is no time but zero', () => {
  expect(new Timeline(16_000).timeAt(1)).toBe(0);
});
