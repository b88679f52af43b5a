import { createEffect, createSignal, onCleanup, type Accessor } from 'solid-js';
import { announce } from '../language/announce.ts';
import { sayRefusal } from '../language/say-refusal.ts';
import { secondWindow } from '../words/second-window.ts';
import type { LiveSession } from './live-session.ts';
import { openDeskEnd, type Answer, type FromSecond } from './second-channel.ts';

/** The side of the window that holds the pen: what the second person means is carried out here, like any other input. */
export interface SecondDesk {
  /** That something came which is no word of the second person, and why; null as long as nothing did. */
  readonly dropped: Accessor<string | null>;
}

/** Answered where the record has gone on since the second person looked: what they meant was about something else. */
const goneOn = (): Answer => ({ taken: false, sentence: secondWindow.workWentOn });

/** Takes part in the channel of a session until its owner is cleaned up. */
export function openSecondDesk(session: string, live: LiveSession): SecondDesk {
  const [dropped, setDropped] = createSignal<string | null>(null);
  const newest = (): number => live.entries().length - 1;

  async function carryOut({ meaning, seen }: Extract<FromSecond, { kind: 'meaning' }>): Promise<Answer> {
    if (seen !== newest()) return goneOn();
    const heard = live.heard();
    await live.act(meaning, 'touch');
    const trouble = live.trouble();
    if (trouble !== null) return { taken: false, sentence: trouble };
    if (live.heard() !== heard && live.heard()?.taken === 'too early') return goneOn();
    const bodies = live
      .entries()
      .slice(seen + 1)
      .map(({ body }) => body);
    // To a closed record nothing is written, not even the refusal.
    if (bodies.length === 0) return { taken: false, sentence: sayRefusal(live.state(), { code: 'session closed' }) };
    // Said once more, as it was said aloud: what is spoken is a pure function of state and events.
    return { taken: bodies[0]?.kind !== 'refused', sentence: announce(live.state(), bodies).join(' ') };
  }

  const end = openDeskEnd(session, {
    receive: (message) => {
      if (message.kind === 'ping') end.post({ kind: 'here', seq: newest() });
      else void carryOut(message).then((answer) => end.post({ kind: 'answer', id: message.id, ...answer }));
    },
    drop: (why) => setDropped(secondWindow.noWordOfSecond(why)),
  });
  onCleanup(() => end.close());
  // Entries are on disk before they are listed, so whoever is told finds them there.
  createEffect(() => end.post({ kind: 'changed', seq: newest() }));
  return { dropped };
}
