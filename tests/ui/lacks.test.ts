import { describe, expect, test } from 'vitest';
import { lackingIn, PARTS, type Browser } from '../../src/ui/lacks.ts';

const whole = (): Record<string, unknown> => ({
  isSecureContext: true,
  indexedDB: {},
  crypto: { subtle: {} },
  WebAssembly: {},
  Worker: class {},
  AudioWorkletNode: class {},
  AudioContext: class {},
  BroadcastChannel: class {},
  OffscreenCanvas: class {},
  navigator: {
    locks: {},
    mediaDevices: { getUserMedia: () => undefined },
    serviceWorker: {},
    wakeLock: {},
    storage: { persist: () => undefined },
  },
});
const names = (browser: Browser): readonly string[] => lackingIn(browser).map(({ name }) => name);

describe('what a browser lacks is said by name', () => {
  test('nothing, where all is there', () => expect(names(whole())).toEqual([]));

  test('everything, where nothing is there', () => expect(names({})).toEqual(PARTS.map(({ name }) => name)));

  test.each([
    ['indexedDB', 'IndexedDB'],
    ['WebAssembly', 'WebAssembly'],
    ['AudioWorkletNode', 'AudioWorklet'],
    ['BroadcastChannel', 'BroadcastChannel'],
  ])('without %s: %s, and nothing else', (key, name) => {
    const { [key]: _, ...rest } = whole();
    expect(names(rest)).toEqual([name]);
  });

  test('a page that came over plain http has neither microphone nor locks, and is told why first', () => {
    const { crypto: _, ...rest } = whole();
    const lacking = lackingIn({ ...rest, isSecureContext: false, navigator: {} });
    expect(lacking[0]).toMatchObject({ name: 'secure context', isEssential: true });
    expect(lacking.map(({ name }) => name)).toContain('getUserMedia');
  });

  test('a part whose getter throws is not there', () => {
    const browser = Object.defineProperty({ ...whole() }, 'indexedDB', {
      get: () => {
        throw new Error('SecurityError');
      },
    });
    expect(names(browser)).toEqual(['IndexedDB']);
  });

  test('each says what does not work, in whole sentences', () => {
    for (const { without } of PARTS) expect(without).toMatch(/^[A-Z].*\.$/);
  });
});
