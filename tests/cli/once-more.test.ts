import { expect, test } from 'vitest';
import { filesToRunAgain, type Ran } from '../../src/cli/once-more.ts';

const ran = (moduleId: string, ...failed: readonly (number | undefined)[]): Ran => ({
  moduleId,
  ok: () => failed.length === 0,
  children: { allTests: () => failed.map((retry) => ({ options: { retry } })) },
});

test('what failed is run once more, and no other', () => {
  expect(filesToRunAgain([ran('good'), ran('bad', 1), ran('worse', 1, undefined)], [])).toEqual(['bad', 'worse']);
});
test('nothing is, where a test failed that must hold each time', () => {
  expect(filesToRunAgain([ran('bad', 1), ran('killed', 1, 0)], [])).toEqual([]);
});
test('nothing is, where an error belonged to no test: no second run would show it', () => {
  expect(filesToRunAgain([ran('bad', 1)], [new Error('A timer ran on.')])).toEqual([]);
});
