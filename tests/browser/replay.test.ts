import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { soundHash } from '../../src/record/sounds.ts';
import { makeKey } from '../record/keys.ts';
import { recordIn, recordOf } from '../record/sealed.ts';
import { packedWith } from '../record/sounded.ts';
import { eventOf } from '../session/play.ts';
import { AppPage } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { encodeWav } from '../support/wav.ts';

// A demonstration that stays as it was sealed: what is looked for has its number in it.
const SEALED = new URL('../record/fixtures/format-2.bhsession', import.meta.url);

// The auditor, weeks later: a sealed file is opened, played, searched, and printed to be signed.

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  app = await AppPage.open(browser.context, inject('appUrl'));
  await open('demo.bhsession', readFileSync(SEALED));
});
afterAll(() => browser.close());

async function open(name: string, buffer: Buffer): Promise<void> {
  await app.page.getByLabel('Open a sealed file').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
  await app.page.locator('main.replay').waitFor();
}

const slider = () => app.page.getByRole('slider');
const at = async (): Promise<number> => Number(await slider().inputValue());
const moment = () => app.page.locator('.moment').innerText();
const press = (name: string): Promise<void> => app.page.getByRole('button', { name, exact: true }).click();
const listed = () => app.page.locator('.record-list li');

test('the slider is moved by keys, and says in words where it is', async () => {
  await slider().focus();
  await app.page.keyboard.press('End');
  expect(await slider().getAttribute('aria-valuetext')).toBe('Entry 107: All steps are done: record closed');
  await app.page.keyboard.press('Home');
  await app.page.keyboard.press('ArrowRight');
  expect(await at()).toBe(1);
  expect(await moment()).toContain('Warning acknowledged');
});

test('readings, doubts and deviations are gone to in one step', async () => {
  await slider().fill('0');
  await press('Next reading');
  expect(await at()).toBe(18);
  await press('Next doubt');
  expect(await moment()).toContain('In doubt: digits swapped');
  await press('Next deviation');
  expect(await moment()).toContain('Deviation reported: stud 4, pass 2, over torque');
  await press('Previous reading');
  expect(await moment()).toContain('27 N·m, over the window');
});

test('all times are told with their zone, and where marks lie close, how many', async () => {
  expect(await app.page.locator('main.replay header').innerText()).toMatch(/Times in UTC[+-]\d\d:\d\d/);
  const counted = await app.page
    .locator('.mark:has(text)')
    .evaluateAll((marks) => marks.map((mark) => [mark.querySelector('text')?.textContent?.trim(), mark.textContent]));
  expect(counted.length).toBeGreaterThan(0);
  for (const [count, told] of counted)
    expect(told).toMatch(new RegExp(`^[^:]+: \\d+ of ${count} events here, the first of them entry \\d+`));
});

test('a pointer on the time line goes to that time', async () => {
  const box = await app.page.locator('.time-line .lanes > svg').boundingBox();
  if (!box) throw new Error('There is no time line.');
  await app.page.mouse.click(box.x + box.width - 1, box.y + box.height - 2);
  // A pixel is two seconds here, and the last entries are as near to one another.
  expect(await at()).toBeGreaterThanOrEqual(104);
  await app.page.mouse.click(box.x + 1, box.y + box.height - 2);
  expect(await at()).toBeLessThanOrEqual(1);
  await app.page.locator('.mark:has(.outside)').first().click();
  expect(await at()).toBe(22);
});

test('it plays on in time, faster where that is asked for, and stops when it is paused', async () => {
  await slider().fill('40');
  await app.page.getByLabel('Speed').selectOption('16');
  await press('Play');
  // Twenty-one seconds of the record at sixteen times the speed.
  await expect.poll(at, { timeout: 10_000 }).toBeGreaterThan(40);
  await press('Pause');
  const stopped = await at();
  await app.page.waitForTimeout(700);
  expect(await at()).toBe(stopped);
});

test('events are searched by what was said and filtered by kind', async () => {
  await app.page.getByRole('searchbox').fill('correction one two');
  await app.page.getByText('1 of 108 events').waitFor();
  expect(await listed().innerText()).toContain('Stud 8, pass 1: 12 N·m');
  await app.page.getByRole('searchbox').fill('');
  await app.page.getByText('Only some kinds').click();
  await app.page.getByLabel('Holds').check();
  await app.page.getByText('2 of 108 events').waitFor();
  await listed().first().getByRole('button').click();
  expect(await moment()).toContain('Work stopped: standing by');
  await app.page.getByLabel('Holds').uncheck();
  expect(await listed().count()).toBe(108);
});

test('a cell of the matrix leads to its event, with the first value beside the correction', async () => {
  await app.page.getByRole('button', { name: /^stud 8:.*12 N·m.*in/ }).click();
  expect(await at()).toBe(27);
  const rows = await app.page.locator('.history tbody tr').allInnerTexts();
  expect(rows.map((row) => row.replace(/\s+/g, ' ').trim())).toEqual([
    '26 11 N·m first value in corrected –',
    '27 12 N·m +1 in stands –',
  ]);
});

test('nothing is wider than a phone', async () => {
  await app.page.setViewportSize({ width: 360, height: 740 });
  expect(await app.page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  await app.page.setViewportSize({ width: 1280, height: 800 });
});

/** The sizes of the pages of a PDF, in points, each once. */
const pageSizes = (pdf: Buffer): readonly string[] => [
  ...new Set([...pdf.toString('latin1').matchAll(/\/MediaBox\s*\[([^\]]+)\]/g)].map(([, box = '']) => box.trim())),
];

test('the record sheet is printed on A4 and on Letter, and says what it is not', async () => {
  await app.page.emulateMedia({ colorScheme: 'dark' });
  await press('Record sheet');
  const sheet = app.page.locator('.record-sheet');
  await sheet.getByText('no release to service', { exact: false }).first().waitFor();
  expect(await sheet.evaluate((found) => getComputedStyle(found).backgroundColor)).toBe('rgb(255, 255, 255)');
  const print = () => app.page.pdf({ preferCSSPageSize: true });
  const [width, height, ...more] = pageSizes(await print()).flatMap((box) => box.split(/\s+/).slice(2).map(Number));
  expect(more).toEqual([]);
  // ISO 216: 210 mm × 297 mm, at 72 points an inch, to a point.
  expect(Math.abs((width ?? 0) - (210 / 25.4) * 72)).toBeLessThan(1);
  expect(Math.abs((height ?? 0) - (297 / 25.4) * 72)).toBeLessThan(1);
  await app.page.getByLabel('Paper').selectOption('letter');
  expect(pageSizes(await print())).toEqual(['0 0 612 792']);
  // What is wider than the paper is cut off: a warning of the preparation is bold, and as long as it is.
  const beyondPaper = await sheet.evaluate((found) => {
    const warning = document.createElement('b');
    warning.textContent = 'A warning of many words. '.repeat(12);
    found.querySelector('td')?.replaceChildren(warning);
    return found.scrollWidth - found.clientWidth;
  });
  expect(beyondPaper).toBe(0);
  await app.page.emulateMedia({ colorScheme: null });
  await press('Back to the replay');
  await slider().waitFor();
});

test('the sound of a reading is played where the file has it, and is said to be absent where it has not', async () => {
  await press('Close this file');
  // A quarter of a second of a tone.
  const tone = encodeWav({ samples: Float32Array.from({ length: 4000 }, (_, i) => Math.sin(i / 5) / 2), rate: 16_000 });
  const sound = Uint8Array.from(tone);
  const sha256 = await soundHash(sound);
  const from = '2026-03-01T00:00:00.000Z';
  const kept = { kept: true, sha256, bytes: sound.length, from, to: from } as const;
  const event = { ...eventOf({ kind: 'repeat asked' }, 0), heard: { text: 'say again', words: [], sound: kept } };
  const record = await recordIn(await recordOf(smallProcedure, [event]));
  const key = await makeKey();
  await open('sounded.bhsession', Buffer.from(await packedWith(record, new Map([[sha256, sound]]), key)));
  await slider().fill('1');
  const audio = app.page.locator('.evidence audio');
  await expect.poll(() => audio.evaluate((found: HTMLAudioElement) => found.duration)).toBeCloseTo(0.25, 2);
  await press('Close this file');
  await open('silent.bhsession', Buffer.from(await packedWith(record, new Map(), key)));
  await slider().fill('1');
  await app.page.getByText('Its sound is not here.').waitFor();
});

test('a file that was changed says where, and is played up to there', async () => {
  await press('Close this file');
  const bytes = readFileSync(SEALED).toString('latin1').replace('"value":"27"', '"value":"24"');
  await open('forged.bhsession', Buffer.from(bytes, 'latin1'));
  const verdict = await app.page.locator('.verification[role=alert]').innerText();
  const broken = Number(/Not intact at entry (\d+): its content was changed/.exec(verdict)?.[1]);
  await app.page.getByText(`The record is broken here: entry ${broken}`).waitFor();
  expect(await slider().getAttribute('max')).toBe(String(broken - 1));
  await press('Record sheet');
  await app.page.locator('.record-sheet .broken').getByText(`NOT INTACT at entry ${broken}`).waitFor();
});
