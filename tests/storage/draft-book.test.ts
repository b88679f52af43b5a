import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { openDraftBook } from '../../src/storage/draft-book.ts';

test('a draft is kept in place of the last one, and found again by whoever opens the page next', async () => {
  await openDraftBook().keep('{"title": ""}');
  await openDraftBook().keep('half of a fil');
  expect(await openDraftBook().read()).toBe('half of a fil');
  await openDraftBook().forget();
  expect(await openDraftBook().read()).toBeNull();
});
