import { createSignal, onCleanup, type Accessor } from 'solid-js';
import type { SecondMeaning } from '../record/input-schema.ts';
import { secondWindow } from '../words/second-window.ts';
import { openSecondEnd, type Answer } from './second-channel.ts';

/** How often it is asked whether a window works on the session, in milliseconds. */
export const PING_EVERY = 2000;
/** Who has not answered by then is taken for gone, in milliseconds. */
export const ANSWER_WITHIN = 1000;
/** A disk may be slow; after this long nobody will say any more what became of a meaning, in milliseconds. */
export const LONGEST_WAIT = 10_000;

/** The side of the second person's window. It never writes: it asks, and hears what became of it. */
export interface SecondLink {
  /** Whether a window works on the session: then it carries out what is meant here. */
  readonly worker: Accessor<'asking' | 'there' | 'gone'>;
  /** The newest entry that was told of; null before anybody told. */
  readonly newest: Accessor<number | null>;
  /** That something came which is no answer, and why; null as long as nothing did. */
  readonly dropped: Accessor<string | null>;
  /**
   * Has a meaning carried out.
   * @param seen the newest entry that the second person has before them
   * @returns what became of it, or null where nobody said: then only the record tells
   */
  send(meaning: SecondMeaning, seen: number): Promise<Answer | null>;
}

/** Takes part in the channel of a session until its owner is cleaned up. */
export function openSecondLink(session: string): SecondLink {
  const [worker, setWorker] = createSignal<'asking' | 'there' | 'gone'>('asking');
  const [newest, setNewest] = createSignal<number | null>(null);
  const [dropped, setDropped] = createSignal<string | null>(null);
  const waiting = new Map<string, (answer: Answer | null) => void>();
  let missing: ReturnType<typeof setTimeout> | undefined;

  const end = openSecondEnd(session, {
    receive: (message) => {
      clearTimeout(missing);
      setWorker('there');
      if (message.kind === 'answer') waiting.get(message.id)?.({ taken: message.taken, sentence: message.sentence });
      else setNewest(message.seq);
    },
    drop: (why) => setDropped(secondWindow.noAnswer(why)),
  });

  function ping(): void {
    clearTimeout(missing);
    missing = setTimeout(() => setWorker('gone'), ANSWER_WITHIN);
    end.post({ kind: 'ping' });
  }
  const timer = setInterval(ping, PING_EVERY);
  ping();
  onCleanup(() => {
    clearInterval(timer);
    clearTimeout(missing);
    for (const tell of waiting.values()) tell(null);
    end.close();
  });

  function send(meaning: SecondMeaning, seen: number): Promise<Answer | null> {
    const id = crypto.randomUUID();
    return new Promise((resolve) => {
      const tell = (answer: Answer | null): void => {
        clearTimeout(late);
        waiting.delete(id);
        resolve(answer);
      };
      const late = setTimeout(() => tell(null), LONGEST_WAIT);
      waiting.set(id, tell);
      end.post({ kind: 'meaning', id, seen, meaning });
    });
  }

  return { worker, newest, dropped, send };
}
