/** A live session on a bench: its disk, its clock and its voice are in the hands of the test. */
import { isDeepStrictEqual } from 'node:util';
import { createEffect, createRoot } from 'solid-js';
import { onTestFinished, vi } from 'vitest';
import { typedWords } from '../../src/language/typed.ts';
import type { Entry } from '../../src/record/entry.ts';
import { readSessionRecord, type SessionRecord } from '../../src/record/session-record.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { type SessionState } from '../../src/session/state.ts';
import type { Heeded } from '../../src/ui/heeded.ts';
import { createLiveSession, type Fittings, type LiveSession } from '../../src/ui/live-session.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { recordOf } from '../record/sealed.ts';
import { step } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';

/** Stops the clock; only `pass` moves it. */
export const stopClock = (): void => void vi.useFakeTimers({ toFake: ['performance', 'Date'] });
export const pass = (ms: number): void => void vi.advanceTimersByTime(ms);
export const settle = (): void => pass(SETTLE);
/** Lets everything run that waits for nothing. */
export const idle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Three bolts between two steps, a warning, and a check that ends it. */
const [fit, tighten, look] = smallProcedure.steps;
export const job = {
  ...smallProcedure,
  steps: [
    fit,
    { ...look, id: 'lift', hazards: [{ signal: 'warning', consequence: 'person', text: 'It is heavy.' }] },
    tighten,
    step('count', 'check', {
      outcomes: [
        { id: 'affirm', text: 'All there.', then: 'go on' },
        { id: 'negative', text: 'Find it.', then: 'stay' },
      ],
    }),
  ],
};

/** One write that was asked for and is under way until it is settled here. */
interface Write {
  readonly entries: readonly Entry[];
  settle(): void;
  fail(error: Error): void;
}

/** A record book that writes when it is told to. */
export class HeldBook {
  readonly asked: Write[] = [];
  #taken = 0;
  #wake = (): void => undefined;

  append(entries: readonly Entry[]): Promise<void> {
    return new Promise((resolve, reject) => {
      this.asked.push({ entries, settle: resolve, fail: reject });
      this.#wake();
    });
  }

  /** The next write, as soon as it is asked for. */
  async next(): Promise<Write> {
    while (this.asked.length === this.#taken) await new Promise<void>((resolve) => (this.#wake = resolve));
    const write = this.asked[this.#taken++];
    if (!write) throw new Error('Nothing was asked for.');
    return write;
  }
}

/** A record book on a good disk. */
export class GoodBook {
  readonly appends: (readonly Entry[])[] = [];
  append(entries: readonly Entry[]): Promise<void> {
    this.appends.push(entries);
    return Promise.resolve();
  }
}

export interface Bench {
  readonly live: LiveSession;
  readonly kept: SessionRecord;
  /** What is shown, sounds and is said, in order. */
  readonly trace: string[];
  /** The words that were said since this was asked last. */
  readonly said: () => string;
}

/** A session that was just opened and is looked at, some time after it came up. */
export async function open(
  book: Fittings['book'],
  fittings: Partial<Fittings> = {},
  procedure: unknown = job,
): Promise<Bench> {
  const read = await readSessionRecord('session', await recordOf(procedure, []));
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  const kept = read.record;
  const trace: string[] = [];
  let said: string[] = [];
  const say = (texts: readonly string[]): Promise<boolean> => {
    trace.push('said');
    said.push(...texts);
    return Promise.resolve(true);
  };
  const live = createRoot((dispose) => {
    onTestFinished(dispose);
    const live = createLiveSession(kept, { book, say, tone: (kind) => trace.push(`tone: ${kind}`), ...fittings });
    // What is listed and where the work stands are one thing: nobody sees one of them without the other.
    createEffect(() => {
      const isWhole = isDeepStrictEqual(live.state(), folded(kept, live.entries()));
      trace.push(`shown: ${isWhole ? live.entries().length : 'torn'}`);
    });
    return live;
  });
  trace.length = 0;
  settle();
  return {
    live,
    kept,
    trace,
    said: () => {
      const words = said.join(' ');
      said = [];
      return words;
    },
  };
}

export const folded = ({ procedure, people }: SessionRecord, entries: readonly Entry[]): SessionState =>
  entries.reduce<SessionState>(fold, begin(procedure, people));

export const typed = (line: string): Heeded => ({ words: typedWords(line).map((word) => ({ word, confidence: 1 })) });
export const spoken = (text: string, from: number, confidence = 0.97): Heeded => ({
  words: text.split(' ').map((word) => ({ word, confidence })),
  spoken: { from, to: from + 400 },
});
export const kinds = (entries: readonly Entry[] | undefined): readonly string[] =>
  (entries ?? []).map(({ body }) => body.kind);

/** What is said where a write fails, and to all that comes after it. */
export const NOT_LOGGED = 'That is not logged: the record cannot be written. Stop, and load the page again.';
export const NOTHING_LOGGED = 'Nothing is logged any more. Stop, and load the page again.';
