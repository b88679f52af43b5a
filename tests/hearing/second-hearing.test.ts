import { describe, expect, it } from 'vitest';
import type { Engine, EngineQuestion } from '../../src/hearing/engine.ts';
import type { Reply } from '../../src/hearing/engine-reply.ts';
import { SecondHearing } from '../../src/hearing/second-hearing.ts';
import type { Word } from '../../src/hearing/types.ts';

const RATE = 16_000;
const CHUNK_MS = 100;

/** An engine that hears "two" at its final result, and notes how many chunks each result was of. */
function hearing() {
  const results: number[] = [];
  let chunks = 0;
  const engine = {
    newRecogniserId: () => 'free',
    wantWordTimes: () => undefined,
    ask: ({ action }: EngineQuestion): Promise<Reply> => {
      if (action === 'audioChunk') {
        chunks++;
        return Promise.resolve({ kind: 'partial', text: '' });
      }
      if (action !== 'retrieveFinalResult') return Promise.resolve({ kind: 'done' });
      results.push(chunks);
      chunks = 0;
      const words = [{ word: 'two', start: 0.1, end: 0.2, confidence: 1 }];
      return Promise.resolve({ kind: 'utterance', text: 'two', words });
    },
  };
  const second = new SecondHearing(engine as unknown as Engine, RATE);
  let time = 0;
  const keep = (count: number): void => {
    for (; count > 0; count--, time += CHUNK_MS)
      second.keep({ samples: new Float32Array((RATE * CHUNK_MS) / 1000), time });
  };
  /** Chunks that the engine has been given, and is not asked about yet. */
  return { second, keep, results, given: () => chunks };
}

const word = (start: number, end: number): readonly Word[] => [{ word: 'two', start, end, confidence: 1 }];

describe('the second hearing', () => {
  it('is of the words, with a little before and after them', async () => {
    const { second, keep, results } = hearing();
    keep(30);
    expect(await second.hear(word(1000, 1500))).toBe('two');
    expect(results).toEqual([11]);
  });
  it('that was begun as they were said has them when they are known, and is given nothing twice', async () => {
    const { second, keep, results, given } = hearing();
    keep(13);
    second.begin(1050);
    expect(given()).toBe(6);
    keep(4);
    expect(given()).toBe(10);
    expect(await second.hear(word(1000, 1500))).toBe('two');
    expect([results, second.isBegun]).toEqual([[10], false]);
  });
  it.each([
    ['long before the words', 10, 300, word(1000, 1500), 18],
    ['in the middle of them', 25, 2000, word(1000, 2400), 30],
    ['and goes on long after them', 10, 1000, word(1000, 1100), 25],
  ])('that was begun %s is dropped, and they are heard by themselves', async (_, kept, onset, words, until) => {
    const { second, keep, results } = hearing();
    keep(kept);
    second.begin(onset);
    keep(until - kept);
    expect(await second.hear(words)).toBe('two');
    expect(results).toHaveLength(2);
  });
  it('is not begun where the sound has gone on for long, nor again and again in noise', () => {
    const { second, keep, given } = hearing();
    keep(40);
    second.begin(500);
    expect([second.isBegun, given()]).toEqual([false, 0]);
    for (let time = 0; time < 100; time++) {
      keep(1);
      second.begin(500);
    }
    expect(given()).toBe(0);
  });
  it('that was begun for nothing ends when it is dropped, or has become too long', async () => {
    const { second, keep, results } = hearing();
    keep(5);
    second.begin(100);
    second.drop();
    expect([results, second.isBegun]).toEqual([[5], false]);
    second.begin(400);
    expect(second.isBegun).toBe(true);
    keep(130);
    expect(second.isBegun).toBe(false);
    await Promise.resolve();
    expect(results).toHaveLength(2);
  });
});
