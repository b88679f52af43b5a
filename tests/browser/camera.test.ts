import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, inject, test } from 'vitest';
import type { GestureKind } from '../../src/gesture/gesture.ts';
import { verify } from '../../src/record/entry.ts';
import { installActingCamera, type ActingCamera, type Scene } from '../support/acting-camera.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, openBrowser, type Browser } from '../support/chromium.ts';
import { demoRing, RING_ORDER } from '../support/demo-ring.ts';
import { fakeCamera, writeFakeCamera } from '../support/fake-camera.ts';
import { clearFilm } from '../support/gesture-clips/film.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bothhands-camera-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

let browser: Browser;
afterEach(() => browser.close());

async function begin(procedure: object): Promise<AppPage> {
  const app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Second person').fill('B. Invented');
  const file = path.join(folder, 'procedure.json');
  await writeFile(file, JSON.stringify(procedure));
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
  return app;
}

const doStep = (number: number) =>
  ({ id: `step-${number}`, kind: 'do', title: `Step ${number}`, text: `Do number ${number}.` }) as const;
const sixSteps = { ...smallProcedure, steps: [1, 2, 3, 4, 5, 6].map(doStep) };

const camera = (app: AppPage) => app.page.locator('.camera');
const turnOn = (app: AppPage): Promise<void> => app.page.getByRole('button', { name: 'Turn the camera on' }).click();

/** Long enough for what is seen to be written and shown on a busy machine, in milliseconds. */
const SEEN_WITHIN = 6_000;
/** How often a person makes a gesture that was not seen. */
const TRIES = 3;

/** Makes a gesture until the screen shows what it leads to, as people do: one now and then is not seen. */
async function gesture(
  app: AppPage,
  acting: ActingCamera,
  kind: GestureKind,
  isDone: () => Promise<boolean>,
  shown = '.wanted',
): Promise<void> {
  for (let tried = 0; tried < TRIES; tried++) {
    await acting.make(app.page, kind);
    for (const end = Date.now() + SEEN_WITHIN; Date.now() < end; await app.page.waitForTimeout(50))
      if (await isDone()) return;
  }
  throw new Error(
    `A ${kind} was made ${TRIES} times and did nothing. It shows: ${await app.page.locator(shown).last().innerText()}`,
  );
}

const sides = (app: AppPage) => app.page.locator('.sides');

/** Makes a gesture, once all has been said, until it shows that about left and right. */
async function shows(app: AppPage, acting: ActingCamera, kind: GestureKind, words: string): Promise<void> {
  await app.listening();
  await gesture(app, acting, kind, () => sides(app).getByText(words).isVisible());
}

/** How many of the ten studs get a value before the camera: all would take minutes. */
const VALUED = process.env['BOTHHANDS_WHOLE_RING'] === undefined ? 1 : RING_ORDER.length;

const MOST_MS = 300_000 + 100_000 * VALUED;

test('the ring of ten studs is worked before the camera, without a word or a touch', { timeout: MOST_MS }, async () => {
  browser = await openBrowser(FAKE_DEVICES);
  // A quiet room: it tells when the app has said what it had to say.
  await installMicrophone(browser.context);
  const acting = await installActingCamera(browser.context);
  const app = await begin(await demoRing({ snugFirst: true }));
  // Nothing is watched that nobody asked for.
  expect(await camera(app).innerText()).toContain('Camera off');
  await turnOn(app);
  await camera(app).getByText('Camera watches').waitFor();

  /** What is asked is said to its end first: what comes sooner does nothing. */
  const answer = async (kind: GestureKind): Promise<void> => {
    await app.listening();
    const before = await app.wanted();
    await gesture(app, acting, kind, async () => (await app.wanted()) !== before);
  };
  const panel = app.page.locator('.switch-choices');
  const isCounted = (text: string, next: string) => async (): Promise<boolean> => {
    if (!(await panel.locator('output').isVisible())) return false;
    const [entered, offered] = [await panel.locator('output').innerText(), await panel.locator('.lit').innerText()];
    return entered === text && offered === next;
  };
  const enter = async (value: '11' | '12'): Promise<void> => {
    await app.listening();
    await gesture(app, acting, 'wave right', isCounted('–', '–'));
    await gesture(app, acting, 'wave right', isCounted('–', '1'));
    await gesture(app, acting, 'nod', isCounted('1', 'read it'));
    await gesture(app, acting, 'wave right', isCounted('1', '1'));
    if (value === '12') await gesture(app, acting, 'wave right', isCounted('1', '2'));
    await gesture(app, acting, 'nod', isCounted(value, 'read it'));
    const isReadBack = async (): Promise<boolean> => (await app.wanted()).includes('Is that correct?');
    await gesture(app, acting, 'nod', isReadBack);
  };

  // The nuts are started by hand; then a wave for each that is snug.
  await answer('nod');
  // Before this camera nobody has waved yet.
  await shows(app, acting, 'wave right', 'a wave to your right');
  await shows(app, acting, 'nod', 'Left and right are known');
  await answer('wave right');
  for (const _ of RING_ORDER) await answer('wave right');
  for (const at of RING_ORDER.slice(0, VALUED).keys()) {
    await enter(at === 0 ? '12' : '11');
    await answer('nod');
  }

  const entries = await app.entries();
  expect(verify(entries).kind).toBe('intact');
  expect(ofKind(entries, 'fastener done').map(({ body }) => body.fastener)).toEqual(RING_ORDER);
  const captured = ofKind(entries, 'reading captured').map(({ body }) => [body.fastener, body.reading.value]);
  expect(captured).toEqual(RING_ORDER.slice(0, VALUED).map((stud, at) => [stud, at === 0 ? '12' : '11']));
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(VALUED);
  expect(ofKind(entries, 'refused')).toEqual([]);
  const worked = entries.slice(entries.findIndex(({ body }) => body.kind === 'point settled'));
  const answers = worked.filter(({ source }) => source !== 'program');
  expect(new Set(answers.map(({ source }) => source))).toEqual(new Set(['gesture']));
  for (const { heard } of answers.filter(({ body }) => body.kind !== 'reading captured'))
    expect(Number(heard?.words[0]?.confidence)).toBeGreaterThan(0);

  await app.page.getByRole('button', { name: 'Turn the camera off' }).click();
  expect(await camera(app).innerText()).toContain('Camera off');
});

describe('what is wrong with the camera is said, and the rest goes on', () => {
  /** A pedal does what it does without any camera; where the covered lens had work stand by, it goes on. */
  async function goesOn(app: AppPage): Promise<void> {
    const before = await app.wanted();
    await app.press('PageDown');
    expect(await app.wanted()).not.toBe(before);
  }

  test.each([
    // A camera is there, but nobody says yes to the question.
    ['refused', ['--use-fake-device-for-media-stream'], 'does not let this page use the camera'],
    ['absent', ['--use-fake-ui-for-media-stream'], 'No camera was found'],
  ])('%s', async (_, args, words) => {
    browser = await openBrowser(args);
    const app = await begin(sixSteps);
    await turnOn(app);
    await camera(app).getByText(words).waitFor();
    await goesOn(app);
  });

  test('in use by another program, and taken up when it is asked for again', async () => {
    browser = await openBrowser(FAKE_DEVICES);
    // What Chromium answers then: no second program can hold a made-up camera.
    await browser.context.addInitScript(() => {
      const { mediaDevices } = navigator;
      const original = mediaDevices.getUserMedia.bind(mediaDevices);
      mediaDevices.getUserMedia = (constraints) => {
        if (!constraints?.video) return original(constraints);
        mediaDevices.getUserMedia = original;
        return Promise.reject(new DOMException('Could not start video source', 'NotReadableError'));
      };
    });
    const app = await begin(sixSteps);
    await turnOn(app);
    await camera(app).getByText('another program is using it').waitFor();
    await goesOn(app);
    await camera(app).getByText('Camera watches').waitFor();
  });

  test('covered, dark, standing still, silent, slow: each by its own words, and it sees again', async () => {
    browser = await openBrowser(FAKE_DEVICES);
    const acting = await installActingCamera(browser.context);
    const app = await begin(sixSteps);
    await turnOn(app);
    const watches = () => camera(app).getByText('Camera watches').waitFor();
    await watches();
    const scenes = [
      ['covered', 'The lens is covered'],
      ['black', 'The picture is black'],
      ['frozen', 'The picture stands still'],
      ['off', 'The camera sends no pictures'],
    ] as const satisfies readonly (readonly [Scene, string])[];
    for (const [scene, words] of scenes) {
      await acting.show(app.page, scene);
      await camera(app).getByText(words).waitFor();
      await goesOn(app);
      await acting.show(app.page, 'free');
      await watches();
    }
    await acting.pace(app.page, 3);
    await camera(app).getByText('Too few pictures a second').waitFor();
    await goesOn(app);
  });

  test('five pictures a second: too few for a wave, which is said; a sleeve over the lens still asks to wait', async () => {
    const film = path.join(folder, 'five.y4m');
    writeFakeCamera(clearFilm(17, ['wave right', 'cover'], 3, 5), film);
    browser = await openBrowser([...FAKE_DEVICES, fakeCamera(film)]);
    const app = await begin(sixSteps);
    await turnOn(app);
    await camera(app).getByText('only a covered lens is seen').waitFor();
    await app.page.getByText('Standing by').first().waitFor();
    expect(ofKind(await app.entries(), 'stood by')[0]?.source).toBe('gesture');
    expect(ofKind(await app.entries(), 'step done')).toEqual([]);
    await goesOn(app);
  });

  test('unplugged while it watches, and taken up again when it is back', async () => {
    browser = await openBrowser(['--use-fake-device-for-media-stream']);
    const { origin } = new URL(inject('appUrl'));
    await browser.context.grantPermissions(['camera'], { origin });
    const app = await begin(sixSteps);
    await turnOn(app);
    await camera(app).getByText('Camera watches').waitFor();
    // Taking the permission away ends the track, as taking the plug out does.
    await browser.context.clearPermissions();
    await camera(app).getByText('The camera was disconnected').waitFor();
    await goesOn(app);
    await browser.context.grantPermissions(['camera'], { origin });
    await camera(app).getByText('Camera watches').waitFor();
  });

  test('upside down: the first wave is asked about, a shake turns it, a nod keeps that, and it holds', async () => {
    browser = await openBrowser(FAKE_DEVICES);
    await installMicrophone(browser.context);
    const acting = await installActingCamera(browser.context, { upsideDown: true });
    const app = await begin(sixSteps);
    await turnOn(app);
    await camera(app).getByText('Camera watches').waitFor();
    const written = (await app.entries()).length;
    await shows(app, acting, 'wave right', 'a wave to your left');
    await shows(app, acting, 'shake', 'turned upside down');
    await shows(app, acting, 'wave right', 'a wave to your right');
    await shows(app, acting, 'nod', 'Left and right are known');
    expect(await app.entries(), 'none of it is of the job').toHaveLength(written);

    await app.page.getByRole('link', { name: 'Pedals, gloves, gestures' }).click();
    expect(await app.page.getByLabel('hangs upside down').isChecked()).toBe(true);
    expect(await app.page.getByLabel('gives its picture as a mirror does').isChecked()).toBe(false);
    await turnOn(app);
    await camera(app).getByText('Camera watches').waitFor();
    const isRight = app.page.locator('.tried').last().getByText('wave right');
    await gesture(app, acting, 'wave right', () => isRight.isVisible(), '.tried');
  });
});
