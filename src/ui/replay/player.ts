import { createSignal, onCleanup, type Accessor } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import { layAxis, PLAYED } from './axis.ts';
import { atSpeed, entryDue, isPlayedOut, playFrom, type Playing, type Speed } from './play-clock.ts';

/** Which entry is shown, and the clock that moves it on. */
export interface Player {
  readonly at: Accessor<number>;
  readonly last: number;
  /** Shows an entry; the nearest there is. While playing, it plays on from there. */
  readonly go: (seq: number) => void;
  readonly isPlaying: Accessor<boolean>;
  readonly playOrPause: () => void;
  readonly speed: Accessor<Speed>;
  readonly setSpeed: (speed: Speed) => void;
}

/** How often it is looked whether another entry is due, in milliseconds: sooner than anybody sees a delay. */
const LOOK_EVERY = 50;

export function createPlayer({ entries }: SessionRecord): Player {
  const axis = layAxis(
    entries.map(({ at }) => at.utc),
    PLAYED,
  );
  const last = entries.length - 1;
  const [at, setAt] = createSignal(0);
  const [playing, setPlaying] = createSignal<Playing | null>(null);
  const [speed, keepSpeed] = createSignal<Speed>(1);
  const now = (): number => performance.now();

  const timer = setInterval(() => {
    const running = playing();
    if (!running) return;
    setAt(entryDue(axis, running, now()));
    if (isPlayedOut(axis, running, now())) setPlaying(null);
  }, LOOK_EVERY);
  onCleanup(() => clearInterval(timer));

  return {
    at,
    last,
    go: (seq) => {
      const shown = Math.max(0, Math.min(last, seq));
      setAt(shown);
      if (playing()) setPlaying(shown === last ? null : playFrom(axis, shown, speed(), now()));
    },
    isPlaying: () => playing() !== null,
    playOrPause: () => setPlaying(playing() ? null : playFrom(axis, at(), speed(), now())),
    speed,
    setSpeed: (chosen) => {
      keepSpeed(chosen);
      setPlaying((running) => running && atSpeed(running, chosen, now()));
    },
  };
}
