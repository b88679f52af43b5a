import { batch, createSignal, type Accessor } from 'solid-js';
import { announce } from '../language/announce.ts';
import { answerWanted } from '../language/decoys.ts';
import type { Provisional } from '../language/provisional.ts';
import { situationOf, type Situation } from '../language/situation.ts';
import type { Sureness } from '../language/sureness.ts';
import type { Understanding } from '../language/understand.ts';
import type { Entry } from '../record/entry.ts';
import type { Call } from '../session/calls.ts';
import { isBack } from '../session/break.ts';
import { decide, type Decision } from '../session/decide.ts';
import type { EventBody, People } from '../session/event.ts';
import type { Heard, Meaning, Source } from '../session/intent.ts';
import { speakerOf } from '../session/people.ts';
import { currentCall, type SessionState } from '../session/state.ts';
import type { ToneKind } from '../speaking/types.ts';
import type { RecordBook } from '../storage/record-book.ts';
import { atOnce } from '../words/at-once.ts';
import { prompting } from '../words/prompting.ts';
import { sessionStopped } from '../words/session-stopped.ts';
import { now } from './clock.ts';
import { toneFor } from './earcons.ts';
import { createEarlyWords } from './early-words.ts';
import { createHazardWatch } from './hazard-watch.ts';
import { createHeardNow, type HeardLine } from './heard-line.ts';
import { heardAs, seenAs, textOf, type Heeded, type SeenGesture } from './heeded.ts';
import { createRunningRecord } from './running-record.ts';
import type { KeptSession } from './session-file.ts';
import { messageOf } from './message.ts';
import { LastTaken } from './last-taken.ts';
import type { Act } from './once.ts';
import { SETTLE } from './settle.ts';
import { isAboutReading, type KeepSound, type Spoken } from './sound-keeper.ts';

/** A session being worked: one loop from input to record to answer. */
export interface LiveSession {
  readonly state: Accessor<SessionState>;
  readonly situation: Accessor<Situation>;
  readonly entries: Accessor<readonly Entry[]>;
  readonly heard: Accessor<HeardLine | null>;
  /** What is being said comes to this, if it is all; null where nothing is shown before it counts. */
  readonly provisional: Accessor<Provisional | null>;
  /** How many utterances were no phrase of their moment. */
  readonly ignored: Accessor<number>;
  /** Why nothing can be written any more, or null. */
  readonly trouble: Accessor<string | null>;
  /** Which signal sounded last, or would where signals are off; null before the first. */
  readonly signal: Accessor<ToneKind | null>;
  /**
   * Carries out a meaning: decides, writes, and only then shows and says it. Calls wait for one another.
   * @param began when its touch or press began, in milliseconds on the clock of the page; now, where it has no length
   * @param isAtScreen whether it was chosen by its name on the screen: then what warns there was before those eyes
   */
  act(meaning: Meaning, source: Source, began?: number, isAtScreen?: boolean): Promise<void>;
  /** Takes an utterance. Speech that is no phrase here is counted and shown, nothing more. */
  hear(utterance: Heeded, source: Source): Promise<void>;
  /** What an utterance would mean in a situation, heard as surely as these people are to be heard. */
  understoodIn(situation: Situation, utterance: Heeded): Understanding;
  /** Shows what an utterance would come to that may still go on. Nothing is written or said. Null takes it back. */
  showProvisional(utterance: Heeded | null): void;
  /**
   * Carries out what a gesture before the camera means. One that began before that was shown which it would answer does
   * nothing, nor does one that goes with a word that has counted.
   */
  see(gesture: SeenGesture, meaning: Meaning): Promise<void>;
  /**
   * Whether a gesture of this time is a no to a spoken “affirm” of the same moment, on which nothing has followed:
   * then {@link see} takes that back.
   */
  isAgainstWord(gesture: Pick<SeenGesture, 'from' | 'to'>): boolean;
  /** Shows what was seen and is not taken: it means nothing here, or came too early. */
  notTaken(text: string, why: Exclude<HeardLine['taken'], 'taken' | 'counted already'>): void;
  /** Shows that an input came before what it answers was said to its end. It does nothing. */
  tooEarly(meaning: Meaning): void;
  /** Says what this session is and what is wanted first, without writing anything. */
  welcome(): void;
}

export interface Fittings {
  readonly book: Pick<RecordBook, 'append'>;
  /**
   * Gives whether all of it was said in words, to its end.
   * @param said told of each text that was
   */
  readonly say: (texts: readonly string[], said: (text: string) => void) => Promise<boolean>;
  readonly tone: (kind: ToneKind) => void;
  /** Cuts in on everything, also on news of the devices that were to come after. */
  readonly callOut?: Fittings['say'];
  /** Thumbprint of the key of this device, as it goes into each entry. */
  readonly device?: string;
  /** Absent where it was not agreed that sound is kept. */
  readonly keepSound?: KeepSound;
  /** How surely these people are to be heard; absent: as anybody. */
  readonly sureness?: (people: People) => Sureness;
  /** Told once the record is closed and on disk, before that is said. Gives what is to be said besides. It never throws. */
  readonly onClosed?: (entries: readonly Entry[]) => Promise<readonly string[]>;
}

const BACK: Decision = { kind: 'accepted', events: [{ kind: 'break noticed' }] };

export function createLiveSession(
  kept: KeptSession,
  { book, say: speak, callOut = speak, tone, device, keepSound, onClosed, sureness }: Fittings,
): LiveSession {
  const record = createRunningRecord(kept, book, device);
  const { entries, state } = record;
  const heardNow = createHeardNow();
  const [trouble, setTrouble] = createSignal<string | null>(null);
  const [signal, setSignal] = createSignal<ToneKind | null>(null);
  let turn: Promise<void> = Promise.resolve();
  let changedAt = performance.now();
  /** When the fastener that is called was called. */
  let calledAt = -Infinity;
  const last = new LastTaken(entries);
  const hazards = createHazardWatch();
  hazards.shows(state());
  const early = createEarlyWords({
    state,
    changedAt: () => changedAt,
    calledAt: () => calledAt,
    isStopped: () => trouble() !== null,
    sureness,
  });

  async function carryOut(
    meaning: Meaning,
    source: Source,
    words: Heard | null,
    spoken: Spoken | null = null,
  ): Promise<void> {
    if (trouble() !== null) {
      say([sessionStopped.nothingLogged]);
      return;
    }
    // What comes first after a long break may answer a question of long ago: it is asked anew.
    const isAfterBreak = source !== 'program' && isBack(state(), now().utc);
    const decision = isAfterBreak ? BACK : decide(state(), { meaning, at: now() });
    // The clock of the program ran on: nothing happens.
    if (decision.kind === 'accepted' && decision.events.length === 0) return;
    const events: readonly EventBody[] =
      decision.kind === 'accepted' ? decision.events : [{ kind: 'refused', meaning, reason: decision.reason }];
    // A closed record stays as it is: what comes after the end is answered, not written.
    let besides: readonly string[] = [];
    if (state().phase !== 'closed') {
      let written: readonly Entry[];
      try {
        const heard = words && (await withSound(words, spoken, events));
        written = await record.write(events, { source, person: speakerOf(state(), meaning), heard });
      } catch (error) {
        stop(sessionStopped.notWritten(messageOf(error)), sessionStopped.sayNotWritten);
        return;
      }
      show(written);
      if (state().phase === 'closed') besides = (await onClosed?.(entries())) ?? [];
    }
    give(toneFor(state(), events));
    const isUrgent = events.some(({ kind }) => kind === 'help called');
    say([...announce(state(), events), ...besides], isUrgent ? callOut : speak);
  }

  function say(texts: readonly string[], by = speak): void {
    hazards.says(texts, by(texts, hazards.said));
  }

  function show(written: readonly Entry[]): void {
    const before = currentCall(state());
    batch(() => {
      early.show(null);
      record.show(written);
      hazards.shows(state());
      heardNow.forgetAnswer();
    });
    changedAt = performance.now();
    if (!isSameCall(before, currentCall(state()))) calledAt = changedAt;
  }

  /** What was heard, with its sound on disk before the entry that names it. */
  async function withSound(heard: Heard, spoken: Spoken | null, events: readonly EventBody[]): Promise<Heard> {
    if (!keepSound || !spoken || !isAboutReading(events)) return heard;
    // An answer is heard with the read-back that it answers; a reading by itself.
    const since = events.some(({ kind }) => kind === 'reading captured') ? spoken.from : changedAt;
    return { ...heard, sound: await keepSound(spoken, since, state().people) };
  }

  /** Answers what is written nowhere. */
  function answer(text: string, taken: HeardLine['taken'], answered: string): void {
    heardNow.show({ text, taken, answered });
    say([answered]);
  }

  /** Whoever does not hear it sees it. */
  function give(kind: ToneKind): void {
    setSignal(kind);
    tone(kind);
  }

  /** From here on nothing is written. The screen comes first: it needs no voice that works. */
  function stop(shown: string, said: string): void {
    setTrouble(shown);
    early.show(null);
    give('stop');
    say([said]);
  }

  /** One input after another. A fault in one is shown and said, and those after it are still answered. */
  function inTurn(work: () => Promise<void>): Promise<void> {
    turn = turn
      .then(work)
      .catch((error: unknown) => stop(sessionStopped.fault(messageOf(error)), sessionStopped.sayFault))
      // Where the voice itself is at fault, the screen has said it.
      .catch(() => undefined);
    return turn;
  }

  /** Whether something that warns is to be heard before this: then that is shown, and said where no voice is at it. */
  function isPastHazard(text: string, meaning: Meaning, began: number, isAtScreen = false): boolean {
    const first = trouble() === null ? hazards.unheard(state(), meaning, began, isAtScreen) : null;
    if (first === null) return false;
    heardNow.show({ text, taken: first.how === 'being said' ? 'not said yet' : 'not read yet', unheard: first });
    if (first.how === 'to be read' && !isAtScreen) say([prompting.readFirst(first.signal)]);
    return true;
  }

  function act(
    meaning: Meaning,
    source: Source,
    began = performance.now(),
    isAtScreen = source === 'touch',
  ): Promise<void> {
    const seen = entries().length;
    const isEarly = source !== 'program' && (began - changedAt < SETTLE || early.isAnsweredBy(began));
    return inTurn(async () => {
      const isOfBefore = isEarly || entries().length !== seen;
      if (isOfBefore && !isAtAnyTime(meaning) && trouble() === null)
        heardNow.show({ text: meaning.kind, taken: 'too early' });
      else if (!isPastHazard(meaning.kind, meaning, began, isAtScreen)) {
        if (source !== 'program') heardNow.forgetPremature(meaning.kind);
        await carryOut(meaning, source, null);
      }
    });
  }

  function hear(utterance: Heeded, source: Source): Promise<void> {
    const { words, spoken } = utterance;
    const text = textOf(words);
    const isEarly = !spoken && early.isAnsweredBy(performance.now());
    return inTurn(async () => {
      const isOfBefore = spoken ? spoken.from < changedAt : isEarly;
      const understanding = early.understood(utterance);
      const isCall = understanding.kind === 'meant' && isAtAnyTime(understanding.meaning);
      if (isOfBefore && !isCall && trouble() === null) {
        if (!spoken || !(await takeBack(utterance, spoken, source))) heardNow.show({ text, taken: 'too early' });
        return;
      }
      if (understanding.kind === 'nothing') {
        const notTaken = understanding.isUnsure ? 'not sure' : 'not for us';
        heardNow.showNotTaken(text, notTaken);
        // Whoever types means it: they are told the answer that is wanted.
        const ask = understanding.ask ?? (spoken ? null : answerWanted(situationOf(state()).sayings));
        if (ask !== null) answer(text, notTaken, trouble() === null ? ask : sessionStopped.nothingLogged);
        return;
      }
      heardNow.show({ text, taken: 'taken' });
      const { meaning } = understanding;
      // Nobody types by accident.
      if (spoken && isPastHazard(text, meaning, spoken.from)) return;
      const act: Act | null = spoken ? { ...spoken, meaning: meaning.kind, by: 'word' } : null;
      if (act && last.isSameAs(act)) {
        heardNow.show({ text, taken: 'counted already' });
        return;
      }
      const work = () => carryOut(meaning, source, heardAs(utterance), spoken);
      await (act ? last.keep(act, situationOf(state()), work) : work());
    }).finally(() => {
      // What was shown is this utterance, or was given up for it. What is typed has no part in it.
      if (spoken) early.show(null);
    });
  }

  /**
   * What was said while a nod was made that has counted meanwhile. A “negative” is not lost: the reading that the nod
   * confirmed does not count, and where the nod answered something else it is said that the two do not agree.
   * @returns whether it was such a word
   */
  async function takeBack(utterance: Heeded, spoken: Spoken, source: Source): Promise<boolean> {
    if (last.instead === null) return false;
    const understanding = early.understoodIn(last.instead, utterance);
    if (understanding.kind !== 'meant') return false;
    if (!last.isDenied({ ...spoken, meaning: understanding.meaning.kind, by: 'word' })) return false;
    await takeLastBack(source, heardAs(utterance), spoken);
    return true;
  }

  async function takeLastBack(source: Source, heard: Heard, spoken: Spoken | null = null): Promise<void> {
    heardNow.show({ text: heard.text, taken: 'taken' });
    const isReading = last.written.some(({ body }) => body.kind === 'reading confirmed');
    // The last fastener of a step has ended it: the reading before is of no step that is under way.
    if (isReading && decide(state(), { meaning: { kind: 'disregard' }, at: now() }).kind === 'accepted')
      await carryOut({ kind: 'disregard' }, source, heard, spoken);
    else answer(heard.text, 'taken', source === 'gesture' ? atOnce.wordCounted : atOnce.nodCounted);
  }

  function see(gesture: SeenGesture, meaning: Meaning): Promise<void> {
    const { kind, from, to } = gesture;
    return inTurn(async () => {
      const act: Act = { from, to, meaning: meaning.kind, by: 'gesture' };
      const isCountedAlready = last.isSameAs(act);
      const isOfBefore = (from < changedAt + SETTLE || early.isAnsweredBy(from)) && !isAtAnyTime(meaning);
      if ((isCountedAlready || isOfBefore) && trouble() === null) {
        if (last.isDenied(act)) await takeLastBack('gesture', seenAs(gesture));
        else heardNow.show({ text: kind, taken: isCountedAlready ? 'counted already' : 'too early' });
        return;
      }
      if (isPastHazard(kind, meaning, from)) return;
      heardNow.show({ text: kind, taken: 'taken' });
      await last.keep(act, situationOf(state()), () => carryOut(meaning, 'gesture', seenAs(gesture)));
    });
  }

  return {
    state,
    entries,
    heard: heardNow.line,
    ignored: heardNow.ignored,
    trouble,
    signal,
    situation: () => situationOf(state()),
    provisional: early.provisional,
    understoodIn: (situation, utterance) => early.understoodIn(situation, utterance),
    act,
    hear,
    showProvisional: (utterance) => early.show(utterance),
    see,
    isAgainstWord: ({ from, to }) =>
      from < changedAt + SETTLE && last.isDenied({ from, to, meaning: 'negative', by: 'gesture' }),
    notTaken: (text, why) => heardNow.showNotTaken(text, why),
    tooEarly: (meaning) => {
      const first = hazards.unheard(state(), meaning, performance.now(), false);
      heardNow.show({ text: meaning.kind, taken: 'not said yet', ...(first ? { unheard: first } : {}) });
    },
    welcome: () =>
      say(
        announce(
          state(),
          kept.entries.map(({ body }) => body),
        ),
      ),
  };
}

/** Whoever calls for help, or wants all to stand still, means it at whatever moment: the program’s own call may have come between. */
const isAtAnyTime = ({ kind }: Meaning): boolean => kind === 'help' || kind === 'stand by';

const isSameCall = (one: Call | null, other: Call | null): boolean =>
  one?.fastener === other?.fastener && one?.pass === other?.pass;
