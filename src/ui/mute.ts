import { createEffect, createSignal, on, type Accessor } from 'solid-js';
import { habitOf } from '../storage/habits.ts';
import { voiceOf } from '../storage/voices.ts';
import { workScreen } from '../words/work-screen.ts';
import type { Shop } from './app.tsx';
import { forbidsVoice } from './check-words.ts';
import { now } from './clock.ts';
import { muteBook } from './hand-habits.ts';

/** The microphone of the one who works: muted until they unmute it, also where the page is loaded again. */
export interface Mute {
  /** Why it was closed when they began; null where it was not, or they have unmuted it since. */
  readonly closedBecause: Accessor<string | null>;
  mute(): Promise<void>;
  /** Listens, wherever the ear stood. */
  listen(): Promise<void>;
}

/** Why a person begins with a closed ear; null where it listens. */
function whyClosed(
  { muted, voices }: Pick<Shop, 'muted' | 'voices'>,
  name: string,
  isPractice: boolean,
): string | null {
  // In practice nothing can be logged wrong, and there is no practice by voice without an ear.
  if (!isPractice && forbidsVoice(voiceOf(voices(), name), now().utc)) return workScreen.earClosedByCheck;
  return habitOf(muted(), name) ? workScreen.mutedAsLeft : null;
}

/**
 * Starts ear and voice for a person: closed where they left it muted, or were not heard well enough to work by voice.
 * Call it from a tap: sound and microphone are asked for.
 * @returns why it is closed; null where it listens
 */
export function startFor(
  shop: Pick<Shop, 'muted' | 'voices' | 'devices'>,
  name: string,
  isPractice: boolean,
): string | null {
  const why = whyClosed(shop, name, isPractice);
  void shop.devices.start(why === null ? undefined : 'closed');
  return why;
}

/** @param mechanic the one who works, as a memo: whoever takes over finds it as they left it themselves */
export function createMute(
  shop: Pick<Shop, 'muted' | 'setMuted' | 'voices' | 'devices'>,
  mechanic: Accessor<string>,
  isPractice: boolean,
): Mute {
  const { devices } = shop;
  const [closedBecause, setClosedBecause] = createSignal<string | null>(null);
  createEffect(on(mechanic, (name) => setClosedBecause(startFor(shop, name, isPractice))));
  const keep = async (value: boolean): Promise<void> => shop.setMuted(await muteBook.keep({ name: mechanic(), value }));
  return {
    closedBecause,
    mute() {
      devices.hearing.mute('asked');
      return keep(true);
    },
    listen() {
      setClosedBecause(null);
      void devices.start();
      return keep(false);
    },
  };
}
