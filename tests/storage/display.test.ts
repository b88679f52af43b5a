import 'fake-indexeddb/auto';
import { set } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { DISPLAY_AT_FIRST, loadDisplay, saveDisplay, type DisplayChoice } from '../../src/storage/display.ts';
import { DISTANCE } from '../../src/ui/view/legible.ts';

describe('how the screen is looked at', () => {
  test('is the default at first: from three metres, not measured, as the device has it', async () => {
    expect(await loadDisplay()).toEqual(DISPLAY_AT_FIRST);
    expect(DISPLAY_AT_FIRST.distance).toBe(DISTANCE.default);
  });
  test('is kept', async () => {
    const choice: DisplayChoice = { distance: DISTANCE.most, pixelsPerMm: 3.61, theme: 'bright sun' };
    await saveDisplay(choice);
    expect(await loadDisplay()).toEqual(choice);
  });
  test.each([
    { distance: 50, pixelsPerMm: null, theme: 'light' },
    { distance: 3, pixelsPerMm: 0, theme: 'light' },
    { distance: 3, pixelsPerMm: null, theme: 'purple' },
    'large',
  ])('that no screen can have is the default: %j', async (kept) => {
    await set('display', kept);
    expect(await loadDisplay()).toEqual(DISPLAY_AT_FIRST);
  });
});
