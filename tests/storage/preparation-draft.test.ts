import 'fake-indexeddb/auto';
import { get, set } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { enteredNothing } from '../../src/session/preparation/entered.ts';
import { keepDraft, loadDraft, type PreparationDraft } from '../../src/storage/preparation-draft.ts';

const draft: PreparationDraft = {
  text: '{}',
  file: 'small.json',
  sound: 'not agreed',
  entered: {
    ...enteredNothing('Mechanic', ''),
    conditions: new Map([['wet', true]]),
    calibrations: new Map([['constructor', '2027-01-31']]),
    handling: 'sling or hoist',
    hazards: new Set(['drain/0']),
  },
};

describe('a preparation under way', () => {
  test('is none at first', async () => expect(await loadDraft()).toBeNull());
  test('is kept as it was entered, and is gone when it is over', async () => {
    await keepDraft(draft);
    expect(await loadDraft()).toEqual(draft);
    await keepDraft(null);
    expect(await loadDraft()).toBeNull();
  });
  test.each([
    ['a way of carrying that is none', { ...draft, entered: { ...draft.entered, handling: 'a crane' } }],
    ['a list in place of a map', { ...draft, entered: { ...draft.entered, expiries: [] } }],
    ['a field too many', { ...draft, more: 1 }],
    ['no text', { ...draft, text: undefined }],
  ])('that cannot be read is none: %s', async (_, kept) => {
    await keepDraft(draft);
    expect(await get('preparation')).toBeDefined();
    await set('preparation', kept);
    expect(await loadDraft()).toBeNull();
  });
});
