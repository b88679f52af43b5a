import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { realModel, toyModel } from '../support/hearing-page.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone, speak } from '../support/spoken-microphone.ts';
import { synthesise } from '../support/speech.ts';

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
});
beforeEach(async () => {
  app = await AppPage.open(browser.context, inject('appUrl'));
});
// One window has ear and voice: the next test's must be able to take them.
afterEach(() => app.page.close());
afterAll(() => browser.close());

const file = (name: string, content: string | Buffer) => ({
  name,
  mimeType: 'application/octet-stream',
  buffer: Buffer.from(content),
});

test('a procedure file that cannot be used is refused with the place in it and what was expected', async () => {
  const { source: _left, ...noSource } = smallProcedure;
  const faulty = JSON.parse(JSON.stringify(noSource).replace('{"value":"12","unit":"N·m"}', '12')) as unknown;
  await app.page.getByLabel('Open a procedure file').setInputFiles(file('faulty.json', JSON.stringify(faulty)));
  const alert = app.page.getByRole('alert');
  await alert.waitFor();
  const text = await alert.innerText();
  expect(text).toContain('faulty.json cannot be used');
  expect(text).toMatch(/steps\.1\.passes\.0\.target: .*expected a torque/);
  expect(text).toMatch(/source/);
  await app.page.getByLabel('Open a procedure file').setInputFiles(file('no.json', 'not { json'));
  await app.page.getByText(/no\.json cannot be used/).waitFor();
  // Taken off the disk between choosing and reading.
  await app.page.evaluate(() => {
    File.prototype.text = () => Promise.reject(new DOMException('The file is gone.', 'NotFoundError'));
  });
  await app.page.getByLabel('Open a procedure file').setInputFiles(file('gone.json', '{}'));
  await app.page.getByText(/gone\.json cannot be used/).waitFor();
  expect(await alert.innerText()).toMatch(/cannot be read from the disk: The file is gone\..*Open it again/);
});

test('what the app says itself is no command, however it reaches the microphone', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.page.locator('.hearing.muted').waitFor();
  const before = await app.heardCount();
  await speak(app.page, await synthesise('say affirm', { voice: 'kal16' }));
  await speak(app.page, await synthesise('affirm', { voice: 'kal16' }));
  expect(await app.page.locator('.hearing.muted').count()).toBe(1);
  await app.listening();
  expect(await app.heardCount()).toBe(before);
  await app.say('affirm');
  expect(ofKind(await app.entries(), 'warning acknowledged')).toHaveLength(1);
});

test('two jobs in two windows do not both act on one voice: one has ear and voice, the other says so', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.listening();
  const other = await AppPage.open(browser.context, inject('appUrl'));
  await other.begin(/end cover/i, { mechanic: 'B. Invented' });
  await other.page.getByText('Another window listens and speaks').waitFor();
  await other.page.close();
});

/** The quickest job there is: its first step says next to nothing. */
async function beginSmall(): Promise<void> {
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Open a procedure file').setInputFiles(file('small.json', JSON.stringify(smallProcedure)));
  await passPreparation(app.page);
}

test('speech that is no phrase is shown in grey, counted, and does nothing', async () => {
  await beginSmall();
  await app.utter('affirm that the weather is nice in the next valley');
  expect(await app.page.locator('.heard.ignored').count()).toBe(1);
  expect(await app.heard()).toContain('(1 not for us)');
  expect(await app.wanted()).toContain('Fit the cover');
});

test('a number that may go on is seen as it would stand before it is written, and not asked about yet', async () => {
  await beginSmall();
  await app.say('next');
  // As it was on the page at that moment: half a second later it is over.
  await app.page.evaluate(() => {
    const seen: string[] = [];
    Object.assign(globalThis, { seen });
    new MutationObserver(() => {
      const panel = document.querySelector<HTMLElement>('.work-panel.provisional');
      const logged = document.querySelector<HTMLElement>('.lines .logged');
      if (panel) seen.push(`${panel.innerText} / ${logged?.innerText}`);
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
  });
  await app.say('one two');
  const seen = await app.page.evaluate(() => (globalThis as unknown as { seen: readonly string[] }).seen);
  expect(seen[0]).toMatch(/bolt\s+1\s+12\s+N·m/);
  expect(seen[0]).not.toMatch(/Is that correct/);
  expect(seen[0]).toMatch(/Logged \d+: Step done/);
  expect(await app.page.locator('.provisional').count()).toBe(0);
  expect(await app.wanted()).toMatch(/12\s+N·m[^]*Is that correct/);
  expect(ofKind(await app.entries(), 'reading captured').map(({ body }) => body.reading.value)).toEqual(['12']);
});

test('the voice speaks as fast as was chosen, after the page was loaded anew too', async () => {
  await app.page.addInitScript(() => {
    const seconds: number[] = [];
    Object.assign(globalThis, { seconds });
    type Create = (this: BaseAudioContext, channels: number, length: number, rate: number) => AudioBuffer;
    const made: { createBuffer: Create } = BaseAudioContext.prototype;
    const { createBuffer } = made;
    made.createBuffer = function (channels, length, rate) {
      seconds.push(length / rate);
      return createBuffer.call(this, channels, length, rate);
    };
  });
  const longestAt = async (speed: string): Promise<number> => {
    await app.page.goto(app.url);
    await app.page.reload();
    const choice = app.page.getByLabel('How fast the voice speaks');
    await choice.selectOption(speed);
    // It is written beside what the page does.
    await app.page.waitForTimeout(1000);
    await app.page.reload();
    expect(await choice.inputValue()).toBe(speed);
    await beginSmall();
    await app.listening();
    return app.page.evaluate(() => Math.max(...(globalThis as unknown as { seconds: readonly number[] }).seconds));
  };
  expect((await longestAt('slower')) / (await longestAt('faster'))).toBeGreaterThan(1.5);
});

test('a model that lacks words is named by its words, and the choice is remembered', async () => {
  await app.page.getByLabel(/Use a model from disk/).setInputFiles(file('toy.tar.gz', toyModel()));
  await app.page.getByText('In use: toy.tar.gz').waitFor();
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.page.getByText(/This speech model does not know: .*affirm/).waitFor();
  await app.page.goto(app.url);
  await app.page.reload();
  await app.page.getByText('In use: toy.tar.gz').waitFor();
  await app.page.getByRole('button', { name: /Use bothhands-en-small/ }).click();
  await app.page.getByText('In use: bothhands-en-small.tar.gz').waitFor();
});

test('a damaged model is said in words within 10 s, and typing goes on', async () => {
  const half = realModel().subarray(0, 2_000_000);
  await app.page.getByLabel(/Use a model from disk/).setInputFiles(file('half.tar.gz', half));
  await app.page
    .getByRole('alert')
    .getByText(/could not be read as a speech model/)
    .waitFor({ timeout: 10_000 });
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.type('affirm');
  expect(ofKind(await app.entries(), 'warning acknowledged').at(-1)?.source).toBe('key');
});

test('the app opens and works under its own strict policy without a complaint', async () => {
  const complaints: string[] = [];
  app.page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  app.page.on('pageerror', (error) => complaints.push(error.message));
  const response = await app.page.reload();
  expect(response?.headers()['content-security-policy']).toContain("default-src 'none'");
  await beginSmall();
  await app.say('next');
  expect(complaints).toEqual([]);
});
