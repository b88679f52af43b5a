/** The page before the work, by hand and by keys: what stops the work stops it, and what was found is worked with. */
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';

const PHONE = { width: 360, height: 740 };
/** 20 mm at 96 px an inch, in CSS px. */
const GLOVE = 75.5;

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.setViewportSize(PHONE);
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Second person').fill('B. Invented');
  await app.page.getByRole('button', { name: /end cover/i }).click();
  await app.page.locator('main.prepare').waitFor();
});
afterAll(() => browser.close());

const field = (label: string | RegExp) => app.page.getByLabel(label);
const begin = () => app.page.getByRole('button', { name: /^Begin the work/ });
const ready = () => app.page.locator('section.ready');

test('everything to tap is as large as a gloved finger, on a phone', async () => {
  const low = await app.page.evaluate(
    (least) =>
      [...document.querySelectorAll('main.prepare :is(a.button, button, label.tap, .entry input)')]
        .filter((each) => each.getBoundingClientRect().height < least)
        .map((each) => each.outerHTML),
    GLOVE,
  );
  expect(low).toEqual([]);
});

test('the work does not begin as long as something stops it: each is told, and leads to its field', async () => {
  await begin().click();
  expect(await ready().getByRole('alert').innerText()).toMatch(/cannot begin yet/);
  const told = await ready().getByRole('listitem').allInnerTexts();
  for (const what of [
    /current approved data/,
    /calibration date is not entered/,
    /use-by date is not entered/,
    /said yet how/,
    /9 hazards/,
  ])
    expect(told.some((each) => what.test(each))).toBe(true);
  await ready()
    .getByRole('button', { name: /use-by date/ })
    .click();
  expect(await field(/^Use by/).evaluate((input) => input === document.activeElement)).toBe(true);
  expect(await app.entries()).toEqual([]);
});

test('what is put right gives back no room, so that nothing moves under a finger', async () => {
  const top = (): Promise<number> =>
    app.page.locator('#field-lift').evaluate((each) => each.getBoundingClientRect().top + scrollY);
  const before = await top();
  await field(/^Use by/).fill('2020-01-31');
  expect(await app.page.locator('#field-consumable-gasket-notes').innerText()).toMatch(/expired on 2020-01-31/);
  await field(/^Use by/).fill('2031-03-31');
  await field(/I compared them/).check();
  expect(await top()).toBe(before);
});

test('a reload and a look at the microphone lose nothing that was entered', async () => {
  await field(/^Measured, middle/).fill('1.8');
  await app.page.getByRole('link', { name: 'Microphone check: A. Invented' }).click();
  await app.page.locator('main.check').waitFor();
  await app.page.reload();
  await app.page.getByRole('link', { name: 'Back to the preparation' }).click();
  await app.page.locator('main.prepare').waitFor();
  expect(await field(/^Measured, middle/).inputValue()).toBe('1.8');
  expect(await field(/^Use by/).inputValue()).toBe('2031-03-31');
  expect(await field(/I compared them/).isChecked()).toBe(true);
});

test('with warnings the work begins, in spite of them: the record says so, and the wrench is set by the measured length', async () => {
  await app.page.getByRole('radio', { name: 'No', exact: true }).check();
  await field('sling or hoist').check();
  for (const label of await field(/^Calibration due/).all()) await label.fill('2031-03-31');
  for (const hazard of await app.page.locator('.hazard-row input').all()) await hazard.check();
  expect(await ready().getByRole('heading').innerText()).toBe('Ready, with one warning');
  await begin().focus();
  await app.page.keyboard.press('Enter');
  await app.page.locator('main.work').waitFor();

  const entries = await app.entries();
  const facts = ofKind(entries, 'prepared').map(({ body }) => body.fact);
  expect(facts.find(({ of }) => of === 'adapter')).toMatchObject({ measured: { value: '1.8', unit: 'in' } });
  expect(facts.filter(({ of }) => of === 'hazard')).toHaveLength(9);
  expect(facts.filter(({ of }) => of === 'warning')).toHaveLength(1);
  expect(ofKind(entries, 'condition answered').map(({ body }) => body.is)).toEqual([false]);
  // It is a beginning and no session that was opened again, and the preparation is over.
  expect(ofKind(entries, 'reopened')).toEqual([]);
  await app.page.goto(app.url);
  await app.page.getByRole('heading', { name: 'Bothhands' }).waitFor();
  expect(await app.page.getByText('Go on preparing').count()).toBe(0);
});

test('what is wrong with the names is said until they are changed', async () => {
  const { page } = await AppPage.open(browser.context, inject('appUrl'));
  await page.getByLabel('Mechanic').fill('A. Invented');
  await page.getByLabel('Second person').fill('A. Invented');
  await page.getByRole('button', { name: /end cover/i }).click();
  const wrong = page.getByText('The second person must be somebody else');
  await wrong.waitFor();
  await page.getByLabel('Second person').fill('B. Invented');
  await wrong.waitFor({ state: 'detached' });
  await page.close();
});

test('that sound is kept is agreed by those who are named: under another name it is asked again', async () => {
  const here = await AppPage.open(browser.context, inject('appUrl'));
  const { page } = here;
  const agreed = page.getByLabel(/^Everybody named here agrees/);
  await page.getByLabel('Mechanic').fill('A. Invented');
  await agreed.check();
  await page.getByLabel('Second person').fill('D. Invented');
  expect(await agreed.isChecked()).toBe(false);
  await agreed.check();
  await page.getByRole('button', { name: /end cover/i }).click();
  await page.locator('main.prepare').waitFor();
  expect(await agreed.isChecked()).toBe(true);
  await page.getByLabel('Second person').fill('C. Invented');
  expect(await agreed.isChecked()).toBe(false);

  await passPreparation(page);
  const session = decodeURIComponent(page.url().split('/').at(-1) ?? '');
  const [opened] = ofKind(await here.entries(), 'opened').filter((entry) => entry.session === session);
  expect(opened?.body).toMatchObject({ sound: 'not agreed', people: { second: 'C. Invented' } });
  await page.close();
});
