import { DEMO_SESSION_FILE } from '../demo-session.ts';
import { showcase } from './showcase.ts';
import type { Walker } from './walker.ts';

export interface Station {
  readonly name: string;
  /** From the station before. @returns the page to look at, where it is another one than the walker's */
  readonly go: (
    walker: Walker,
  ) => Promise<void | { readonly page: Walker['page']; readonly leave: () => Promise<void> }>;
  /** The whole page is in the picture, not only what is in the window. */
  readonly isLong?: true;
  readonly media?: 'print';
}

/** Every screen of the app, and the work screen in each of its main states, in the order of one walk. */
export const STATIONS: readonly Station[] = [
  { name: 'start', isLong: true, go: async ({ page, url }) => void (await page.goto(url)) },
  { name: 'display', isLong: true, go: (walker) => walker.at('/display') },
  { name: 'check', go: (walker) => walker.at('/check/A.%20Invented') },
  {
    name: 'teach',
    isLong: true,
    go: async (walker) => {
      await walker.at('/teach');
      await walker.page.getByRole('button', { name: 'Teach one switch' }).click();
      await walker.page.keyboard.press('PageDown');
      await walker.page.getByText('Kept on this device for anybody').waitFor();
    },
  },
  {
    name: 'editor',
    isLong: true,
    go: async (walker) => {
      // What was taught would change the work screen.
      await walker.page.getByRole('button', { name: 'Forget it' }).click();
      await walker.at('/editor');
      await walker.page.getByLabel('Open a procedure').setInputFiles('demo-data/fire-boat-pump-cover.json');
      await walker.page.getByText('is open.').waitFor();
    },
  },
  {
    name: 'prepare',
    isLong: true,
    go: async ({ page, url }) => {
      await page.goto(url);
      await page.getByLabel('Mechanic').fill('A. Invented');
      await page.getByLabel('Second person').fill('B. Invented');
      const buffer = Buffer.from(JSON.stringify(showcase));
      const file = { name: 'showcase.json', mimeType: 'application/json', buffer };
      await page.getByLabel('Open a procedure file').setInputFiles(file);
      await page.locator('main.prepare').waitFor();
    },
  },
  {
    name: 'work-warning',
    go: async (walker) => {
      await walker.prepare();
      await walker.page.getByRole('button', { name: /^Begin the work/ }).click();
      await walker.page.locator('main.work').waitFor();
    },
  },
  { name: 'work-step', go: (walker) => walker.tap('Affirm') },
  {
    name: 'work-point',
    go: async (walker) => {
      await walker.tap('Next');
    },
  },
  { name: 'work-choice', go: (walker) => walker.tap('Affirm') },
  { name: 'work-danger', go: (walker) => walker.tap('free') },
  {
    name: 'work-hold',
    go: async (walker) => {
      await walker.tap('Affirm');
      await walker.tap('held');
    },
  },
  { name: 'work-help', go: (walker) => walker.tap('help') },
  {
    name: 'work-call',
    go: async (walker) => {
      for (const name of ['Next', 'Next', 'set down']) await walker.tap(name);
    },
  },
  { name: 'work-read-back', go: (walker) => walker.type('24.5') },
  {
    name: 'work-doubt',
    go: async (walker) => {
      await walker.tap('Affirm');
      for (const value of ['24', '25']) {
        await walker.type(value);
        await walker.tap('Affirm');
      }
      await walker.type('42.5');
    },
  },
  {
    name: 'work-outside',
    go: async (walker) => {
      await walker.tap('Negative');
      await walker.type('28');
    },
  },
  { name: 'work-open-again', go: (walker) => walker.tap('Affirm') },
  { name: 'work-answer', go: (walker) => walker.tap('Last values') },
  { name: 'work-report', go: (walker) => walker.tap('Report damage') },
  {
    name: 'work-standing-by',
    go: async (walker) => {
      await walker.type('the thread is torn');
      await walker.tap('Affirm');
      await walker.tap('Leave open');
      await walker.tap('Stand by');
    },
  },
  {
    name: 'work-witness',
    go: async (walker) => {
      await walker.tap('continue');
      await throughPasses(walker);
      await walker.type('24.5');
    },
  },
  {
    name: 'second-window',
    go: async ({ page }) => {
      const opening = page.context().waitForEvent('page');
      await page.getByRole('link', { name: 'Second person’s window' }).click();
      const second = await opening;
      await second.getByText('Read the tool now').waitFor();
      return { page: second, leave: () => second.close() };
    },
  },
  {
    name: 'work-measure',
    go: async (walker) => {
      await walker.type('witness 24.5');
      await walker.tap('Affirm');
      await throughPasses(walker);
      // The inlet is connected, and its cap is there.
      while (await walker.page.locator('.point').isVisible()) await walker.tap('Affirm');
    },
  },
  { name: 'work-measured', go: (walker) => walker.type('70') },
  {
    name: 'work-deciding',
    go: async (walker) => {
      await walker.tap('Affirm');
      await walker.type('leave open');
      await walker.type('the glass is dirty');
      await walker.tap('Affirm');
    },
  },
  {
    name: 'work-signing',
    go: async (walker) => {
      const decide = walker.page.getByLabel('Who decides');
      while (await decide.isVisible()) {
        await decide.fill('Q. Invented');
        await walker.tap('accepted as is');
      }
      await walker.page.locator('.closing input').first().fill('A. Invented');
    },
  },
  {
    name: 'work-closed',
    go: async (walker) => {
      await walker.page.getByRole('button', { name: /twice to sign/ }).click();
      await walker.page.waitForTimeout(600);
      await walker.tap('Press once more to sign');
      await walker.page.locator('.closed-note').waitFor();
    },
  },
  {
    name: 'replay',
    isLong: true,
    go: async ({ page, url }) => {
      await page.goto(url);
      await page.getByLabel('Open a sealed file').setInputFiles(DEMO_SESSION_FILE);
      await page.locator('main.replay').waitFor();
    },
  },
  {
    name: 'sheet',
    isLong: true,
    media: 'print',
    go: async ({ page }) => {
      await page.getByRole('button', { name: 'Record sheet' }).click();
      await page.getByRole('heading', { name: /^Record sheet/ }).waitFor();
    },
  },
];

/** Goes on with readings that are right until the step is another one. */
async function throughPasses(walker: Walker): Promise<void> {
  const title = (): Promise<string> => walker.page.locator('.step-line').innerText();
  const value = walker.page.locator('.call .value');
  for (const at = await title(); (await title()) === at;) {
    await walker.type((await value.innerText()).split(/\s/)[0] ?? '');
    if (await walker.page.getByText('Second person: read the tool').isVisible()) await walker.type('witness 24.5');
    await walker.tap('Affirm');
  }
}
