import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { toRead, warnsNow } from '../../src/language/unheard.ts';
import { verify, type Entry } from '../../src/record/entry.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { readSessionRecord, stateAfter } from '../../src/record/session-record.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { workView } from '../../src/ui/view.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// No microphone is allowed here: touch, keys and typing do the whole job.
let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  // A microphone is there, but nobody says yes to the question.
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'), 'at once');
});
afterAll(() => browser.close());

test('a refused microphone is said in words, and the job is done from end to end without it', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented', second: 'B. Invented' });
  await app.page.getByText(/does not let this page use the microphone/).waitFor();
  while (!(await app.wanted()).includes('All steps are done')) await app.answer();

  const entries = await app.entries();
  expect(verify(entries)).toMatchObject({ kind: 'intact', entries: entries.length });
  expect(entries.at(-1)?.body.kind).toBe('closed');
  expect(ofKind(entries, 'refused')).toEqual([]);
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(ofKind(entries, 'reading captured').length);
});

test('a second window on the same session only reads, says so, and can take over when the first is gone', async () => {
  const first = await AppPage.open(browser.context, inject('appUrl'), 'at once');
  await first.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await first.tap('Affirm');
  const second = new AppPage(await browser.context.newPage(), first.url, 'at once');
  await second.page.goto(first.page.url());
  await second.page.getByText('Another window works on this session').waitFor();
  expect(await second.page.getByRole('button', { name: 'Affirm', exact: true }).count()).toBe(0);

  await first.page.close();
  // The browser gives the pen back when it has buried the first window.
  const affirm = second.page.getByRole('button', { name: 'Affirm', exact: true });
  await expect
    .poll(async () => {
      if (!(await affirm.isVisible())) await second.page.getByRole('button', { name: 'Look again' }).click();
      return affirm.isVisible();
    })
    .toBe(true);
  await second.tap('Affirm');
});

test('a tap at once does not go past what warns, and why is shown; when it could be read, the same tap is written', async () => {
  const here = new AppPage(await browser.context.newPage(), inject('appUrl'), 'at once');
  const { page } = here;
  // Nothing can be said here: what counts is how long it stood there.
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'AudioContext'));
  await page.goto(here.url);
  // Time passes only where the clock is put ahead.
  await page.evaluate(() => {
    const at = performance.now();
    performance.now = () => at;
  });
  await here.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  const session = decodeURIComponent(page.url().split('/').at(-1) ?? '');
  const written = async (): Promise<readonly Entry[]> =>
    (await here.entries()).filter((entry) => entry.session === session);

  for (const { name, what, follows } of [
    { name: 'Affirm', what: 'warning', follows: ['warning acknowledged'] },
    // The check of that step, about which nothing warns any more.
    { name: 'Affirm', what: null, follows: ['answered', 'step done'] },
    { name: 'Next', what: 'caution', follows: ['step done'] },
  ]) {
    const before = await written();
    const read = await readSessionRecord(session, before);
    if (read.kind === 'unreadable') throw new Error(read.verification.why);
    const warns = warnsNow(stateAfter(read.record, before.length));
    expect(warns?.signal ?? null).toBe(what);
    const tap = () => page.getByRole('button', { name, exact: true }).click();
    await here.putAhead(SETTLE);
    if (warns) {
      await tap();
      expect(await page.locator('.unheard').innerText()).toMatch(
        new RegExp(`^Not taken\\. .*(Hear the ${what} to its end|too soon for the ${what} to be read)`),
      );
      await here.putAhead(toRead(warns) - SETTLE - 1);
      await tap();
      expect(await written()).toEqual(before);
      await here.putAhead(2);
    }
    await tap();
    await expect.poll(async () => (await written()).length).toBeGreaterThan(before.length);
    // Neither of the taps before it was taken as well.
    expect((await written()).slice(before.length).map(({ body }) => body.kind)).toEqual(follows);
    expect(await page.locator('.unheard').count()).toBe(0);
  }
  await page.close();
});

test('a seal that failed can only be replaced, a form that is refused keeps what was typed, and who may not sign is told before', async () => {
  const here = await AppPage.open(browser.context, inject('appUrl'), 'at once');
  const { page } = here;
  const procedure = {
    ...smallProcedure,
    tools: [],
    patterns: [],
    signatures: ['mechanic', 'inspector'],
    seals: [
      { id: 'ring', name: 'round seal', reuse: 'if it passes inspection', criteria: ['no cut'], replacedBy: 'new' },
    ],
    consumables: [{ id: 'new', name: 'new seal', expires: true, quantity: 1 }],
    steps: [
      {
        ...{ id: 'look', kind: 'check', title: 'Look', text: 'Look at it. Reuse or replace?' },
        seals: [{ seal: 'ring', is: 'inspected' }],
        outcomes: [
          { id: 'reuse', text: 'Reuse it.', then: 'go on' },
          { id: 'replace', text: 'Fit a new one.', then: 'go on' },
        ],
      },
    ],
  };
  await page.getByLabel('Mechanic').fill('A. Invented');
  await page.getByLabel('Second person').fill('B. Invented');
  const file = { name: 'seal.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(procedure)) };
  await page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(page);
  const session = decodeURIComponent(page.url().split('/').at(-1) ?? '');
  const written = async () => (await here.entries()).filter((entry) => entry.session === session);
  const button = (name: string) => page.getByRole('button', { name, exact: true });

  await here.tap('Negative');
  expect(await here.wanted()).toMatch(/Round seal\. It failed: no cut\. Say replace\./);
  expect(await here.wanted()).not.toContain('Reuse it.');
  expect(await button('reuse').isDisabled()).toBe(true);
  expect(await button('replace').getAttribute('class')).toContain('primary');
  expect(await page.locator('.actions .primary').count()).toBe(0);
  await here.tap('replace');

  // The new one is no better, and there is no other.
  await here.tap('Negative');
  await page.getByLabel('Batch, as on the packing').fill('B 7');
  await page.getByLabel('How many there are now').fill('1');
  await here.tap('The fresh one is here');
  const useBy = page.getByLabel(/^Use by/);
  expect(await useBy.getAttribute('aria-invalid')).toBe('true');
  expect(await page.locator('.closing .trouble').innerText()).toContain('use-by date');
  expect(await page.getByLabel('Batch, as on the packing').inputValue()).toBe('B 7');
  await useBy.fill('2031-01-31');
  await here.tap('The fresh one is here');
  expect(ofKind(await written(), 'consumable fetched').map(({ body }) => body.batch)).toEqual(['B 7']);
  await here.tap('replace');
  await here.tap('Affirm');

  await here.answer();
  await page.getByText('The inspector signs').waitFor();
  for (const [name, told] of [
    ['A. Invented', /took part in this work, so somebody else must/],
    ['B. Invented', /took part in this work, and signs as inspector/],
  ] as const) {
    await page.getByLabel('Your name').fill(name);
    expect(await page.locator('.closing .trouble').innerText()).toMatch(told);
  }
  expect(ofKind(await written(), 'signed').map(({ body }) => body.role)).toEqual(['mechanic']);
  await here.answer();
  const note = page.locator('.closed-note');
  await note.waitFor();
  for (const { body, at } of ofKind(await written(), 'signed'))
    expect(await note.innerText()).toContain(
      `Signed as ${body.role} by ${body.person}, ${at.utc.slice(0, 19).replace('T', ' ')}Z`,
    );
  await page.close();
});

// Not tried twice: a record that is torn once in a hundred kills is a torn record.
describe('the page is killed', { retry: 0 }, () => {
  /** Makes ready to end a page. */
  type Killer = (page: Page) => Promise<() => Promise<void>>;

  const close: Killer = (page) => Promise.resolve(() => page.close());

  /** Takes its process away from a page, as want of memory does: nothing in it gets to run any more. */
  const crash: Killer = async (page) => {
    const devTools = await browser.context.newCDPSession(page);
    return async () => {
      const crashed = page.waitForEvent('crash');
      // The answer to this never comes.
      void devTools.send('Page.crash').catch(() => undefined);
      await crashed;
      await page.close();
    };
  };

  /** A session that was just begun, by a page that is going to be killed. */
  async function begun(): Promise<{ readonly page: AppPage; readonly address: string }> {
    const page = await AppPage.open(browser.context, inject('appUrl'), 'at once');
    await page.begin(/Oil cooler/, { mechanic: 'A. Invented' });
    return { page, address: page.page.url() };
  }

  const sessionAt = (address: string): string => decodeURIComponent(address.split('/').at(-1) ?? '');

  /** What is on disk of a session, read through a page that outlives it. */
  const onDisk = async (address: string): Promise<readonly Entry[]> =>
    (await app.allEntries()).filter(({ session }) => session === sessionAt(address));

  const kinds = (entries: readonly Entry[]): readonly string[] => entries.map(({ body }) => body.kind);

  /** Opens a session again, and waits until the record says so. */
  async function reopen(address: string): Promise<AppPage> {
    const page = await browser.context.newPage();
    await page.goto(address);
    await page.locator('main.work').waitFor();
    await expect.poll(async () => (await onDisk(address)).at(-1)?.body.kind).toBe('reopened');
    return new AppPage(page, address, 'at once');
  }

  /** Whether a page shows what its record says, to its last entry. */
  async function expectShown(here: AppPage, address: string): Promise<void> {
    const read = await readSessionRecord(sessionAt(address), await onDisk(address));
    if (read.kind === 'unreadable') throw new Error(read.verification.why);
    const { verification, entries } = read.record;
    expect(verification.kind).toBe('intact');
    const { step, stepNumber, stepCount, warning } = workView(stateAfter(read.record, entries.length));
    const shown = await here.wanted();
    expect(shown).toContain(`Step ${stepNumber} of ${stepCount}: ${step?.title}`);
    expect(shown).toContain(warning?.text ?? step?.text);
    expect(shown.includes(step?.text ?? '')).toBe(warning === null);
    expect(await here.page.locator('.logged').innerText()).toMatch(new RegExp(`^Logged ${entries.length - 1}:`));
  }

  test('right after an answer is on screen: it opens in the same place, with nothing lost and nothing doubled', async () => {
    const { page, address } = await begun();
    let here = page;
    for (let round = 0; round < 6; round++) {
      const kill = await crash(here.page);
      await here.answer();
      const shown = await here.wanted();
      await kill();
      const written = kinds(await onDisk(address));
      here = await reopen(address);
      expect(await here.wanted()).toBe(shown);
      expect(kinds(await onDisk(address))).toEqual([...written, 'reopened']);
    }
  });

  test.each([
    ['closed', close],
    ['crashed', crash],
  ])(
    'while an answer is written (%s): it is on disk as a whole or not at all, and shown as it is',
    async (_, killer) => {
      const { page, address } = await begun();
      let here = page;
      await here.tap('Affirm');
      const outcomes = new Set<'none' | 'whole'>();
      // In milliseconds: too early to be written, and late enough. The kills close in on the moment between them.
      const LEAD = 100;
      let early = 0;
      let late: number | null = null;
      let wait = LEAD;
      for (let round = 0; round < 8; round++) {
        await here.page.waitForTimeout(SETTLE + 50);
        const before = kinds(await onDisk(address));
        const kill = await killer(here.page);
        // The page taps itself, so that no way to it takes time; it does not live to tell.
        await here.page
          .getByRole('button', { name: 'Affirm', exact: true })
          .evaluate((button: HTMLElement, lead) => void setTimeout(() => button.click(), lead), LEAD);
        await sleep(wait);
        await kill();
        const left = kinds(await onDisk(address));
        here = await reopen(address);

        const added = left.slice(before.length);
        expect(left.slice(0, before.length)).toEqual(before);
        // The answer to the check, and with it the end of its step.
        expect([[], ['answered', 'step done']]).toContainEqual(added);
        expect(kinds(await onDisk(address))).toEqual([...left, 'reopened']);
        await expectShown(here, address);

        const isWritten = added.length > 0;
        outcomes.add(isWritten ? 'whole' : 'none');
        // No two kills take the same time: the bounds give way a little, so that they find the moment again.
        [early, late] = isWritten ? [early * 0.9, wait] : [wait, late === null ? null : late * 1.1];
        wait = late === null ? wait + LEAD / 2 : (early + late) / 2;
        if (isWritten) {
          await here.tap('Back');
          await here.tap('Affirm');
        }
      }
      // The kills came on both sides of the moment of the write, and so close to it.
      expect(outcomes).toEqual(new Set(['none', 'whole']));
    },
  );
});
