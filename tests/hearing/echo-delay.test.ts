import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { echoDelay } from '../../src/hearing/echo-delay.ts';
import { speechLike, throughRoom } from './echo.ts';

const [LEAST, MOST, LENGTH] = [-800, 6_400, 11_200];

describe('the delay of an echo', () => {
  const all = speechLike(1.5, 16_000, 3);

  it('is found to a quarter of a millisecond, wherever it lies', () => {
    fc.assert(
      fc.property(fc.integer({ min: LEAST, max: MOST - 600 }), (delay) => {
        const late = throughRoom(all, Math.max(0, delay));
        // What is heard begins `MOST` samples after what is read of what was played.
        const heard = late.slice(MOST - Math.min(0, delay), MOST - Math.min(0, delay) + LENGTH);
        const found = echoDelay(heard, all.slice(0, LENGTH + MOST - LEAST), LEAST, MOST);
        expect(Math.abs((found ?? Infinity) - delay)).toBeLessThanOrEqual(4);
      }),
      { numRuns: 15 },
    );
  });

  it('is none where something else is heard', () => {
    expect(echoDelay(speechLike(0.7, 16_000, 9), all, LEAST, MOST)).toBeNull();
    expect(echoDelay(new Float32Array(LENGTH), all, LEAST, MOST)).toBeNull();
  });
});
