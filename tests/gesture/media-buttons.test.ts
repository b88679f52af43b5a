// @vitest-environment jsdom
/** Headset buttons. The system gives them to whatever plays: here the test is the system. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { bindingsFor, DEFAULT_BINDINGS } from '../../src/gesture/bindings.ts';
import { watchSwitches } from '../../src/gesture/keys.ts';
import { mediaKeysIn, watchMediaButtons } from '../../src/gesture/media-buttons.ts';

let handlers: Map<string, () => void>;
let played: string[];
const stops: (() => void)[] = [];
beforeEach(() => {
  handlers = new Map();
  played = [];
  vi.stubGlobal('Audio', silentAudio);
  vi.stubGlobal('URL', { createObjectURL: () => 'blob:silence', revokeObjectURL: () => played.push('gone') });
  vi.stubGlobal('navigator', {
    mediaSession: {
      setActionHandler(action: string, handler: (() => void) | null) {
        if (action === 'previoustrack') throw new TypeError('unknown action');
        if (handler) handlers.set(action, handler);
        else handlers.delete(action);
      },
    },
  });
});
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
  vi.unstubAllGlobals();
});

function silentAudio() {
  return {
    paused: true,
    src: 'blob:silence',
    play(this: { paused: boolean }) {
      this.paused = false;
      played.push('plays');
      return Promise.resolve();
    },
    pause: () => played.push('paused'),
  };
}

const watched = (...keys: readonly string[]) => {
  const heard: string[] = [];
  const stop = watchMediaButtons(keys, window, (key) => void heard.push(key));
  stops.push(stop);
  return { heard, stop };
};

test('only media keys that are bound are listened to', () => {
  expect(mediaKeysIn(DEFAULT_BINDINGS)).toEqual([]);
  expect(mediaKeysIn(bindingsFor(['MediaPlayPause', 'b']))).toEqual(['MediaPlayPause']);
});
test('where none is bound, nothing plays', () => {
  watched();
  expect(played).toEqual([]);
  expect(handlers.size).toBe(0);
});
test('a button is heard by its name, whichever of the two actions comes', () => {
  const { heard } = watched('MediaPlayPause', 'MediaTrackNext');
  expect(played).toEqual(['plays']);
  for (const action of ['play', 'pause', 'nexttrack']) handlers.get(action)?.();
  expect(heard).toEqual(['MediaPlayPause', 'MediaPlayPause', 'MediaTrackNext']);
});
test('a button that came as a key is not heard a second time as an action', () => {
  const { heard } = watched('MediaTrackNext');
  window.dispatchEvent(new KeyboardEvent('keydown', { key: 'MediaTrackNext' }));
  handlers.get('nexttrack')?.();
  expect(heard).toEqual([]);
});
test('nor as a key after it came as an action, however the two halves of quick presses follow each other', () => {
  vi.useFakeTimers({ toFake: ['performance'] });
  try {
    const heard: string[] = [];
    const bindings = { ...bindingsFor(['b', 'MediaTrackNext']), timing: { ...DEFAULT_BINDINGS.timing, bounce: 0 } };
    const switches = bindings.switches.map(({ keys, press }) => ({ keys, press }));
    const stop = watchSwitches(
      () => ({ ...bindings, switches }),
      ({ signal }) => void heard.push(String(signal)),
    );
    const key = (): void => {
      const event = new KeyboardEvent('keydown', { key: 'MediaTrackNext', cancelable: true });
      window.dispatchEvent(event);
      window.dispatchEvent(new KeyboardEvent('keyup', { key: 'MediaTrackNext' }));
      expect(event.defaultPrevented).toBe(true);
    };
    const action = (): void => handlers.get('nexttrack')?.();
    const after = (ms: number, act: () => void): number => {
      vi.advanceTimersByTime(ms);
      act();
      return heard.length;
    };
    expect([after(0, action), after(150, key)], 'one press').toEqual([1, 1]);
    expect([after(100, action), after(150, key)], 'another at once').toEqual([2, 2]);
    expect([after(100, key), after(150, action)], 'the other way round').toEqual([3, 3]);
    expect([after(900, action), after(900, key)], 'two presses').toEqual([4, 5]);
    vi.advanceTimersByTime(900);
    expect(
      [after(0, action), after(200, action), after(100, key), after(200, key)],
      'two, one within the other',
    ).toEqual([6, 7, 7, 7]);
    stop();
  } finally {
    vi.useRealTimers();
  }
});
test('an action that the browser does not know keeps the others from nothing', () => {
  const { heard } = watched('MediaTrackPrevious', 'MediaTrackNext');
  handlers.get('nexttrack')?.();
  expect(heard).toEqual(['MediaTrackNext']);
});
test('when that is stopped, the silence ends and no button is taken any more', () => {
  const { stop } = watched('MediaTrackNext');
  stop();
  expect(played).toEqual(['plays', 'paused', 'gone']);
  expect(handlers.size).toBe(0);
});
