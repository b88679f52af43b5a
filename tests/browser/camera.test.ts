import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, inject, test } from 'vitest';
import { verify } from '../../src/record/entry.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, fakeMicrophone, openBrowser, type Browser } from '../support/chromium.ts';
import { fakeCamera, writeFakeCamera } from '../support/fake-camera.ts';
import { clearFilm } from '../support/gesture-clips/film.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { writeWav } from '../support/wav.ts';

// Chromium's own made-up camera plays a drawn film, again and again, whatever the app does; nobody says or taps anything.
const [fit, tighten] = smallProcedure.steps;
const ring = {
  ...smallProcedure,
  patterns: [{ ...smallProcedure.patterns[0], layout: { shape: 'ring', count: 4 }, order: { kind: 'crosswise' } }],
  steps: [
    { ...fit, hazards: [{ signal: 'warning', consequence: 'person', text: 'Mind the edge.' }] },
    { ...tighten, passes: [{ kind: 'snug', name: 'snug' }] },
    {
      id: 'count',
      kind: 'check',
      title: 'Count',
      text: 'Are all bolts in?',
      outcomes: [
        { id: 'affirm', text: 'All in.', then: 'go on' },
        { id: 'negative', text: 'Find it.', then: 'stay' },
      ],
    },
  ],
};

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bothhands-camera-'));
  await writeFile(path.join(folder, 'ring.json'), JSON.stringify(ring));
  await writeWav(path.join(folder, 'silence.wav'), { samples: new Float32Array(16_000), rate: 16_000 });
  // The rest is for what is said between two gestures: an answer to what is not said to its end does nothing.
  const gestures = ['nod', 'wave right', 'wave right', 'wave right'] as const;
  writeFakeCamera(clearFilm(8, gestures, 4), path.join(folder, 'gestures.y4m'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

let browser: Browser;
afterEach(() => browser.close());

async function begin(args: readonly string[], before?: () => void): Promise<AppPage> {
  browser = await openBrowser(args);
  if (before) await browser.context.addInitScript(before);
  const app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Open a procedure file').setInputFiles(path.join(folder, 'ring.json'));
  await passPreparation(app.page);
  return app;
}

const camera = (app: AppPage) => app.page.locator('.camera');
const turnOn = (app: AppPage): Promise<void> => app.page.getByRole('button', { name: 'Turn the camera on' }).click();

test('a pass of a ring is worked before the camera, without a word or a touch', async () => {
  const app = await begin([
    ...FAKE_DEVICES,
    fakeMicrophone(path.join(folder, 'silence.wav')),
    fakeCamera(path.join(folder, 'gestures.y4m')),
  ]);
  // Nothing is watched that nobody asked for.
  expect(await camera(app).innerText()).toContain('Camera off');
  await turnOn(app);
  await camera(app).getByText('Camera watches').waitFor();
  await app.page.locator('.wanted').getByText('All steps are done.').waitFor({ timeout: 120_000 });

  const entries = await app.entries();
  expect(verify(entries).kind).toBe('intact');
  expect(ofKind(entries, 'fastener done').map(({ body }) => body.fastener)).toEqual([1, 3, 2, 4]);
  const answers = entries.filter(({ source }) => source !== 'program' && source !== 'touch');
  expect(answers.map(({ source }) => source)).toEqual(answers.map(() => 'gesture'));
  expect(answers.map(({ heard }) => heard?.text)).toEqual(expect.arrayContaining(['nod', 'wave right']));
  for (const { heard } of answers) expect(Number(heard?.words[0]?.confidence)).toBeGreaterThan(0);

  await app.page.getByRole('button', { name: 'Turn the camera off' }).click();
  expect(await camera(app).innerText()).toContain('Camera off');
});

describe('what is wrong with the camera is said, and the rest goes on', () => {
  test('refused', async () => {
    // A camera is there, but nobody says yes to the question.
    const app = await begin(['--use-fake-device-for-media-stream']);
    await turnOn(app);
    await camera(app).getByText('does not let this page use the camera').waitFor();
    await app.tap('Affirm');
    await app.tap('Next');
    expect(ofKind(await app.entries(), 'fastener done')).toEqual([]);
    await app.press('PageDown');
    expect(ofKind(await app.entries(), 'fastener done')).toHaveLength(1);
  });
});
