import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import type { Readable } from 'node:stream';
import { createServer } from 'vite';
import type { Sound } from '../../speaking/sound.ts';
import { openBrowser } from '../hear/browser.ts';
import type { Ending, Heard } from './page.ts';
import type { Place } from './places.ts';

const SOURCES = resolve(import.meta.dirname, '../..');
const PAGE = 'cli/bench-hearing/page.html';
const RECORDING = '/recording';
const MODEL = '/model';

/** The app's ear, in a browser without a window. */
export interface Ears {
  hear(sound: Sound, place: Place, ending: Ending): Promise<readonly Heard[]>;
  close(): Promise<void>;
}

/** @param model the archive; @throws Error when there is no browser, or the model cannot be used */
export async function openEars(model: string): Promise<Ears> {
  let samples = new Float32Array();
  const served: Readonly<Record<string, () => Readable | Buffer>> = {
    [MODEL]: () => createReadStream(model),
    [RECORDING]: () => Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength),
  };
  const sources = await createServer({
    configFile: false,
    root: SOURCES,
    logLevel: 'error',
    // Found on the way, they would load the page anew in the middle of its work.
    optimizeDeps: { noDiscovery: true },
    server: { port: 0, host: 'localhost', hmr: false, watch: null, fs: { allow: [resolve(SOURCES, '..')] } },
    plugins: [
      {
        name: 'bothhands-bench',
        configureServer({ middlewares }) {
          for (const [at, open] of Object.entries(served)) {
            middlewares.use(at, (_request, response) => {
              const content = open();
              if (Buffer.isBuffer(content)) response.end(content);
              else content.pipe(response);
            });
          }
        },
      },
    ],
  });
  await sources.listen();
  const browser = await openBrowser();
  const page = await browser.context.newPage();
  await page.goto(new URL(PAGE, sources.resolvedUrls?.local[0]).href);
  await page.waitForFunction(() => 'hearingBenchPage' in globalThis);
  await page.evaluate((url) => hearingBenchPage.prepare(url), MODEL);
  return {
    hear: async (sound, place, ending) => {
      samples = Float32Array.from(sound.samples);
      return page.evaluate(({ url, rate, place, ending }) => hearingBenchPage.hear(url, rate, place, ending), {
        url: RECORDING,
        rate: sound.rate,
        place,
        ending,
      });
    },
    close: async () => {
      await browser.close();
      await sources.close();
    },
  };
}
