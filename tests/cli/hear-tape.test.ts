import { afterEach, describe, expect, it, vi } from 'vitest';
import { Tape } from '../../src/cli/hear/tape.ts';
import { powerOf } from '../../src/hearing/level.ts';
import type { AudioChunk, AudioSink } from '../../src/hearing/types.ts';

const RATE = 16_000;
const LEAD_S = 0.4;
const CHUNK_S = 2048 / 48_000;

/** An ear that takes this long for each chunk, on a clock that only it moves; it notes what it gets. */
function earOf(tape: Tape, takesMs: (chunk: number) => number = () => 0) {
  let clock = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => clock);
  const chunks: (AudioChunk & { readonly decided: number; readonly place: number })[] = [];
  let ends = 0;
  const sink: AudioSink = {
    chunk: (chunk) => {
      clock += takesMs(chunks.length);
      chunks.push({ ...chunk, decided: tape.now(), place: tape.placeOf(chunk.time) });
      return Promise.resolve();
    },
    end: () => Promise.resolve(void ends++),
    lost: () => undefined,
    recovered: () => undefined,
  };
  void tape.open(sink);
  return { chunks, ends: () => ends };
}

const recording = Float32Array.from({ length: RATE }, (_, i) => 0.5 + i / (4 * RATE));
const never = (): boolean => false;

afterEach(() => vi.restoreAllMocks());

describe('a tape', () => {
  it('plays a recording whole and in order, in a quiet room that is never the zeros of a dead device', async () => {
    const tape = new Tape(RATE);
    const { chunks, ends } = earOf(tape);
    await tape.play(recording, never);
    const played = Float32Array.from(chunks.flatMap(({ samples }) => [...samples]));
    const lead = LEAD_S * RATE;
    const room = played.map((sample, i) => sample - (recording[i - lead] ?? 0));
    const quiet = [...played.subarray(1, lead), ...played.subarray(lead + RATE)];
    // Under the recording as around it.
    expect(Math.max(...room.map(Math.abs))).toBeLessThan(1e-3);
    for (const part of [quiet, room.subarray(lead, lead + RATE)])
      expect(powerOf(Float32Array.from(part))).toBeGreaterThan(1e-9);
    expect(Math.max(...quiet.map(Math.abs))).toBeLessThan(1e-3);
    expect(quiet.every((sample) => sample !== 0)).toBe(true);
    expect(quiet.length / RATE).toBeGreaterThan(LEAD_S + 1.5 - 0.001);
    expect(ends()).toBe(1);
  });

  it('goes on with quiet while speech is undecided, but not for ever', async () => {
    const tape = new Tape(RATE);
    const { chunks, ends } = earOf(tape);
    await tape.play(recording, () => true);
    const seconds = chunks.reduce((sum, { samples }) => sum + samples.length, 0) / RATE;
    expect(seconds).toBeGreaterThan(LEAD_S + 1 + 4 - 0.001);
    expect(seconds).toBeLessThan(LEAD_S + 1 + 4 + CHUNK_S + 0.001);
    expect(ends()).toBe(1);
  });

  it('tells when something would have happened: not before its chunk was spoken, and after the time that decoding took', async () => {
    const tape = new Tape(RATE);
    const { chunks } = earOf(tape, () => 20);
    await tape.play(recording, never);
    chunks.forEach(({ decided }, i) => expect(decided).toBeCloseTo((i + 1) * CHUNK_S - LEAD_S + 0.02, 2));
  });

  it('has a chunk wait for the one ahead where decoding is slower than speech', async () => {
    const tape = new Tape(RATE);
    const { chunks } = earOf(tape, () => 200);
    await tape.play(recording, never);
    chunks.forEach(({ decided }, i) => expect(decided).toBeCloseTo(CHUNK_S - LEAD_S + 0.2 * (i + 1), 2));
  });

  it('plays one recording after another on one time, and gives places in the one that plays', async () => {
    const tape = new Tape(RATE);
    const { chunks } = earOf(tape);
    await tape.play(recording, never);
    const first = chunks.length;
    await tape.play(recording, never);
    const times = chunks.map(({ time }) => time);
    for (const [i, time] of times.entries())
      if (i > 0) expect(time - (times[i - 1] ?? NaN)).toBeCloseTo(CHUNK_S * 1000, 1);
    expect(chunks.length).toBe(2 * first);
    for (const begin of [0, first]) expect(chunks[begin]?.place).toBeCloseTo(-LEAD_S, 3);
  });

  it('plays into no ear before one listens', async () => {
    await expect(new Tape(RATE).play(recording, never)).rejects.toThrow('before that listens');
  });
});
