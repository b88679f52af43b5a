import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { cameraFailure } from '../../src/gesture/camera-failures.ts';
import type { CameraState } from '../../src/gesture/camera.ts';
import { createCameraReport } from '../../src/ui/camera-report.ts';

const free: CameraState = { kind: 'watching', trouble: null };
const covered: CameraState = { kind: 'watching', trouble: 'covered' };
const slow: CameraState = { kind: 'watching', trouble: 'slow' };
const lost: CameraState = { kind: 'failed', failure: cameraFailure('camera lost') };
const refused: CameraState = { kind: 'failed', failure: cameraFailure('camera refused') };

let said: string[];
let report: (state: CameraState) => void;
beforeEach(() => {
  vi.useFakeTimers();
  said = [];
  report = createCameraReport((text) => said.push(text));
});
afterEach(() => void vi.useRealTimers());
const wait = (ms: number): void => void vi.advanceTimersByTime(ms);

test('a camera that is off or sees is nothing to talk about', () => {
  report({ kind: 'off' });
  report({ kind: 'opening' });
  report(free);
  wait(10_000);
  report({ kind: 'off' });
  expect(said).toEqual([]);
});
test('a refused one is said at once', () => {
  report({ kind: 'opening' });
  report(refused);
  expect(said).toEqual(['The camera was refused. Go on by voice, touch or keys.']);
});
test('a hand before the lens that goes again is not said', () => {
  report(free);
  report(covered);
  wait(2000);
  report(free);
  wait(10_000);
  expect(said).toEqual([]);
});
test.each([
  [covered, 'The camera is covered.'],
  [slow, 'The camera is too slow: only a covered lens is seen.'],
  [lost, 'The camera is lost.'],
])('what lasts is said once, and so is its end', (trouble, words) => {
  report(free);
  report(trouble);
  wait(3000);
  report(trouble);
  wait(30_000);
  report(free);
  expect(said).toEqual([`${words} Go on by voice, touch or keys.`, 'The camera sees again.']);
});
test('another trouble is said as well', () => {
  report(covered);
  wait(3000);
  report(lost);
  wait(3000);
  expect(said.map((text) => text.split('. ')[0])).toEqual(['The camera is covered', 'The camera is lost']);
});
test('what somebody turned off is not waited for', () => {
  report(lost);
  report({ kind: 'off' });
  wait(10_000);
  report(free);
  expect(said).toEqual([]);
});
