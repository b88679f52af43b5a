import { afterEach, expect, test } from 'vitest';
import { said, useWords } from '../../src/words/said.ts';
import { camera } from '../../src/words/camera.ts';
import { cameraWords } from '../../src/ui/camera-words.ts';
import { touchedWords } from '../../src/ui/touch-words.ts';

afterEach(() => useWords({}));

const other: typeof camera = { ...camera, off: '○ Kamera aus', failed: (sentence) => `✕ Kamera: ${sentence}` };

test('words are English until another language is chosen', () => {
  expect(cameraWords({ kind: 'off' })).toBe('○ Camera off');
  useWords({ camera: other });
  expect(cameraWords({ kind: 'off' })).toBe('○ Kamera aus');
});

test('what the other language lacks stays English: a part, or one of its words', () => {
  useWords({ camera: { ...camera, off: '○ Kamera aus', opening: undefined as unknown as string } });
  expect(cameraWords({ kind: 'off' })).toBe('○ Kamera aus');
  expect(cameraWords({ kind: 'opening' })).toBe('… Camera: allow it where the browser asks');
  expect(touchedWords({ kind: 'rejected', why: 'palm', from: 0, to: 0, x: 0, y: 0 })).toBe(
    'Too wide: a palm or a forearm. Not taken.',
  );
});

test('a part can be spread into that of another language', () => {
  expect(Object.keys(said('camera', { one: '1', two: '2' }))).toEqual(['one', 'two']);
});
