/** What a browser may lack, by the name that its makers use, and what then does not work here. */

/** The global object of a page, of which any part may be missing. */
export type Browser = Readonly<Record<string, unknown>>;

export interface Part {
  readonly name: string;
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

const part = (name: string, path: string, without: string, isEssential = false): Part => ({
  name,
  isEssential,
  isThere: there(path),
  without,
});

/** In the order in which they matter. */
export const PARTS: readonly Part[] = [
  part(
    'secure context',
    'isSecureContext',
    'The page must come from this machine (localhost) or over https: else there is no record, no microphone and no camera.',
    true,
  ),
  part('IndexedDB', 'indexedDB', 'No record can be kept.', true),
  part('Web Locks', 'navigator.locks', 'Two windows could write into the same record.', true),
  part('Web Crypto', 'crypto.subtle', 'No entry can be sealed.', true),
  part(
    'WebAssembly',
    'WebAssembly',
    'Neither speech recogniser nor own voice run. Touch, keys and typing go on working.',
  ),
  part('Web Workers', 'Worker', 'Neither speech recogniser nor own voice run. Touch, keys and typing go on working.'),
  part(
    'getUserMedia',
    'navigator.mediaDevices.getUserMedia',
    'There is no microphone and no camera. Touch, keys and typing go on working.',
  ),
  part('AudioWorklet', 'AudioWorkletNode', 'It cannot listen. Touch, keys and typing go on working.'),
  part('Web Audio', 'AudioContext', 'It makes no sound of its own. The screen shows all that is said.'),
  part('Service Worker', 'navigator.serviceWorker', 'It does not start without the network.'),
  part('BroadcastChannel', 'BroadcastChannel', 'The second person has no window of their own.'),
  part('Screen Wake Lock', 'navigator.wakeLock', 'The screen may go dark: set the device not to sleep.'),
  part('OffscreenCanvas', 'OffscreenCanvas', 'Gestures before the camera are not watched.'),
  part(
    'persistent storage',
    'navigator.storage.persist',
    'The browser may clear records when its room runs out: save each session as a sealed file.',
  ),
];

/** The parts that this browser lacks, in the order in which they matter. */
export const lackingIn = (browser: Browser): readonly Part[] => PARTS.filter(({ isThere }) => !isThere(browser));
