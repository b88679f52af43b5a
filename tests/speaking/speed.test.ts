import { expect, test } from 'vitest';
import { SPEEDS, STRETCH } from '../../src/speaking/speed.ts';
import { durationMs } from '../../src/speaking/sound.ts';
import { synthesise } from '../support/speech.ts';

test('the faster the voice, the shorter what it says', async () => {
  const sounds = SPEEDS.map((speed) =>
    synthesise('Stud one zero. Pass two.', { voice: 'kal16', stretch: STRETCH[speed] }),
  );
  const lengths = (await Promise.all(sounds)).map(durationMs);
  expect(lengths).toEqual(lengths.toSorted((a, b) => b - a));
  expect(new Set(lengths).size).toBe(SPEEDS.length);
});
