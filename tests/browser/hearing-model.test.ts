import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { benchPage, REAL_MODEL, realModel, toyModel, zipOf } from '../support/hearing-page.ts';
import type { ModelSource } from '../../src/hearing/types.ts';

/** A chosen file cannot be handed to a page; these can. */
type Listed = Exclude<ModelSource, { kind: 'file' }>;

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
const served = (file: string, bytes: Buffer): Listed => ({
  kind: 'served',
  file,
  url: `/served/${file}`,
  sha256: sha256(bytes),
  bytes: bytes.length,
});

let browser: Browser;
let page: Page;
let requests: string[];

beforeAll(async () => void (browser = await openBrowser()));
afterAll(() => browser.close());
beforeEach(async () => {
  page = await benchPage(browser.context, inject('modulesUrl'));
  requests = [];
});
afterEach(async () => {
  await page.evaluate(() => indexedDB.deleteDatabase('/vosk') && undefined);
  await page.close();
});

/** Serves these bytes, whatever the model source says of them. */
const serve = (file: string, body: Buffer | null): Promise<unknown> =>
  page.route(`**/served/${file}`, (route) => {
    requests.push(file);
    return body ? route.fulfill({ body, contentType: 'application/gzip' }) : route.fulfill({ status: 404 });
  });

/** Loads into a fresh ear, closes it, and tells what came of it and what is kept afterwards. */
async function load(source: Listed | { readonly name: string; readonly bytes: Buffer }) {
  const given = 'kind' in source ? source : { name: source.name, base64: source.bytes.toString('base64') };
  return page.evaluate(async (given) => {
    const { ear, fileOf, keptModel, keptPaths } = hearingBench;
    const { hearing, states } = ear();
    const begun = performance.now();
    const outcome = await hearing.loadModel('kind' in given ? given : fileOf(given.name, given.base64));
    const took = performance.now() - begun;
    const state = hearing.state;
    await hearing.close();
    return {
      ...(outcome.ok
        ? { words: [...outcome.model.words], sha256: outcome.model.sha256, failure: null }
        : { words: [], sha256: '', failure: outcome.failure }),
      state,
      states,
      took,
      kept: await keptModel(),
      paths: await keptPaths(),
    };
  }, given);
}

describe('a served model', () => {
  test('is fetched with progress once, and afterwards loads without any request', async () => {
    const toy = toyModel();
    await serve('toy.tar.gz', toy);
    const first = await load(served('toy.tar.gz', toy));
    expect(first.failure).toBeNull();
    expect(first.words).toEqual(['one', 'two']);
    expect(first.kept).toEqual({ name: 'toy.tar.gz', sha256: sha256(toy) });
    expect(first.states).toContainEqual({ kind: 'loading', received: toy.length, total: toy.length });

    page.on('request', (request) => requests.push(request.url()));
    requests.length = 0;
    const again = await load(served('toy.tar.gz', toy));
    const kept = await load({ kind: 'kept', name: 'toy.tar.gz', sha256: sha256(toy) });
    expect([again.words, kept.words]).toEqual([first.words, first.words]);
    expect(requests.filter((url) => url.includes('gz') || url.includes('sha256'))).toEqual([]);
  });

  test('replaces the one kept before', async () => {
    const toy = toyModel();
    await load({ name: 'toy.tar.gz', bytes: toy });
    const real = await load({
      kind: 'served',
      file: REAL_MODEL,
      url: `/models/${REAL_MODEL}`,
      sha256: sha256(realModel()),
      bytes: realModel().length,
    });
    expect(real.failure).toBeNull();
    expect(real.words).toContain('confirm');
    expect(real.words).not.toContain('[unk]');
    expect(real.kept).toEqual({ name: REAL_MODEL, sha256: sha256(realModel()) });
    expect(real.paths.filter((path) => path.includes(sha256(toy)))).toEqual([]);
    console.log(`the embedded model, first load: ${Math.round(real.took)} ms`);
    const kept = await load({ kind: 'kept', name: REAL_MODEL, sha256: sha256(realModel()) });
    expect(kept.failure).toBeNull();
    console.log(`the embedded model, kept: ${Math.round(kept.took)} ms`);
  });
});

describe('a model chosen from disk', () => {
  test('may be a .tar.gz or a .zip', async () => {
    const toy = toyModel();
    expect(await load({ name: 'toy.tar.gz', bytes: toy })).toMatchObject({ failure: null, words: ['one', 'two'] });
    expect(await load({ name: 'toy.zip', bytes: zipOf(toy) })).toMatchObject({
      failure: null,
      words: ['one', 'two'],
      kept: { name: 'toy.zip' },
    });
  });
});

describe('a bad model fails within ten seconds, says so, and leaves nothing behind', () => {
  const toy = toyModel();
  const notAModel = Buffer.from(
    'H4sIAAAAAAACA+3ROQqAMBBA0ak9RU7gAlnOIxiwUAIxQo6v2CmiVQThv2YGZrqfGymu3Tljjrm7zpvdOatFGfnAuqQ+KiUxhPT093b/qdxE3w+zr1NOJftbrR/623P/rnPGimrpX9zopylUAgAAAAAAAAAAAAAAAOCHNsRZiQAAKAAA',
    'base64',
  );
  const cases = [
    { title: 'absent', source: served('none.tar.gz', toy), body: null, code: 'model unreachable' },
    {
      title: 'a web page instead',
      source: served('page.tar.gz', toy),
      body: Buffer.from('<!doctype html>'),
      code: 'model not an archive',
    },
    { title: 'empty', source: served('empty.tar.gz', toy), body: Buffer.alloc(0), code: 'model not an archive' },
    { title: 'cut short', source: served('cut.tar.gz', toy), body: toy.subarray(0, 700), code: 'model checksum' },
    { title: 'another than listed', source: served('other.tar.gz', toy), body: notAModel, code: 'model checksum' },
    {
      title: 'a file of something else',
      source: { name: 'letter.txt', bytes: Buffer.from('Dear all') },
      body: null,
      code: 'model not an archive',
    },
    {
      title: 'a file cut short',
      source: { name: 'cut.tar.gz', bytes: toy.subarray(0, 700) },
      body: null,
      code: 'model unreadable',
    },
    {
      title: 'an archive without a model',
      source: { name: 'empty.tar.gz', bytes: notAModel },
      body: null,
      code: 'model unreadable',
    },
    {
      title: 'no longer kept',
      source: { kind: 'kept', name: 'gone', sha256: sha256(toy) } as const,
      body: null,
      code: 'model not kept',
    },
  ] as const;

  test.each(cases)('$title: $code', async ({ source, body, code }) => {
    if ('kind' in source && source.kind === 'served') await serve(source.file, body);
    const failed = await load(source);
    expect(failed.failure?.code).toBe(code);
    expect(failed.failure?.sentence).toMatch(/Touch, keys and typing go on working\.$/);
    expect(failed.state).toEqual({ kind: 'failed', failure: failed.failure });
    expect(failed.took).toBeLessThan(10_000);
    expect(failed.paths).toEqual([]);

    const good = await load({ name: 'toy.tar.gz', bytes: toy });
    expect(good.failure).toBeNull();
  });

  test('a kept model that has rotted is fetched afresh', async () => {
    await serve('toy.tar.gz', toy);
    await load(served('toy.tar.gz', toy));
    await page.evaluate(
      async (path) => {
        const database = await new Promise<IDBDatabase>((resolve) => {
          const opening = indexedDB.open('/vosk', 21);
          opening.onsuccess = () => resolve(opening.result);
        });
        const transaction = database.transaction('FILE_DATA', 'readwrite');
        transaction.objectStore('FILE_DATA').delete(path);
        await new Promise((resolve) => (transaction.oncomplete = resolve));
        database.close();
      },
      `/vosk/sha256_${sha256(toy)}/am/final.mdl`,
    );
    requests.length = 0;
    expect(await load(served('toy.tar.gz', toy))).toMatchObject({ failure: null, words: ['one', 'two'] });
    expect(requests).toEqual(['toy.tar.gz']);
  });
});

test('a later load cancels an earlier one, and closing cancels too', async () => {
  const base64 = toyModel().toString('base64');
  const result = await page.evaluate(async (base64) => {
    const { ear, fileOf } = hearingBench;
    const { hearing } = ear();
    const first = hearing.loadModel(fileOf('first.tar.gz', base64));
    const second = hearing.loadModel(fileOf('second.tar.gz', base64));
    const outcomes = [await first, await second];
    const third = hearing.loadModel(fileOf('third.tar.gz', base64));
    await hearing.close();
    outcomes.push(await third);
    return {
      outcomes: outcomes.map((outcome) => (outcome.ok ? outcome.model.name : outcome.failure.code)),
      state: hearing.state,
    };
  }, base64);
  expect(result.outcomes).toEqual(['model load cancelled', 'second.tar.gz', 'model load cancelled']);
  expect(result.state).toEqual({ kind: 'off' });
});

test('a running model goes on when another cannot be loaded', async () => {
  const result = await page.evaluate(async (base64) => {
    const { ear, fileOf } = hearingBench;
    const { hearing } = ear();
    await hearing.loadModel(fileOf('toy.tar.gz', base64));
    const outcome = await hearing.loadModel(fileOf('letter.txt', btoa('Dear all')));
    const [state, missing] = [hearing.state, hearing.setPhrases(['one', 'three'])];
    await hearing.close();
    return { code: outcome.ok ? null : outcome.failure.code, state, missing };
  }, toyModel().toString('base64'));
  expect(result).toEqual({ code: 'model not an archive', state: { kind: 'off' }, missing: ['three'] });
});

test('an engine that cannot be fetched is no fault of the model, which stays kept', async () => {
  const toy = toyModel();
  await load({ name: 'toy.tar.gz', bytes: toy });
  await browser.context.route('**/*.wasm*', (route) => route.abort());
  const failed = await load({ kind: 'kept', name: 'toy.tar.gz', sha256: sha256(toy) });
  await browser.context.unroute('**/*.wasm*');
  expect(failed.failure?.code).toBe('engine unreachable');
  expect(failed.kept).toEqual({ name: 'toy.tar.gz', sha256: sha256(toy) });
  expect(await load({ kind: 'kept', name: 'toy.tar.gz', sha256: sha256(toy) })).toMatchObject({ failure: null });
});
