import { expect, test } from 'vitest';
import type { Devices } from '../../src/ui/devices.ts';
import { createMicrophoneCheck } from '../../src/ui/microphone-check.ts';

// The check itself runs in tests/browser, with a real microphone and a real ear. This is about when it does not begin.

/** Devices whose start waits for the answer of a person. */
function devicesThatAsk({ elsewhere }: { readonly elsewhere: boolean }) {
  const said: string[] = [];
  let answer = (): void => undefined;
  const devices: Pick<Devices, 'start' | 'announce' | 'elsewhere'> & { readonly hearing: object } = {
    hearing: { setPhrases: () => [] },
    start: () => new Promise((resolve) => (answer = resolve)),
    announce: (texts) => {
      said.push(...texts);
      return new Promise(() => undefined);
    },
    elsewhere: () => elsewhere,
  };
  return { devices: devices as unknown as Devices, said, answer: () => answer() };
}

test('who leaves while the browser asks for the microphone is told nothing on the next screen', async () => {
  const { devices, said, answer } = devicesThatAsk({ elsewhere: false });
  const check = createMicrophoneCheck(devices, 'A. Invented');
  const over = check.begin();
  check.leave();
  answer();
  expect(await over).toBeNull();
  expect(said).toEqual([]);
});

test('where another window has the ear it ends at once, and says nothing into its microphone', async () => {
  const { devices, said, answer } = devicesThatAsk({ elsewhere: true });
  const check = createMicrophoneCheck(devices, 'A. Invented');
  const over = check.begin();
  answer();
  expect(await over).toBeNull();
  expect(check.stage()).toEqual({ kind: 'over', voice: null });
  expect(said).toEqual([]);
});
