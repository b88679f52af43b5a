import { createSignal, type Accessor } from 'solid-js';
import { habitOf } from '../storage/habits.ts';
import type { Shop } from './app.tsx';
import { muteBook } from './hand-habits.ts';

/** The microphone of the one who works: muted until they unmute it, also where the page is loaded again. */
export interface Mute {
  /** It was left muted before this screen came up, and is so still. */
  readonly asLeft: Accessor<boolean>;
  mute(): Promise<void>;
  /** Listens, wherever the ear stood. */
  listen(): Promise<void>;
}

export function createMute(shop: Pick<Shop, 'muted' | 'setMuted' | 'devices'>, mechanic: Accessor<string>): Mute {
  const { devices } = shop;
  const [asLeft, setAsLeft] = createSignal(habitOf(shop.muted(), mechanic()) ?? false);
  const keep = async (value: boolean): Promise<void> => shop.setMuted(await muteBook.keep({ name: mechanic(), value }));
  return {
    asLeft,
    mute() {
      devices.hearing.mute('asked');
      return keep(true);
    },
    listen() {
      setAsLeft(false);
      void devices.start();
      return keep(false);
    },
  };
}
