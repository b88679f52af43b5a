import 'fake-indexeddb/auto';
import { set } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { loadSettings, saveSettings, type Settings } from '../../src/storage/settings.ts';

const DEFAULTS: Settings = {
  mechanic: '',
  second: '',
  voice: 'embedded',
  speed: 'normal',
  tones: true,
  practised: false,
};

describe('settings', () => {
  test('are the defaults at first', async () => expect(await loadSettings()).toEqual(DEFAULTS));
  test('are kept', async () => {
    const settings: Settings = {
      model: { name: 'small', sha256: 'ab', from: 'disk' },
      mechanic: 'Mechanic',
      second: 'Second person',
      voice: 'system',
      speed: 'faster',
      tones: false,
      practised: true,
    };
    await saveSettings(settings);
    expect(await loadSettings()).toEqual(settings);
  });
  test('that cannot be read are the defaults', async () => {
    await set('settings', { voice: 'opera' });
    expect(await loadSettings()).toEqual(DEFAULTS);
  });
});
