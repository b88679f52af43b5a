/** Sessions of any kind, each from its opening on: they come some way, and then meet anything at all. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { goOpenly, meaning, openly } from '../session/anything.ts';
import { tell, type Play } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { opening } from './sealed.ts';

const demo = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), 'utf8'));

const small = await opening(smallProcedure);
const openings: readonly Play[] = [
  small,
  await opening(demo('ropeway-oil-cooler')),
  await opening(demo('fire-boat-pump-cover')),
];

const played = (begun: fc.Arbitrary<Play>): fc.Arbitrary<Play> =>
  fc
    .record({ begun, way: fc.nat(120), moves: fc.array(fc.option(meaning), { maxLength: 20, size: 'max' }) })
    .map(({ begun, way, moves }) =>
      // What comes after the end is answered, not written.
      moves.reduce(
        (play, move) => (play.state.phase === 'closed' ? play : tell(play, move ?? openly(play.state))),
        goOpenly(begun, way),
      ),
    );

/** A session of any procedure, of up to some hundred entries. */
export const anySession: fc.Arbitrary<Play> = played(fc.constantFrom(...openings));

/** A short one, for what is tried ten thousand times. */
export const shortSession: fc.Arbitrary<Play> = played(fc.constant(small));
