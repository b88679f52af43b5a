import { createReadStream } from 'node:fs';
import { basename, resolve } from 'node:path';
import { Readable } from 'node:stream';
import type { Page } from 'playwright-core';
import { createServer, type Plugin } from 'vite';
import type { Sound } from '../../speaking/sound.ts';
import { openBrowser } from './browser.ts';
import type { Sayable } from './judge.ts';
import type { Decoded, Prepared } from './page.ts';

const SOURCES = resolve(import.meta.dirname, '../..');
const PAGE = 'cli/hear/page.html';
const RECORDING = '/recording';
const MODEL = '/model';

/** The app's ear, in a browser without a window. */
export interface HearBench {
  /** Which words of the phrases the model lacks, and whether any phrase is left; or why the model cannot be used. */
  readonly prepared: Prepared;
  /** @throws Error when the page itself is lost; the bench is of no use then */
  decode(sound: Sound): Promise<Decoded>;
  close(): Promise<void>;
}

/**
 * Opens the page, loads the model and takes what may be said.
 * @throws Error when there is no browser, or no page
 */
export async function openBench(model: string, sayable: Sayable): Promise<HearBench> {
  let sound: Sound | null = null;
  const sources = await createServer({
    configFile: false,
    root: SOURCES,
    logLevel: 'error',
    // Found on the way, they would load the page anew in the middle of its work.
    optimizeDeps: { noDiscovery: true },
    server: { port: 0, host: 'localhost', hmr: false, watch: null, fs: { allow: [resolve(SOURCES, '..')] } },
    plugins: [servedToPage({ [MODEL]: () => createReadStream(model), [RECORDING]: () => bytesOf(sound) })],
  });
  const closing: (() => Promise<unknown>)[] = [() => sources.close()];
  const close = async (): Promise<void> => {
    for (const end of closing.splice(0).reverse()) await end();
  };
  try {
    await sources.listen();
    const browser = await openBrowser();
    closing.push(() => browser.close());
    const page = await browser.context.newPage();
    await page.goto(new URL(PAGE, sources.resolvedUrls?.local[0]).href);
    await page.waitForFunction(() => 'hearPage' in globalThis);
    const prepared = await prepare(page, model, sayable);
    return {
      prepared,
      decode: async (next) => {
        sound = next;
        return page.evaluate(({ url, rate }) => hearPage.decode(url, rate), { url: RECORDING, rate: next.rate });
      },
      close,
    };
  } catch (error) {
    await close();
    throw error;
  }
}

const prepare = (page: Page, model: string, sayable: Sayable): Promise<Prepared> =>
  page.evaluate(({ model, sayable }) => hearPage.prepare(model, sayable), {
    model: { url: MODEL, name: basename(model) },
    sayable,
  });

/** Gives what lies outside the sources to the page. */
const servedToPage = (served: Readonly<Record<string, () => Readable>>): Plugin => ({
  name: 'bothhands-hear',
  configureServer({ middlewares }) {
    for (const [at, open] of Object.entries(served)) {
      middlewares.use(at, (_request, response) => {
        response.setHeader('content-type', 'application/octet-stream');
        open()
          .on('error', (error) => response.destroy(error))
          .pipe(response);
      });
    }
  },
});

/** Piece by piece: a long recording is copied nowhere. */
function bytesOf(sound: Sound | null): Readable {
  const { buffer, byteOffset, byteLength } = sound?.samples ?? new Float32Array();
  return Readable.from(pieces(Buffer.from(buffer, byteOffset, byteLength)));
}

const PIECE = 2 ** 20;
function* pieces(bytes: Buffer): Iterable<Buffer> {
  for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE);
}
