/**
 * The first wave before a camera does nothing: it is asked whether it was seen as it was made. Of a picture upside down, or
 * as in a mirror, nobody else would notice, and next would be back. What is found out is kept; nothing of it is of the job.
 */
import { createEffect, createSignal, on, type Accessor } from 'solid-js';
import { changedOver, type CameraHabit } from '../gesture/camera-habit.ts';
import type { Camera } from '../gesture/camera.ts';
import type { GestureKind } from '../gesture/gesture.ts';
import { AFFIRM, NEGATIVE } from '../language/sayings.ts';
import type { Situation } from '../language/situation.ts';
import type { Meaning } from '../session/intent.ts';
import { camera as words } from '../words/camera.ts';
import type { Heeded } from './heeded.ts';
import type { LiveSession } from './live-session.ts';
import { SETTLE } from './settle.ts';

interface Fittings {
  readonly camera: Pick<Camera, 'device'>;
  readonly live: Pick<LiveSession, 'situation' | 'entries' | 'understoodIn'>;
  /** How the one who works is watched. */
  readonly watched: Accessor<CameraHabit>;
  readonly keep: (habit: CameraHabit) => void;
  readonly addNews: (text: string) => void;
}

export interface SidesCheck {
  /** What is asked, or was found out; null when that has been seen. */
  readonly shown: Accessor<string | null>;
  /** Whether an answer is waited for. */
  readonly isAsked: Accessor<boolean>;
  /** Whether a wave is asked about before it counts. */
  isDue(): boolean;
  ask(wave: Extract<GestureKind, `wave ${string}`>): void;
  /** What may be said now: while it is asked, also its answers. */
  situation(): Situation;
  /**
   * Takes the answer to what is asked.
   * @param began milliseconds on the clock of the page; now, where it has no length
   * @returns whether it was one, and so is none to anything else
   */
  takes(meaning: Meaning, began?: number): boolean;
  /** The same for what was said or typed. */
  takesWords(utterance: Heeded): boolean;
}

/** So long does it wait for an answer, its own words included; then the next wave asks again. In milliseconds. */
const OPEN_MS = 20_000;

export function createSidesCheck({ camera, live, watched, keep, addNews }: Fittings): SidesCheck {
  const [note, setNote] = createSignal<{ readonly text: string; readonly asks: boolean } | null>(null);
  let asked = { at: -Infinity, of: '' };
  // The work has gone on without it.
  createEffect(on(live.entries, () => setNote(null), { defer: true }));

  function tell(text: string, asks: boolean): void {
    const own = { text, asks };
    setNote(own);
    addNews(text);
    setTimeout(() => setNote((now) => (now === own ? null : now)), OPEN_MS);
  }

  const isAsked = (): boolean => note()?.asks === true;

  function situation(): Situation {
    const now = live.situation();
    return isAsked() ? { ...now, sayings: [...now.sayings, ...AFFIRM, ...NEGATIVE] } : now;
  }

  function takes({ kind }: Meaning, began = performance.now()): boolean {
    if (!isAsked() || (kind !== 'affirm' && kind !== 'negative')) return false;
    if (began < asked.at + SETTLE) return true;
    // Another camera has come up since: of that one nobody has seen anything.
    if (asked.of !== camera.device) {
      setNote(null);
      return true;
    }
    const isSo = kind === 'affirm';
    // Only a yes ends it: once turned, the next wave is asked about as well.
    keep(isSo ? { ...watched(), checkedOn: asked.of } : changedOver(watched()));
    tell(isSo ? words.sides.known : words.sides.changedOver, false);
    return true;
  }

  return {
    shown: () => note()?.text ?? null,
    isAsked,
    isDue: () => watched().checkedOn !== camera.device,
    ask(wave) {
      asked = { at: performance.now(), of: camera.device };
      tell(words.sides.isSo[wave], true);
    },
    situation,
    takes,
    takesWords(utterance) {
      if (!isAsked()) return false;
      const found = live.understoodIn(situation(), utterance);
      return found.kind === 'meant' && takes(found.meaning, utterance.spoken?.from);
    },
  };
}
