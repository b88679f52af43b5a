/** The real loop: words are understood, decided on, written, folded and answered, in that order. */
import { announce } from '../../../src/language/announce.ts';
import { situationOf } from '../../../src/language/situation.ts';
import { understand, type HeardWord } from '../../../src/language/understand.ts';
import { seal, type Entry } from '../../../src/record/entry.ts';
import { readSessionRecord, stateAfter } from '../../../src/record/session-record.ts';
import { decide } from '../../../src/session/decide.ts';
import type { EventBody, SessionEvent } from '../../../src/session/event.ts';
import { begin, fold } from '../../../src/session/fold.ts';
import type { Heard, Instant, Meaning, Source } from '../../../src/session/intent.ts';
import { speakerOf } from '../../../src/session/people.ts';
import { beforeClosing, isClosing } from '../../../src/session/closing.ts';
import type { SessionState } from '../../../src/session/state.ts';
import { eventOf } from '../play.ts';
import type { Job } from './job.ts';

/** One input with all that came of it. */
export interface Turn {
  readonly meaning: Meaning;
  readonly events: readonly SessionEvent[];
  readonly said: string;
}

const SESSION = 'session';

export class Loop {
  state: SessionState;
  turns: readonly Turn[] = [];
  #events: readonly SessionEvent[] = [];
  #entries: readonly Entry[] = [];
  /** What passed without anything happening, in milliseconds. */
  #paused = 0;

  private constructor(
    readonly job: Job,
    /** Whether the record is sealed, and read back from its entries when the page is loaded again. */
    readonly isSealed: boolean,
  ) {
    this.state = begin(job.procedure, job.people);
  }

  /** A session that was opened and has come to the step that is talked through. */
  static async open(job: Job, isSealed: boolean): Promise<Loop> {
    const loop = new Loop(job, isSealed);
    await loop.#write([job.opened], { source: 'touch', person: job.people.mechanic, heard: null });
    await loop.act({ kind: 'next' }, 'touch');
    loop.turns = [];
    return loop;
  }

  /** The same session, to go on in another way. */
  copy(): Loop {
    const loop = new Loop(this.job, this.isSealed);
    loop.state = this.state;
    loop.turns = this.turns;
    loop.#events = this.#events;
    loop.#entries = this.#entries;
    loop.#paused = this.#paused;
    return loop;
  }

  /** @returns what was understood; null where it was nothing that may be said now */
  async hear(words: readonly HeardWord[]): Promise<Meaning | null> {
    const understanding = understand(words, situationOf(this.state));
    if (understanding.kind === 'nothing') return null;
    const text = words.map(({ word }) => word).join(' ');
    const heard = words.map(({ word, confidence }) => ({ word, confidence: confidence.toFixed(2) }));
    await this.act(understanding.meaning, 'voice', { text, words: heard });
    return understanding.meaning;
  }

  async act(meaning: Meaning, source: Source, heard: Heard | null = null): Promise<void> {
    const decision = decide(this.state, { meaning, at: this.#now() });
    const bodies: readonly EventBody[] =
      decision.kind === 'accepted' ? decision.events : [{ kind: 'refused', meaning, reason: decision.reason }];
    // A closed record stays as it is.
    const events =
      this.state.phase === 'closed'
        ? []
        : await this.#write(bodies, { source, person: speakerOf(this.state, meaning), heard });
    this.turns = [...this.turns, { meaning, events, said: announce(this.state, bodies).join(' ') }];
    await this.#decideAboutRest();
  }

  /** What is out of the ordinary at the end is decided about at once, by touch: the talk is over then. */
  async #decideAboutRest(): Promise<void> {
    for (let left = restOf(this.state); left?.kind === 'disposition'; left = restOf(this.state)) {
      const meaning = { kind: 'dispose', of: left.point.seq, what: 'deferred', by: 'Ada Lee', note: '' } as const;
      const decision = decide(this.state, { meaning, at: this.#now() });
      if (decision.kind === 'refused') throw new Error(`A decision is refused: ${decision.reason.code}.`);
      await this.#write(decision.events, { source: 'touch', person: 'Ada Lee', heard: null });
    }
  }

  #now(): Instant {
    return later(eventOf({ kind: 'repeat asked' }, this.#events.length), this.#paused).at;
  }

  /** Time passes, and nothing happens. */
  pause(minutes: number): void {
    this.#paused += minutes * 60_000;
  }

  /** The page is loaded again: all that is left is the record. */
  async reload(): Promise<void> {
    if (this.isSealed) {
      const read = await readSessionRecord(SESSION, copy(this.#entries));
      if (read.kind === 'unreadable') throw new Error(read.verification.why);
      const { verification } = read.record;
      if (verification.kind === 'broken') throw new Error(`Entry ${verification.at}: ${verification.why}`);
      this.state = stateAfter(read.record, read.record.entries.length);
    } else {
      const { procedure, people } = this.job;
      this.state = copy(this.#events).reduce(fold, begin(procedure, people));
    }
    await this.act({ kind: 'reopen' }, 'program');
  }

  async #write(
    bodies: readonly EventBody[],
    by: Pick<SessionEvent, 'source' | 'person' | 'heard'>,
  ): Promise<readonly SessionEvent[]> {
    const events = bodies.map((body, i) => later({ ...eventOf(body, this.#events.length + i), ...by }, this.#paused));
    if (this.isSealed)
      for (const event of events)
        this.#entries = [...this.#entries, await seal(SESSION, event, this.#entries.at(-1) ?? null)];
    this.#events = [...this.#events, ...events];
    this.state = events.reduce(fold, this.state);
    return events;
  }
}

const restOf = (state: SessionState) => (isClosing(state) && state.phase === 'working' ? beforeClosing(state) : null);

const later = (event: SessionEvent, by: number): SessionEvent => ({
  ...event,
  at: { utc: new Date(Date.parse(event.at.utc) + by).toISOString(), monotonic: event.at.monotonic + by },
});

const copy = <Kept>(kept: Kept): Kept => JSON.parse(JSON.stringify(kept)) as Kept;
