import 'fake-indexeddb/auto';
import { get, set } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { enteredNothing } from '../../src/session/preparation/entered.ts';
import { keepDraft, loadDraft, withEntered, type PreparationDraft } from '../../src/storage/preparation-draft.ts';

const TODAY = '2026-11-26';

const draft: PreparationDraft = {
  text: '{}',
  file: 'small.json',
  sound: 'agreed',
  day: TODAY,
  entered: {
    ...enteredNothing('Mechanic', ''),
    conditions: new Map([['wet', true]]),
    calibrations: new Map([['constructor', '2027-01-31']]),
    handling: 'sling or hoist',
    isCurrentData: true,
    hazards: new Set(['drain/0']),
  },
};

describe('a preparation under way', () => {
  test('is none at first', async () => expect(await loadDraft(TODAY)).toBeNull());
  test('is kept as it was entered, and is gone when it is over', async () => {
    await keepDraft(draft);
    expect(await loadDraft(TODAY)).toEqual(draft);
    await keepDraft(null);
    expect(await loadDraft(TODAY)).toBeNull();
  });
  test('of another day keeps what was typed; what somebody gave their word for is asked again', async () => {
    await keepDraft(draft);
    const next = await loadDraft('2026-11-27');
    expect(next).toEqual({
      ...draft,
      day: '2026-11-27',
      sound: 'not agreed',
      entered: { ...draft.entered, isCurrentData: false, hazards: new Set() },
    });
    await keepDraft(null);
  });
  test.each(['mechanic', 'second', 'helpers'] as const)(
    'under another name in %s: who is named now has agreed to no sound, all else stays',
    (who) => {
      const after = withEntered(draft, { [who]: 'Somebody Else' });
      expect(after).toEqual({ ...draft, sound: 'not agreed', entered: { ...draft.entered, [who]: 'Somebody Else' } });
      expect(withEntered(after, { [who]: draft.entered[who] }).sound).toBe('not agreed');
    },
  );
  test('under the same names what was agreed stays agreed', () => {
    const { mechanic, second } = draft.entered;
    expect(withEntered(draft, { mechanic, second, capacity: '9' }).sound).toBe('agreed');
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
    expect(await loadDraft(TODAY)).toBeNull();
  });
});
