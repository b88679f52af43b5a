/** Holds the program and the model together after a word: what stands, what is called, and what was said. */
import { expect } from 'vitest';
import { currentCall, pendingReading, type Reading, type SessionState } from '../../../src/session/state.ts';
import { awaitsWitness } from '../../../src/session/witness.ts';
import { workView } from '../../../src/ui/view.ts';
import { readBackIn, tells, valuesToldIn } from './ears.ts';
import { calledIn, echoAfter, isKept, pending, stageOf, type Model, type Stage, type Taken } from './model.ts';
import type { Word } from './words.ts';

/** What can be seen of either, in the same words. */
interface Seen {
  readonly place: string;
  readonly isStandingBy: boolean;
  readonly isBroken: boolean;
  readonly stage: Stage;
  readonly called: string | null;
  /** Every reading ever taken, with what became of it. */
  readonly taken: readonly string[];
}

const FATES: Readonly<Partial<Record<Reading['status'], Taken['fate']>>> = {
  captured: 'waiting',
  confirmed: 'committed',
};
const PLACES = ['before', 'at it', 'after'];

export function seenOf(model: Model): Seen {
  const call = calledIn(model);
  return {
    place: model.place,
    isStandingBy: model.isStandingBy,
    isBroken: model.isBroken,
    stage: stageOf(model),
    called: call && `stud ${call.stud}, round ${call.round}`,
    taken: model.taken.map(
      ({ call, text, witness, fate, isInside }) =>
        `stud ${call.stud}, round ${call.round}: ${text}, witness ${witness}, ${fate}, ${isInside ? 'in' : 'out'}`,
    ),
  };
}

export function seenIn(state: SessionState): Seen {
  const waiting = pendingReading(state);
  const call = currentCall(state);
  return {
    place: state.phase === 'closed' ? 'closed' : (PLACES[state.at] ?? `step ${state.at}`),
    isStandingBy: state.phase === 'standing by',
    isBroken: state.breakOf !== null,
    stage: waiting === null ? 'free' : awaitsWitness(state, waiting) ? 'captured' : 'echoed',
    called: call && `stud ${call.fastener}, round ${call.pass.index}`,
    taken: state.readings.map(
      ({ fastener, pass, reading, witnessed, status, verdict }) =>
        `stud ${fastener}, round ${pass}: ${reading.value}, witness ${witnessed?.reading.value ?? null}, ` +
        `${FATES[status] ?? status}, ${verdict === 'in' ? 'in' : 'out'}`,
    ),
  };
}

/** @param said what the program said to the word; nothing where it took no notice */
export function holdTogether(before: Model, word: Word, after: Model, state: SessionState, said: string): void {
  same(seenIn(state), seenOf(after), 'what stands');

  const [echo, waits] = [echoAfter(before, word, after), pending(after)];
  if (echo) {
    const { call, text: value, witness } = echo;
    same(readBackIn(said), { stud: call.stud, value, witness }, said);
  } else if (waits && word.word !== 'question') {
    same(tells(said, waits.text), false, said);
  }
  const isBlind = stageOf(after) === 'captured';
  if (isBlind || isKept(after)) {
    const { pending, doubt } = workView(state);
    same([pending, isBlind && doubt !== null], [null, false], 'what is shown');
  }
  for (const value of word.word === 'question' ? valuesToldIn(said) : [])
    same(
      after.taken.some(({ fate, text }) => fate === 'committed' && text === value),
      true,
      said,
    );
  same(/(^|[.?!] )Logged\./.test(said), after.taken.some(isNewlyCommitted(before)), said);
}

/** Cheaper than `expect`, which is asked only to say what differs. */
function same<Of>(real: Of, told: Of, what: string): void {
  if (JSON.stringify(real) !== JSON.stringify(told)) expect(real, what).toEqual(told);
}

const isNewlyCommitted =
  (before: Model) =>
  ({ fate }: Taken, at: number): boolean =>
    fate === 'committed' && before.taken[at]?.fate !== 'committed';
