import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { remembered, SoundMemory } from '../../src/hearing/sound-memory.ts';
import type { AudioChunk, AudioSink, AudioSource } from '../../src/hearing/types.ts';

const RATE = 1000;
/** Sound whose sample at each millisecond is that millisecond: so each cut tells where it is from. */
const chunk = (from: number, length: number): AudioChunk => ({
  samples: Float32Array.from({ length }, (_, i) => (from + i) / 32768),
  time: from,
});
function memoryOf(seconds: number, ...chunks: readonly AudioChunk[]): SoundMemory {
  const memory = new SoundMemory(seconds);
  memory.start();
  for (const each of chunks) memory.take(each, RATE);
  return memory;
}
const range = (from: number, to: number): readonly number[] => Array.from({ length: to - from }, (_, i) => from + i);

describe('the memory of the microphone', () => {
  test('gives exactly the samples between two moments, however they came in', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 20 }),
        fc.nat(6000),
        fc.nat(6000),
        (lengths, one, other) => {
          let at = 0;
          const chunks = lengths.map((length) => chunk((at += length) - length, length));
          const [from, to] = [Math.min(one, other), Math.max(one, other)];
          const cut = memoryOf(10, ...chunks).cut(from, to);
          const expected = range(from, Math.min(to, at));
          if (from >= at || from === to) return cut === null;
          expect([...(cut?.samples ?? [])]).toEqual(expected);
          expect([cut?.from, cut?.rate]).toEqual([from, RATE]);
          // A length divided by a rate is not always a whole number again.
          expect(cut?.to).toBeCloseTo(from + expected.length, 6);
          return true;
        },
      ),
    );
  });
  test('never holds more than its seconds, and always the newest', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 60 }), (lengths) => {
        const memory = memoryOf(2);
        let at = 0;
        for (const length of lengths) {
          memory.take(chunk(at, length), RATE);
          at += length;
          expect(memory.length).toBeLessThanOrEqual(2 * RATE);
        }
        const cut = memory.cut(-Infinity, Infinity);
        if (cut) expect(cut.samples.at(-1)).toBe(at - 1);
      }),
    );
  });
  test('has no click where the estimate of the time corrects itself', () => {
    const late = { ...chunk(100, 100), time: 130 };
    expect([...(memoryOf(10, chunk(0, 100), late).cut(50, 180)?.samples ?? [])].slice(0, 60)).toEqual(range(50, 110));
  });
  test('has silence where the microphone was lost, so that times stay right', () => {
    const cut = memoryOf(10, chunk(0, 100), chunk(600, 100)).cut(50, 650);
    expect(cut?.samples).toHaveLength(600);
    expect([cut?.samples[49], cut?.samples[50], cut?.samples[549], cut?.samples[550]]).toEqual([99, 0, 0, 600]);
  });
  test('holds nothing before it is started, and nothing any more when it is stopped', () => {
    const memory = new SoundMemory(10);
    memory.take(chunk(0, 100), RATE);
    expect([memory.length, memory.cut(0, 100)]).toEqual([0, null]);
    memory.start();
    memory.take(chunk(100, 100), RATE);
    expect(memory.cut(0, 200)?.samples).toHaveLength(100);
    memory.stop();
    expect([memory.length, memory.cut(0, 200)]).toEqual([0, null]);
  });
  test('begins afresh with a microphone of another rate', () => {
    const memory = memoryOf(10, chunk(0, 100));
    memory.take(chunk(100, 100), 2 * RATE);
    expect(memory.length).toBe(100);
  });
  test('keeps loud sound within what a sample can hold', () => {
    const memory = new SoundMemory(1);
    memory.start();
    memory.take({ samples: Float32Array.of(2, -2, 0.5), time: 0 }, RATE);
    expect([...(memory.cut(0, 3)?.samples ?? [])]).toEqual([32767, -32768, 16384]);
  });
  test('keeps its own copy: whoever decodes a chunk may take it away', () => {
    const memory = new SoundMemory(1);
    memory.start();
    const given = chunk(0, 10);
    memory.take(given, RATE);
    structuredClone(given.samples, { transfer: [given.samples.buffer] });
    expect([...(memory.cut(0, 10)?.samples ?? [])]).toEqual(range(0, 10));
  });
});

describe('a source that is remembered', () => {
  test('gives everything on, and the memory what it may take', async () => {
    const memory = memoryOf(10);
    const sinks: AudioSink[] = [];
    const source: AudioSource = {
      open: (given) => {
        sinks.push(given);
        return Promise.resolve({
          sampleRate: RATE,
          retry: () => Promise.resolve(),
          close: () => Promise.resolve(),
        });
      },
    };
    const passed: number[] = [];
    let mayTake = true;
    const opened = await remembered(source, memory, () => mayTake).open({
      chunk: ({ time }) => {
        passed.push(time);
        return Promise.resolve();
      },
      lost: () => undefined,
      recovered: () => undefined,
      end: () => Promise.resolve(),
    });
    const give = (each: AudioChunk): Promise<void> | undefined => sinks[0]?.chunk(each);
    await give(chunk(0, 100));
    mayTake = false;
    await give(chunk(100, 100));
    expect([opened.sampleRate, passed, memory.length]).toEqual([RATE, [0, 100], 100]);
  });
});
