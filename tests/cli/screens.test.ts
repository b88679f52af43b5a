import { describe, expect, test } from 'vitest';
import { optionsOf, SIZES } from '../../src/cli/screens/options.ts';
import { showcase } from '../../src/cli/screens/showcase.ts';
import { STATIONS } from '../../src/cli/screens/stations.ts';
import { loadProcedure } from '../../src/procedure/procedure.ts';

describe('npm run screens', () => {
  test('takes every theme at every size unless something else is said', () => {
    expect(optionsOf(['--out', 'pictures'])).toMatchObject({
      out: 'pictures',
      themes: ['light', 'dark', 'bright sun'],
    });
    expect(optionsOf(['--out', 'a'])).toHaveProperty('sizes.length', SIZES.length);
    expect(optionsOf(['--out', 'a', '--size', '640x480', '--theme', 'dark'])).toMatchObject({
      sizes: [{ width: 640, height: 480 }],
      themes: ['dark'],
    });
  });
  test.each([
    [[], /--out/],
    [['--out', 'a', '--size', 'large'], /--size large/],
    [['--out', 'a', '--theme', 'pink'], /--theme pink/],
    [['--out', 'a', '--colour'], /colour/],
  ])('says what is wrong with %j', (args, why) => {
    expect(optionsOf(args)).toHaveProperty('trouble', expect.stringMatching(why));
  });
  test('walks through a procedure that is one, and names each picture once', () => {
    expect(loadProcedure(JSON.stringify(showcase))).toMatchObject({ kind: 'loaded' });
    expect(new Set(STATIONS.map(({ name }) => name)).size).toBe(STATIONS.length);
  });
});
