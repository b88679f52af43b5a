import 'fake-indexeddb/auto';
import { set } from 'idb-keyval';
import { expect, test } from 'vitest';
import { openDraftBook } from '../../src/storage/draft-book.ts';
import { createStrictStore } from '../../src/storage/strict-store.ts';

test('a draft is kept in place of the last one, sound or not, and found again by whoever opens the page next', async () => {
  expect(await openDraftBook().read()).toBeNull();
  await openDraftBook().keep({ text: '{"title": ""}', leftOut: null });
  const leftOut = { file: 'm.xml', items: [{ place: 'line 4', what: 'the figure is not taken over' }] };
  await openDraftBook().keep({ text: 'half of a fil', leftOut });
  expect(await openDraftBook().read()).toEqual({ text: 'half of a fil', leftOut });
});

test('what is no draft is no draft', async () => {
  await set('procedure', { text: 4 }, createStrictStore('bothhands-drafts', 'drafts'));
  expect(await openDraftBook().read()).toBeNull();
});
