/** What must hold of any record of the loop, whatever the model says: read from the events and from what was spoken. */
import { expect } from 'vitest';
import type { EventBody } from '../../../src/session/event.ts';
import { readBackIn, tells } from './ears.ts';
import type { Loop, Turn } from './loop.ts';
import { torqueOf } from './rules.ts';

type Captured = Extract<EventBody, { kind: 'reading captured' }>;
type Witnessed = Extract<EventBody, { kind: 'witnessed' }>;
interface Placed<Body> {
  readonly body: Body;
  readonly turn: number;
}

/** @throws where a law is broken, with the law */
export function expectLaws({ turns, state, job: { people, rules } }: Loop): void {
  const captured = new Map<number, Placed<Captured>>();
  const witnessed = new Map<number, Placed<Witnessed>>();
  const confirmed = new Set<number>();

  for (const [turn, { meaning, events }] of turns.entries())
    for (const { seq, body } of events) {
      if (body.kind === 'reading captured') {
        captured.set(seq, { body, turn });
        if ('reading' in meaning)
          holds(body.reading.value === meaning.reading.value, 'a value is taken exactly as it was understood');
      }
      if (body.kind === 'witnessed') witnessed.set(body.of, { body, turn });
      if (body.kind !== 'reading confirmed') continue;
      holds(!confirmed.has(body.of), 'no reading is confirmed twice');
      confirmed.add(body.of);
      const reading = captured.get(body.of);
      if (!reading) throw new Error('What was not taken is confirmed.');
      holds(
        turns.slice(reading.turn, turn).some((earlier) => readsBack(earlier, reading.body)),
        'a reading is read back before it is confirmed',
      );
      holds(
        isConfirming(meaning, reading.body, rules.confirm),
        'only its own word confirms, or going on where that may',
      );
      if (rules.confirm === 'witness each') expectWitness(reading, witnessed.get(body.of));
    }

  function expectWitness(reading: Placed<Captured>, witness: Placed<Witnessed> | undefined): void {
    if (!witness) throw new Error('A reading is confirmed without its witness.');
    const { fastener, pass, reading: first } = reading.body;
    const mark = rules.calls.find(({ stud, round }) => stud === fastener && round === pass)?.mark ?? 0;
    const apart = Math.abs(torqueOf(first.value) - torqueOf(witness.body.reading.value));
    holds(apart <= mark, 'none is confirmed against its witness');
    holds(witness.body.person === people.second, 'the witness is the second person');
    const blind = turns.slice(reading.turn, witness.turn);
    holds(
      !blind.some(({ said }) => tells(said, first.value)),
      'nothing is said of the first value before the witness has read',
    );
  }

  const kept = state.readings.map(({ seq, reading }) => [seq, reading.value]);
  expect(kept, 'nothing is erased').toEqual([...captured].map(([seq, { body }]) => [seq, body.reading.value]));
  const counting = state.readings
    .filter(({ status, verdict }) => status === 'confirmed' && verdict === 'in')
    .map(({ pass, fastener }) => `${pass}/${fastener}`);
  holds(new Set(counting).size === counting.length, 'at most one value inside its window counts for a call');
}

/** Cheaper than `expect`, which is asked only to say what does not hold. */
function holds(fact: boolean, law: string): void {
  if (!fact) expect(fact, law).toBe(true);
}

function readsBack({ said }: Turn, { fastener, reading }: Captured): boolean {
  const heard = readBackIn(said);
  return heard?.stud === fastener && heard.value === reading.value;
}

/** Silence is in none of these. */
function isConfirming({ kind }: Turn['meaning'], { verdict, doubts = [] }: Captured, confirm: string): boolean {
  if (doubts[0] === 'off the scale') return false;
  if (kind === 'affirm') return true;
  const goesOn = kind === 'next' || kind === 'reading' || kind === 'click';
  return goesOn && confirm === 'by going on' && verdict === 'in' && doubts.length === 0;
}
