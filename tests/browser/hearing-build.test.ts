import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { contentSecurity, headersFor } from '../../src/cli/content-security.ts';
import { serveBuild } from '../../src/cli/serve.ts';
import { FAKE_DEVICES, openBrowser, type Browser } from '../support/chromium.ts';
import { toyModel } from '../support/hearing-page.ts';

let folder: string;
let browser: Browser;
let site: Awaited<ReturnType<typeof serveBuild>>;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bothhands-'));
  await build({
    configFile: false,
    root: path.join(import.meta.dirname, '../support/hearing-site'),
    base: './',
    logLevel: 'error',
    plugins: [contentSecurity()],
    worker: { format: 'es' },
    build: { outDir: folder, target: 'es2022' },
  });
  site = await serveBuild(folder, 0);
  browser = await openBrowser(FAKE_DEVICES);
});
afterAll(async () => {
  await browser.close();
  site.server.closeAllConnections();
  site.server.close();
  await rm(folder, { recursive: true, force: true });
});

test('only the recogniser’s worker may build code from text, and it is found by its name', async () => {
  const files = await readdir(path.join(folder, 'assets'));
  const lenient = files.filter((file) =>
    headersFor(`/assets/${file}`)['content-security-policy']?.includes(" 'unsafe-eval'"),
  );
  expect(lenient).toHaveLength(1);
  expect(lenient[0]).toMatch(/^vosk\.worker-/);
});

test('the built worker and worklet hear the microphone under the strict policy, without a complaint', async () => {
  const page = await browser.context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(site.url);
  const { words, heard } = await page.evaluate(async (base64) => {
    const { hearing, utterances, levels } = hearingBench.ear();
    const outcome = await hearing.loadModel(hearingBench.fileOf('toy.tar.gz', base64));
    hearing.setPhrases(['one', 'two']);
    await hearing.listen();
    // The made-up microphone beeps every second, and loud is “one” or “two” to this model.
    await hearingBench.until('an utterance', () => utterances.length > 0 && levels.length > 0);
    await hearing.close();
    return { words: outcome.ok ? [...outcome.model.words] : [], heard: utterances.flatMap((one) => one.words) };
  }, toyModel().toString('base64'));
  expect(words).toEqual(['one', 'two']);
  for (const { word } of heard) expect(['one', 'two', '[unk]']).toContain(word);
  expect(complaints).toEqual([]);
});
