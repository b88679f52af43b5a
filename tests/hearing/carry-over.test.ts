import { describe, expect, it } from 'vitest';
import { CarryOver } from '../../src/hearing/carry-over.ts';
import type { AudioChunk } from '../../src/hearing/types.ts';

const chunk = (time: number): AudioChunk => ({ samples: new Float32Array(4), time });

/** What an engine is given, by time. It never answers where it dies of it. */
async function given(carryOver: CarryOver, dies = false): Promise<number[]> {
  const times: number[] = [];
  const giving = carryOver.giveTo(({ time }) => {
    times.push(time);
    return dies ? new Promise(() => undefined) : Promise.resolve();
  });
  if (!dies) await giving;
  return times;
}

describe('sound for the engine that comes', () => {
  it('is what the last one had not finished and what came since, in order, once', async () => {
    const carryOver = new CarryOver();
    carryOver.begin([chunk(1), chunk(2)]);
    carryOver.keep(chunk(3));
    expect(await given(carryOver)).toEqual([1, 2, 3]);
    expect(await given(carryOver)).toEqual([]);
  });

  it('is nothing where no engine has stopped, or none follows', async () => {
    const carryOver = new CarryOver();
    carryOver.keep(chunk(1));
    expect(await given(carryOver)).toEqual([]);
    carryOver.begin([chunk(1)]);
    carryOver.end();
    carryOver.keep(chunk(2));
    expect(await given(carryOver)).toEqual([]);
  });

  it('is not what was said before the ear was closed', async () => {
    const carryOver = new CarryOver();
    carryOver.begin([chunk(1)]);
    carryOver.drop();
    carryOver.keep(chunk(2));
    expect(await given(carryOver)).toEqual([2]);
  });

  it('reaches back as far as an utterance may', async () => {
    const carryOver = new CarryOver();
    carryOver.begin([]);
    for (let time = 0; time <= 60_000; time += 1_000) carryOver.keep(chunk(time));
    const times = await given(carryOver);
    expect([times[0], times.at(-1)]).toEqual([40_000, 60_000]);
  });

  it('that another engine dies of is let go: it would kill the next one too', async () => {
    const carryOver = new CarryOver();
    carryOver.begin([chunk(1)]);
    expect(await given(carryOver, true)).toEqual([1]);
    carryOver.begin([chunk(1)]);
    carryOver.keep(chunk(2));
    expect(await given(carryOver)).toEqual([2]);
    // What has been decoded is no suspect any more.
    carryOver.begin([chunk(3)]);
    expect(await given(carryOver)).toEqual([3]);
  });
});
