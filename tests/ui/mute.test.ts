/** A microphone that was muted stays so: for that person, on this device, over a load of the page. */
import 'fake-indexeddb/auto';
import { set } from 'idb-keyval';
import { createSignal } from 'solid-js';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Shop } from '../../src/ui/app.tsx';
import { muteBook } from '../../src/ui/hand-habits.ts';
import { createMute } from '../../src/ui/mute.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(() => set('muted', undefined));

/** What a page has to do with the microphone, freshly loaded. */
async function load() {
  const [muted, setMuted] = createSignal(await muteBook.load());
  const did: string[] = [];
  const devices = {
    hearing: { mute: (why: string) => did.push(`mute: ${why}`) },
    start: () => Promise.resolve(did.push('start')),
  } as unknown as Shop['devices'];
  return { did, of: (name: string) => createMute({ muted, setMuted, devices }, () => name) };
}

test('is muted when the page comes up again, until it is unmuted', async () => {
  const first = await load();
  expect(first.of('A. Invented').asLeft()).toBe(false);
  await first.of('A. Invented').mute();
  expect(first.did).toEqual(['mute: asked']);
  // Another screen of the same page, and the page loaded again.
  expect(first.of('A. Invented').asLeft()).toBe(true);
  const again = await load();
  expect(again.of('A. Invented').asLeft()).toBe(true);
  const mute = again.of('A. Invented');
  await mute.listen();
  expect([again.did, mute.asLeft()]).toEqual([['start'], false]);
  expect((await load()).of('A. Invented').asLeft()).toBe(false);
});
test('is nobody else’s', async () => {
  await (await load()).of('A. Invented').mute();
  expect((await load()).of('B. Invented').asLeft()).toBe(false);
});
