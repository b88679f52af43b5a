/** Conversations of all kinds at one step, against the plain model of its closed loop. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pendingReading } from '../../../src/session/state.ts';
import { begunAt } from './begun.ts';
import { conversation } from './commands.ts';
import { spelled } from './ears.ts';
import { jobOf, MECHANIC, type Traits } from './job.ts';
import { expectLaws } from './laws.ts';
import { Loop } from './loop.ts';
import { spoken, SURENESS, type Told } from './meeting.ts';
import { TABLE } from './model.ts';
import { anyNumber } from './values.ts';

/** `BOTHHANDS_CONVERSATIONS=10000` for more. */
const CONVERSATIONS = Number(process.env['BOTHHANDS_CONVERSATIONS'] ?? 4000);

const traits: fc.Arbitrary<Traits> = fc.record({
  confirm: fc.constantFrom('each', 'by going on', 'witness each'),
  running: fc.boolean(),
  adapter: fc.boolean(),
  tool: fc.constantFrom('indicating', 'setting'),
  studs: fc.constantFrom(3, 10),
  second: fc.oneof(
    { weight: 9, arbitrary: fc.constant('Bo Jones') },
    { weight: 1, arbitrary: fc.constantFrom(null, MECHANIC, ` ${MECHANIC.toLowerCase()} `) },
  ),
  torques: fc.constant('usual'),
});
/** What part of the step is behind: none, all but the end of it, all, or any. */
const way = fc.oneof(
  fc.constantFrom(0, 0.67, 0.9, 1),
  fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10),
);
/** A share of the conversations is sealed into a record and read back from it. */
const isSealed = fc.nat(9).map((tenth) => tenth === 0);

describe('whatever is said, misheard or missed, and however often the page is loaded again', () => {
  test('the loop does what its model does, and its record keeps the laws', async () => {
    const changed = new Set<string>();
    await fc.assert(
      fc.asyncProperty(traits, way, isSealed, conversation, async (traits, way, isSealed, commands) => {
        const job = await jobOf(traits);
        const { loop, model } = await begunAt(job, isSealed, Math.round(way * job.rules.calls.length));
        const told: Told = { now: model, meant: new Map(), changed };
        await fc.asyncModelRun(() => ({ model: told, real: loop }), commands);
        expectLaws(loop);
        for (const [at, meant] of told.meant) {
          const { fate, text } = told.now.taken[at] ?? {};
          if (fate === 'committed' && text !== meant)
            expect(text, 'whoever listens has no slip in the record').toBe(meant);
        }
      }),
      { numRuns: CONVERSATIONS },
    );
    const rows = Object.entries(TABLE).flatMap(([stage, row]) => Object.keys(row).map((word) => `${stage}: ${word}`));
    expect([...changed], 'every row of the model comes into play').toEqual(expect.arrayContaining(rows));
  });
});

describe('the same words', () => {
  const word = fc.constantFrom('affirm', 'negative', 'disregard', 'next', 'say again', 'stand by', 'continue');
  const lead = fc.constantFrom('', '', 'correction ', 'witness ');
  /** A value in whole words, without a stud: it is of whichever is called. `same` is what the witness of a good job reads. */
  const line = fc.oneof(
    { weight: 2, arbitrary: word },
    { weight: 3, arbitrary: fc.tuple(lead, anyNumber).map(([lead, value]) => `${lead}it's ${spelled(value)}`) },
    { weight: 1, arbitrary: fc.constantFrom('same', 'silence', 'reload') },
  );

  test('are taken as the same values, whatever the target and its window', () =>
    fc.assert(
      fc.asyncProperty(
        traits,
        fc.constantFrom('off centre', 'elsewhere'),
        fc.array(line, { maxLength: 30, size: 'max' }),
        async (some, torques, lines) => {
          // A ring that no conversation comes to the end of, and a second person, so that both sessions come as far.
          const same = { ...some, studs: 40, second: 'Bo Jones' } as const;
          const here = await Loop.open(await jobOf(same), false);
          const there = await Loop.open(await jobOf({ ...same, torques }), false);
          for (const line of lines) {
            const waits = pendingReading(here.state)?.reading.value ?? '24.5';
            for (const loop of [here, there]) {
              if (line === 'reload') await loop.reload();
              else if (line === 'silence') await loop.act({ kind: line }, 'program');
              else await loop.hear(spoken(line === 'same' ? `witness it's ${spelled(waits)}` : line, SURENESS.sure));
            }
          }
          const valuesOf = ({ state }: Loop): readonly string[] => state.readings.map(({ reading }) => reading.value);
          expect(valuesOf(there)).toEqual(valuesOf(here));
        },
      ),
      { numRuns: 1000 },
    ));
});
