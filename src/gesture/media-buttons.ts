/**
 * Buttons of a headset. Systems keep them from the page as keys and give them to whatever plays sound, by way of the
 * browser's media session: so while such a button is bound, a silent sound plays.
 */
import type { Bindings } from './bindings.ts';

/** Names of media keys as keyboards send them, and the action of a media session that stands for each. */
const ACTIONS: Readonly<Record<string, readonly MediaSessionAction[]>> = {
  MediaTrackNext: ['nexttrack'],
  MediaTrackPrevious: ['previoustrack'],
  // Which of the two comes depends on what the system believes is playing.
  MediaPlayPause: ['play', 'pause'],
};

/** The media keys that are bound to a switch. */
export const mediaKeysIn = ({ switches }: Bindings): readonly string[] =>
  switches.flatMap(({ keys }) => keys.filter((key) => key in ACTIONS));

/** All that can be learned. */
export const MEDIA_KEYS: readonly string[] = Object.keys(ACTIONS);

/** A button that comes both as a key and as an action is one press: they are at most so far apart, in milliseconds. */
const SAME_PRESS = 400;

/**
 * Listens to media buttons by their names as keys. Does nothing where none is asked for or the browser has no media session.
 * A key that only repeats an action goes to nobody who listens for keys of the page after this.
 * @returns a function that stops listening, and the silent sound
 */
export function watchMediaButtons(keys: readonly string[], page: Window, listener: (key: string) => void): () => void {
  const session = 'mediaSession' in page.navigator ? page.navigator.mediaSession : null;
  if (session === null || keys.length === 0) return () => undefined;
  /** When buttons came one way, until they come the other way too, oldest first: each press comes at most once either way. */
  const once: Record<'key' | 'action', { readonly key: string; readonly at: number }[]> = { key: [], action: [] };
  /** Whether it is the other half of a press that has come already. */
  function isRepeated(key: string, by: keyof typeof once): boolean {
    const now = page.performance.now();
    for (const way of ['key', 'action'] as const) once[way] = once[way].filter(({ at }) => now - at <= SAME_PRESS);
    const other = by === 'key' ? once.action : once.key;
    const half = other.findIndex((each) => each.key === key);
    if (half >= 0) other.splice(half, 1);
    else once[by].push({ key, at: now });
    return half >= 0;
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.repeat || !keys.includes(event.key) || !isRepeated(event.key, 'key')) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  page.addEventListener('keydown', onKey, { capture: true });

  const silence = new Audio(URL.createObjectURL(silentWave()));
  silence.loop = true;
  const play = (): void => {
    // Before the first touch of the page a browser plays nothing: the next one tries again.
    if (silence.paused) void silence.play().catch(() => undefined);
  };
  play();
  page.addEventListener('pointerdown', play);
  page.addEventListener('keydown', play);

  const actions = keys.flatMap((key) => (ACTIONS[key] ?? []).map((action) => ({ key, action })));
  for (const { key, action } of actions)
    setHandler(session, action, () => {
      // The system may have stopped the silence before it tells.
      play();
      if (!isRepeated(key, 'action')) listener(key);
    });
  return () => {
    for (const { action } of actions) setHandler(session, action, null);
    page.removeEventListener('keydown', onKey, { capture: true });
    page.removeEventListener('pointerdown', play);
    page.removeEventListener('keydown', play);
    silence.pause();
    URL.revokeObjectURL(silence.src);
  };
}

/** A browser that does not know an action throws: that button is then only heard as a key. */
function setHandler(session: MediaSession, action: MediaSessionAction, handler: (() => void) | null): void {
  try {
    session.setActionHandler(action, handler);
  } catch {
    // Nothing to mend here: the teach page shows that nothing comes.
  }
}

const RATE = 8000;
const SECONDS = 10;
const HEADER = 44;

/** Ten seconds of silence: browsers give no media buttons to what is shorter than about five. */
function silentWave(): Blob {
  const wave = new DataView(new ArrayBuffer(HEADER + RATE * SECONDS));
  const text = (at: number, words: string): void =>
    [...words].forEach((letter, index) => wave.setUint8(at + index, letter.charCodeAt(0)));
  text(0, 'RIFF');
  wave.setUint32(4, HEADER - 8 + RATE * SECONDS, true);
  text(8, 'WAVEfmt ');
  wave.setUint32(16, 16, true);
  wave.setUint16(20, 1, true);
  wave.setUint16(22, 1, true);
  wave.setUint32(24, RATE, true);
  wave.setUint32(28, RATE, true);
  wave.setUint16(32, 1, true);
  wave.setUint16(34, 8, true);
  text(36, 'data');
  wave.setUint32(40, RATE * SECONDS, true);
  // Eight bits without sign: the middle is silence.
  new Uint8Array(wave.buffer, HEADER).fill(128);
  return new Blob([wave.buffer], { type: 'audio/wav' });
}
