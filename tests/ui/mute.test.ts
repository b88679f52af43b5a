/** A microphone that was muted stays so: for that person, on this device, over a load of the page and a handover. */
import 'fake-indexeddb/auto';
import { set } from 'idb-keyval';
import { createRoot, createSignal } from 'solid-js';
import { beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import type { Voice } from '../../src/storage/voices.ts';
import type { Shop } from '../../src/ui/app.tsx';
import { muteBook } from '../../src/ui/hand-habits.ts';
import { createMute, startFor } from '../../src/ui/mute.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(() => set('muted', undefined));

const AS_LEFT = 'You left it muted: it hears nothing until you unmute it.';

/** What a page has to do with the microphone, freshly loaded, and what it did. */
async function load(voices: readonly Voice[] = []) {
  const [muted, setMuted] = createSignal(await muteBook.load());
  const did: string[] = [];
  const devices = {
    hearing: { mute: (why: string) => did.push(`mute: ${why}`) },
    start: (ear?: 'closed') => Promise.resolve(did.push(`start ${ear ?? 'open'}`)),
  } as unknown as Shop['devices'];
  const shop = { muted, setMuted, devices, voices: () => voices };
  const of = (name: string, isPractice = false) =>
    createRoot((dispose) => {
      onTestFinished(dispose);
      const [mechanic, takeOver] = createSignal(name);
      return { ...createMute(shop, mechanic, isPractice), takeOver };
    });
  return { did, shop, of };
}

test('is muted when the page comes up again, until it is unmuted', async () => {
  const first = await load();
  const before = first.of('A. Invented');
  await before.mute();
  expect([first.did, before.closedBecause()]).toEqual([['start open', 'mute: asked'], null]);
  // Another screen of the same page, and the page loaded again.
  expect(first.of('A. Invented').closedBecause()).toBe(AS_LEFT);
  const again = await load();
  const mute = again.of('A. Invented');
  expect(mute.closedBecause()).toBe(AS_LEFT);
  await mute.listen();
  expect([again.did, mute.closedBecause()]).toEqual([['start closed', 'start open'], null]);
  expect((await load()).of('A. Invented').closedBecause()).toBeNull();
});
test('is nobody else’s: it opens for who takes over, and closes for who left it muted', async () => {
  await (await load()).of('A. Invented').mute();
  const { did, of } = await load();
  const mute = of('B. Invented');
  mute.takeOver('A. Invented');
  expect(mute.closedBecause()).toBe(AS_LEFT);
  mute.takeOver('B. Invented');
  expect(mute.closedBecause()).toBeNull();
  expect(did).toEqual(['start open', 'start closed', 'start open']);
});
test('is not opened by the tap that begins a job either', async () => {
  await (await load()).of('A. Invented').mute();
  const { did, shop } = await load();
  startFor(shop, 'A. Invented', false);
  startFor(shop, 'B. Invented', false);
  expect(did).toEqual(['start closed', 'start open']);
});
test('whoever was not heard well enough begins with it closed, but in practice', async () => {
  const trials = Array.from({ length: 5 }, () => ({ asked: 'next', heard: 'back', confidence: 0.9, isRight: false }));
  const unheard = {
    name: 'A. Invented',
    noise: -50,
    speech: -20,
    isClipped: false,
    trials,
    checkedAt: new Date().toISOString(),
  };
  const { did, of } = await load([unheard]);
  const atWork = of('A. Invented');
  expect(atWork.closedBecause()).toMatch(/microphone check/);
  of('A. Invented', true);
  atWork.takeOver('B. Invented');
  expect(atWork.closedBecause()).toBeNull();
  expect(did).toEqual(['start closed', 'start open', 'start open']);
});
