/** What a browser may lack, by the name that its makers use, and what then does not work here. */

import { program } from '../words/program.ts';

/** The global object of a page, of which any part may be missing. */
export type Browser = Readonly<Record<string, unknown>>;

export interface Part {
  readonly name: keyof typeof program.without;
  /** Without an essential part nothing can be recorded, so nothing is begun. */
  readonly isEssential: boolean;
  readonly isThere: (browser: Browser) => boolean;
  /** What does not work without it, and what still does. */
  readonly without: string;
}

const at = (browser: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((found, key) => {
    if ((typeof found !== 'object' && typeof found !== 'function') || found === null) return undefined;
    // Some getters throw outside of their objects.
    try {
      return (found as Record<string, unknown>)[key];
    } catch {
      return undefined;
    }
  }, browser);

const there = (path: string) => (browser: Browser) => {
  const found = at(browser, path);
  return found !== undefined && found !== null && found !== false;
};

const part = (name: Part['name'], path: string, isEssential = false): Part => ({
  name,
  isEssential,
  isThere: there(path),
  get without() {
    return program.without[name];
  },
});

/** In the order in which they matter. */
export const PARTS: readonly Part[] = [
  part('secure context', 'isSecureContext', true),
  part('IndexedDB', 'indexedDB', true),
  part('Web Locks', 'navigator.locks', true),
  part('Web Crypto', 'crypto.subtle', true),
  part('WebAssembly', 'WebAssembly'),
  part('Web Workers', 'Worker'),
  part('getUserMedia', 'navigator.mediaDevices.getUserMedia'),
  part('AudioWorklet', 'AudioWorkletNode'),
  part('Web Audio', 'AudioContext'),
  part('Service Worker', 'navigator.serviceWorker'),
  part('BroadcastChannel', 'BroadcastChannel'),
  part('Screen Wake Lock', 'navigator.wakeLock'),
  part('OffscreenCanvas', 'OffscreenCanvas'),
  part('persistent storage', 'navigator.storage.persist'),
];

/** The parts that this browser lacks, in the order in which they matter. */
export const lackingIn = (browser: Browser): readonly Part[] => PARTS.filter(({ isThere }) => !isThere(browser));
