import { expect, test } from 'vitest';
import { CAMERA_AT_FIRST, changedOver, readCameraHabit, unchecked, watchedAs } from '../../src/gesture/camera-habit.ts';
import { passGate } from '../../src/gesture/gate.ts';

const right = { left: 0.5, top: 0, width: 0.5, height: 1 };

test.each([
  ['the first', CAMERA_AT_FIRST],
  ['a camera that hangs head down', { ...CAMERA_AT_FIRST, upsideDown: true, mirrored: false }],
  ['checked on a camera', { ...CAMERA_AT_FIRST, mirrored: true, checkedOn: 'one' }],
  ['a stricter nod in the right half', { strictness: { nod: 0.2 }, region: right }],
])('how a person is watched is taken as it was kept: %s', (_, habit) =>
  expect(readCameraHabit(JSON.parse(JSON.stringify(habit)))).toEqual({ kind: 'valid', habit }),
);
test.each<[string, unknown]>([
  ['nothing', null],
  ['less than is asked of anybody', { strictness: { nod: -0.1 }, region: right }],
  ['an unknown gesture', { strictness: { wink: 0.1 }, region: right }],
  ['a part outside the picture', { strictness: {}, region: { ...right, width: 0.6 } }],
  ['too small a part', { strictness: {}, region: { ...right, height: 0.1 } }],
  ['checked on no camera that has a name', { ...CAMERA_AT_FIRST, checkedOn: 1 }],
  ['neither up nor down', { ...CAMERA_AT_FIRST, upsideDown: 'a little' }],
  ['no number', { strictness: {}, region: { ...right, left: NaN } }],
])('and is refused where it is none: %s', (_, raw) => expect(readCameraHabit(raw).kind).toBe('faulty'));
test('and that reads the same whatever else of the program is loaded', async () => {
  const alone = readCameraHabit(null);
  await import('../../src/record/entry.ts');
  expect(readCameraHabit(null)).toEqual(alone);
});

test('who is watched more strictly must nod more surely', () => {
  const nod = { kind: 'nod', confidence: 0.92 } as const;
  expect(passGate(nod, 'value').kind).toBe('passed');
  expect(passGate(nod, 'value', { nod: 0.3 }).kind).toBe('unsure');
});

test('what was kept before a camera could hang head down is watched as it was', () =>
  expect(watchedAs(CAMERA_AT_FIRST)).toEqual({ region: CAMERA_AT_FIRST.region, upsideDown: false, mirrored: false }));

test('a picture turned over twice is as it was, a mirror stays one, and each time left and right are to be checked again', () => {
  const habit = { strictness: { nod: 0.2 }, region: right, upsideDown: true, mirrored: true, checkedOn: 'one' };
  expect(changedOver(habit)).toEqual({ ...unchecked(habit), upsideDown: false });
  expect(changedOver(changedOver(habit))).toEqual(unchecked(habit));
  expect(changedOver(CAMERA_AT_FIRST)).toEqual({ ...CAMERA_AT_FIRST, upsideDown: true });
});
