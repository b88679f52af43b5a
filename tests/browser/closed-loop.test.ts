import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

// What the second person, a slip of the ear and the end of a shift do to a job, by voice in a real browser. The speech is
// synthetic, so that this runs on any machine.
const [fit, tighten, mark] = smallProcedure.steps;
const witnessed = {
  ...smallProcedure,
  steps: [
    fit,
    { ...tighten, confirm: 'witness each' },
    { id: 'seen', kind: 'witness', title: 'Seen', text: 'Look at the bolts.', what: 'three bolts, all seated' },
    mark,
  ],
};

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Second person').fill('B. Invented');
  const buffer = Buffer.from(JSON.stringify(witnessed));
  const file = { name: 'witnessed.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
  await app.say('next');
});
afterAll(() => browser.close());

const shown = (): Promise<string> => app.page.locator('main.work').innerText();

test('a second value that differs stops the reading, and nobody was told the first', async () => {
  await app.say('one two');
  expect(await shown()).toContain('Second person: read the tool');
  // The value stands nowhere on the page: neither as the reading, nor as what was heard, nor as what was logged.
  expect(await shown()).not.toMatch(/one two|\b12\s+N·m/);
  await app.say('witness one four');
  const entries = await app.entries();
  expect(entries.slice(-3).map(({ body }) => body.kind)).toEqual(['reading captured', 'witnessed', 'disputed']);
  expect(entries.slice(-3).map(({ person }) => person)).toEqual(['A. Invented', 'B. Invented', 'B. Invented']);
  expect(await app.wanted()).toMatch(/bolt\s+1/);
  expect(ofKind(entries, 'reading confirmed')).toEqual([]);
});

test('a value that was misheard is corrected by voice, then witnessed and confirmed', async () => {
  await app.say('one three');
  await app.say('correction one two');
  await app.say('witness one two');
  expect(await app.wanted()).toMatch(/bolt\s+1\s+12\s+N·m\s+Witness B\. Invented: 12 N·m/);
  await app.say('affirm');
  const entries = await app.entries();
  const [misheard, corrected] = ofKind(entries, 'reading captured').slice(-2);
  expect([misheard?.body.reading.value, corrected?.body.reading.value]).toEqual(['13', '12']);
  expect(corrected?.body.corrects).toBe(misheard?.seq);
  expect(ofKind(entries, 'reading confirmed').map(({ body }) => body.of)).toEqual([corrected?.seq]);
});

test('only the word of the second person goes past the step that is theirs', async () => {
  for (let bolt = 0; bolt < 2; bolt++) {
    await app.type('12');
    await app.type('witness 12');
    await app.tap('Affirm');
  }
  expect(await app.wanted()).toContain('three bolts, all seated');
  await app.type('next');
  expect(ofKind(await app.entries(), 'refused').at(-1)?.body.reason).toEqual({ code: 'step witness first' });
  await app.say('witness affirm');
  expect(ofKind(await app.entries(), 'step witnessed').at(-1)).toMatchObject({
    source: 'voice',
    person: 'B. Invented',
    body: { step: 'seen', person: 'B. Invented', agrees: true },
  });
});

test('the work is handed over between two steps, and what follows is by the one who took over', async () => {
  await app.say('hand over');
  expect(await app.wanted()).toContain('A. Invented hands over');
  await app.page.getByLabel('Who takes over').fill('C. Invented');
  await app.tap('Take over');
  expect(await shown()).toContain('C. Invented');
  await app.say('next');
  const entries = await app.entries();
  const handed = entries.findIndex(({ body }) => body.kind === 'handed over');
  expect(entries[handed]?.body).toEqual({ kind: 'handed over', from: 'A. Invented', to: 'C. Invented' });
  expect([...new Set(entries.slice(handed).map(({ person }) => person))]).toEqual(['C. Invented']);
  expect(entries.at(-1)?.body.kind).toBe('closed');
});
