import { describe, expect, test } from 'vitest';
import type { RememberedSound } from '../../src/hearing/sound-memory.ts';
import { soundHash } from '../../src/record/sounds.ts';
import { decodeWav } from '../../src/speaking/wav.ts';
import { createSoundKeeper, isAboutReading } from '../../src/ui/sound-keeper.ts';

const people = { mechanic: 'Mechanic', second: 'Second person' };

/** A keeper whose microphone gives a thousand samples a second, and what it cut and wrote. */
function bench(options: { readonly cut?: null; readonly full?: true; readonly room?: number } = {}) {
  const cuts: (readonly [number, number])[] = [];
  const written: { session: string; sha256: string; sound: Uint8Array<ArrayBuffer> }[] = [];
  const cut = (from: number, to: number): RememberedSound | null => {
    cuts.push([from, to]);
    return options.cut === null ? null : { samples: new Int16Array(to - from).fill(7), rate: 1000, from, to };
  };
  const keep = (session: string, sha256: string, sound: Uint8Array<ArrayBuffer>): Promise<void> => {
    if (options.full) return Promise.reject(new Error('The disk is full.'));
    written.push({ session, sha256, sound });
    return Promise.resolve();
  };
  const room = (): Promise<number | null> => Promise.resolve(options.room ?? null);
  return { cuts, written, keepSound: createSoundKeeper('session', people, { cut }, { keep }, room) };
}

describe('the sound around words', () => {
  test('is on disk under its hash when the record names it', async () => {
    const { written, keepSound } = bench();
    const sound = await keepSound({ from: 5000, to: 6000 }, 5000, people);
    const [first] = written;
    if (!first || !sound.kept) throw new Error('It was not kept.');
    expect(sound).toMatchObject({ sha256: await soundHash(first.sound), bytes: first.sound.length });
    expect(first).toMatchObject({ session: 'session', sha256: sound.sha256 });
    // Each of the two is rounded to a millisecond.
    expect(Math.abs(Date.parse(sound.to) - Date.parse(sound.from) - 2500)).toBeLessThanOrEqual(1);
    expect(decodeWav(first.sound).samples).toHaveLength(2500);
  });
  test('begins a second before a reading and ends half a second behind it', async () => {
    const { cuts, keepSound } = bench();
    await keepSound({ from: 5000, to: 6000 }, 5000, people);
    expect(cuts).toEqual([[4000, 6500]]);
  });
  test('of an answer begins with the read-back that it answers, and is at most eight seconds', async () => {
    const { cuts, keepSound } = bench();
    await keepSound({ from: 15_000, to: 15_500 }, 11_000, people);
    await keepSound({ from: 15_000, to: 15_500 }, 1000, people);
    expect(cuts).toEqual([
      [11_000, 16_000],
      [7500, 16_000],
    ]);
  });
  test('is not kept with somebody there who was not asked', async () => {
    const { written, keepSound } = bench();
    for (const newcomer of [
      { ...people, mechanic: 'Third person' },
      { ...people, second: 'Third person' },
    ])
      expect(await keepSound({ from: 5000, to: 6000 }, 5000, newcomer)).toEqual({
        kept: false,
        why: 'Third person was not asked whether sound may be kept.',
      });
    expect(written).toEqual([]);
  });
  test('leaves the last of the room to the entries: without them work stops', async () => {
    const [little, enough] = [bench({ room: 19 * 2 ** 20 }), bench({ room: 20 * 2 ** 20 })];
    expect(await little.keepSound({ from: 5000, to: 6000 }, 5000, people)).toEqual({
      kept: false,
      why: 'What room is left is kept for the record itself.',
    });
    expect(little.written).toEqual([]);
    expect(await enough.keepSound({ from: 5000, to: 6000 }, 5000, people)).toMatchObject({ kept: true });
  });
  test('that cannot be kept is said with the reason, and the work goes on', async () => {
    expect(await bench({ cut: null }).keepSound({ from: 5000, to: 6000 }, 5000, people)).toEqual({
      kept: false,
      why: 'The microphone gave no sound.',
    });
    expect(await bench({ full: true }).keepSound({ from: 5000, to: 6000 }, 5000, people)).toEqual({
      kept: false,
      why: 'It could not be written: The disk is full.',
    });
  });
});

test('only readings, the witness and the answers to them have their sound kept', () => {
  expect(
    isAboutReading([
      { kind: 'reading confirmed', of: 3 },
      { kind: 'step done', step: 'ring' },
    ]),
  ).toBe(true);
  expect(isAboutReading([{ kind: 'step done', step: 'ring' }])).toBe(false);
  expect(
    isAboutReading([{ kind: 'refused', meaning: { kind: 'affirm' }, reason: { code: 'nothing to confirm' } }]),
  ).toBe(false);
});
