import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { verify, type Entry } from '../../src/record/entry.ts';
import type { Source } from '../../src/session/intent.ts';
import type { LiveSession } from '../../src/ui/live-session.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { meaning, openly } from '../session/anything.ts';
import { folded, idle, job, NOT_LOGGED, open, pass, stopClock, typed } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

describe('whatever comes in, and however the disk behaves', () => {
  const line = fc.constantFrom(
    'next',
    'affirm',
    'negative',
    'yes',
    'hand me the cloth',
    '12',
    '1 12.5',
    '3 9',
    'stand by',
  );
  const input = fc.oneof(
    fc.record({ by: fc.constantFrom<Source>('touch', 'key', 'program'), meaning }),
    // What takes the job on: without it, chance seldom gets far.
    fc.record({ by: fc.constant<Source>('touch'), meaning: fc.constant('openly' as const) }),
    fc.record({ by: fc.constant<Source>('key'), line }),
    fc.record({ by: fc.constant<Source>('voice'), line, ago: fc.nat(600) }),
  );
  type Input = typeof input extends fc.Arbitrary<infer Each> ? Each : never;
  const move = fc.record({
    input,
    waits: fc.constantFrom(true, true, false),
    after: fc.constantFrom(0, 100, SETTLE, 1000),
  });
  /** Each input leads to one write at most. */
  const MOST = 30;
  const disk = fc.oneof(
    { weight: 20, arbitrary: fc.constant('at once') },
    { weight: 10, arbitrary: fc.constant('slow') },
    { weight: 1, arbitrary: fc.constant('full') },
  );

  function meet(live: LiveSession, each: Input): Promise<void> {
    if ('meaning' in each) return live.act(each.meaning === 'openly' ? openly(live.state()) : each.meaning, each.by);
    const heeded = typed(each.line);
    const from = performance.now() - ('ago' in each ? each.ago : 0);
    return live.hear('ago' in each ? { ...heeded, spoken: { from, to: performance.now() } } : heeded, each.by);
  }

  test('what is listed is what is on disk, one write at a time, in a chain that is whole', () =>
    fc.assert(
      fc.asyncProperty(
        fc.nat(job.steps.length - 1),
        fc.array(move, { minLength: 1, maxLength: MOST, size: 'max' }),
        fc.array(disk, { minLength: MOST, maxLength: MOST }),
        async (from, moves, disks) => {
          const written: Entry[] = [];
          const [underWay, overlaps] = [new Set(), [] as Entry[]];
          let count = 0;
          let isFull = false;
          const append = async (entries: readonly Entry[]): Promise<void> => {
            if (underWay.size > 0 || isFull) overlaps.push(...entries);
            underWay.add(entries);
            const disk = disks[count++];
            if (disk === 'slow') await idle();
            underWay.delete(entries);
            isFull ||= disk === 'full';
            if (isFull) throw new Error('The disk is full.');
            written.push(...entries);
          };
          const { live, kept, trace, said } = await open({ append }, {}, { ...job, steps: job.steps.slice(from) });
          const all: Promise<void>[] = [];
          for (const { input, waits, after } of moves) {
            const met = meet(live, input);
            all.push(met);
            if (waits) await met;
            pass(after);
          }
          await Promise.all(all);
          expect([overlaps, trace.includes('shown: torn')]).toEqual([[], false]);
          expect(live.entries()).toEqual([...kept.entries, ...written]);
          expect(verify(live.entries())).toMatchObject({ kind: 'intact' });
          expect(live.state()).toEqual(folded(kept, live.entries()));
          expect(live.trouble() !== null).toBe(isFull);
          if (isFull) expect(said()).toContain(NOT_LOGGED);
        },
      ),
      { numRuns: 60 },
    ));
});
