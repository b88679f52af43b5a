import 'fake-indexeddb/auto';
import { get, set } from 'idb-keyval';
import { beforeEach, expect, test, vi } from 'vitest';
import { forgetVoice, keepVoice, loadVoices, voiceOf, type Voice } from '../../src/storage/voices.ts';

const voice = (name: string, right = true): Voice => ({
  name,
  checkedAt: '2026-01-02T03:04:05.000Z',
  noise: -60,
  speech: -30,
  isClipped: false,
  trials: [{ asked: 'one two five', heard: 'one two five', confidence: 0.9, isRight: right }],
});

beforeEach(() => set('voices', undefined));

test('there are none at first', async () => expect(await loadVoices()).toEqual([]));

test('a voice is kept in place of the same person’s last one, whatever the capitals', async () => {
  await keepVoice(voice('B. Invented'));
  await keepVoice(voice('A. Invented', false));
  expect(await keepVoice(voice('a. invented'))).toEqual([voice('a. invented'), voice('B. Invented')]);
  expect(await loadVoices()).toEqual([voice('a. invented'), voice('B. Invented')]);
  expect(voiceOf(await loadVoices(), 'A. INVENTED')).toEqual(voice('a. invented'));
});

test('two that are kept at once are both kept', async () => {
  await Promise.all([keepVoice(voice('A. Invented')), keepVoice(voice('B. Invented'))]);
  expect(await loadVoices()).toHaveLength(2);
});

test('a voice is deleted from the device, and no other', async () => {
  await keepVoice(voice('A. Invented'));
  await keepVoice(voice('B. Invented'));
  expect(await forgetVoice('A. Invented')).toEqual([voice('B. Invented')]);
  expect(JSON.stringify(await get('voices'))).not.toContain('A. Invented');
});

test('where it cannot be deleted, that is told, and nobody else is deleted in its place', async () => {
  await keepVoice(voice('A. Invented'));
  await keepVoice(voice('B. Invented'));
  const broken = vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementationOnce(() => {
    throw new DOMException('The store cannot be read.', 'UnknownError');
  });
  await expect(forgetVoice('A. Invented')).rejects.toThrow('cannot be read');
  broken.mockRestore();
  expect(await loadVoices()).toHaveLength(2);
});

test('what cannot be read is left out', async () => {
  const [trial] = voice('C').trials;
  const faulty = [{ ...voice('C'), noise: NaN }, { ...voice('D'), trials: [{ ...trial, confidence: 2 }] }, null, 'E'];
  await set('voices', [...faulty, voice('A. Invented')]);
  expect(await loadVoices()).toEqual([voice('A. Invented')]);
  await set('voices', { name: 'A' });
  expect(await loadVoices()).toEqual([]);
});

test('a check that cannot be kept counts all the same, until the page is left', async () => {
  const broken = vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementation(() => {
    throw new DOMException('The store cannot be read.', 'UnknownError');
  });
  expect(await keepVoice(voice('A. Invented'))).toEqual([voice('A. Invented')]);
  expect(broken).toHaveBeenCalled();
  broken.mockRestore();
});
