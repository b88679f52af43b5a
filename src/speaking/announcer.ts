import { voices as words } from '../words/voices.ts';
import { add, EMPTY_QUEUE, finish, itemsOf, startNext, type Queue, type Queued } from './queue.ts';
import type { Announcement, Outcome, SpeakingState } from './types.ts';
import { OutputStopped, reasonOf, type Utterance, type Voice } from './voice.ts';
import { speakWatched } from './watchdog.ts';

interface Item extends Queued, Utterance {
  readonly cut: AbortController;
  readonly settle: (outcome: Outcome) => void;
}

export interface Announcer {
  readonly state: SpeakingState;
  subscribe(listener: (state: SpeakingState) => void): () => void;
  say(announcement: Announcement): Promise<Outcome>;
  hush(): void;
  /**
   * Tries the voices in order until one gets ready; keeps the one in use unless only tones are left.
   * With none ready, announcements end as 'silent'.
   */
  choose(): Promise<void>;
  close(): void;
}

/** The voices are English: text without a letter or digit of its alphabet makes no sound. */
const SPEAKABLE = /[a-z0-9]/i;

/**
 * Speaks announcements one after another with the best voice that works. A voice that fails is left for the next one,
 * which says the same words again; so a failing voice costs time but no words.
 * @param voices best first; the last one should hardly be able to fail.
 */
export function createAnnouncer(voices: readonly [Voice, ...Voice[]]): Announcer {
  const listeners = new Set<(state: SpeakingState) => void>();
  let queue: Queue<Item> = EMPTY_QUEUE;
  let state: SpeakingState = { voice: 'choosing', saying: null };
  /** Index of the voice in use. `null` while choosing; `voices.length` when all have failed. */
  let inUse: number | null = null;
  /** What went wrong with the voices before the one in use. */
  let failures: string[] = [];
  /** The choice that is under way. Only one is at a time: voices are made ready in order. */
  let choice: Promise<void> | null = null;
  let isClosed = false;

  function change(part: Partial<Pick<SpeakingState, 'voice' | 'saying'>>, why?: string): void {
    state = { voice: state.voice, saying: state.saying, ...part, ...(why ? { why } : {}) };
    for (const listener of [...listeners]) listener(state);
  }
  const reasons = (): string => failures.join(' ');

  const chooseFrom = (first: number): Promise<void> => (choice ??= prepareFrom(first).finally(() => (choice = null)));

  async function prepareFrom(first: number): Promise<void> {
    inUse = null;
    change({ voice: 'choosing' }, reasons());
    for (const [index, voice] of voices.entries()) {
      if (index < first) continue;
      try {
        await voice.prepare();
        return use(index);
      } catch (error) {
        blame(voice, error);
      }
    }
    use(voices.length);
  }

  function blame(voice: Voice, error: unknown): void {
    failures.push(words.notUsed(voice.kind, reasonOf(error)));
  }

  function use(index: number): void {
    inUse = index;
    change({ voice: voices[index]?.kind ?? 'tones' }, reasons());
  }

  function pump(): void {
    if (isClosed || inUse === null || queue.speaking) return;
    queue = startNext(queue);
    const item = queue.speaking;
    if (!item) return;
    void speakOut(item).then((outcome) => {
      queue = finish(queue, item);
      item.settle(outcome);
      pump();
    });
  }

  async function speakOut(item: Item): Promise<Outcome> {
    for (;;) {
      const index = inUse ?? voices.length;
      const voice = voices[index];
      if (!voice) return 'silent';
      try {
        await speakWatched(voice, item, item.cut.signal, () => change({ saying: item.text }, state.why));
        change({ saying: null }, reasons());
        return voice.kind === 'tones' ? 'toned' : 'said';
      } catch (error) {
        if (item.cut.signal.aborted) return 'cut short';
        if (error instanceof OutputStopped) {
          change({ saying: null }, error.message);
          return 'silent';
        }
        change({ saying: null }, reasons());
        blame(voice, error);
        await chooseFrom(index + 1);
        if (item.cut.signal.aborted) return 'cut short';
      }
    }
  }

  /** Stops the sound, then tells that it has stopped. */
  function cut(items: readonly Item[]): void {
    for (const item of items) item.cut.abort(new Error('cut short'));
    if (state.saying !== null) change({ saying: null }, state.why);
    for (const item of items) item.settle('cut short');
  }

  function hush(): void {
    const items = itemsOf(queue);
    queue = EMPTY_QUEUE;
    cut(items);
  }

  return {
    get state() {
      return state;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    say({ text, urgent = false }) {
      if (!SPEAKABLE.test(text)) return Promise.resolve('silent');
      if (isClosed) return Promise.resolve('cut short');
      return new Promise((settle) => {
        const item: Item = { text, urgent, settle, cut: new AbortController() };
        const added = add(queue, item);
        queue = added.queue;
        if (added.cutShort) cut([added.cutShort]);
        pump();
      });
    },
    hush,
    async choose() {
      const voice = inUse === null ? undefined : voices[inUse];
      if (voice && voice.kind !== 'tones') return;
      if (!choice) failures = [];
      await chooseFrom(0);
      pump();
    },
    close() {
      isClosed = true;
      hush();
      listeners.clear();
      for (const voice of voices) voice.close();
    },
  };
}
