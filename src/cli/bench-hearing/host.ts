import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';
import type { Readable } from 'node:stream';
import { createServer } from 'vite';
import type { Sound } from '../../speaking/sound.ts';
import { openBrowser } from '../hear/browser.ts';
import type { Announced, Listened as ListenedForHush } from './hush-page.ts';
import type { Listened } from './listen.ts';
import type { Cost, Ending, Heard } from './page.ts';
import type { Place } from './places.ts';

const SOURCES = resolve(import.meta.dirname, '../..');
const PAGE = 'cli/bench-hearing/page.html';
const RECORDING = '/recording';
const MODEL = '/model';

/** The app's ear, in a browser without a window. */
export interface Ears {
  hear(sound: Sound, place: Place, ending: Ending): Promise<readonly Heard[]>;
  cost(): Promise<Cost>;
  /** Begins a shift of listening to this sound, over and over. */
  beginShift(sound: Sound): Promise<void>;
  /** Lets the microphone hear a sound, while the app's own voice sounds. */
  hush(sound: Sound, announced: Announced): Promise<ListenedForHush>;
  /** @param seconds of sound */
  goOn(seconds: number): Promise<Listened>;
  memory(): Promise<Memory>;
  close(): Promise<void>;
}

/** In bytes, after a collection of garbage; null where the browser does not tell. */
export interface Memory {
  /** The heap of the engine's WebAssembly: it never shrinks, so it is the most that was in use at once. */
  readonly engine: number | null;
  /** Page and workers together, with the heap of the engine. */
  readonly all: number | null;
}

/** Keeps hold of the engine's heap, which its worker shows to nobody. */
const HOLD_HEAP = `
  globalThis.engineHeap = null;
  for (const name of ['instantiate', 'instantiateStreaming']) {
    const instantiate = WebAssembly[name];
    WebAssembly[name] = async (...parts) => {
      const made = await instantiate(...parts);
      const found = Object.values((made.instance ?? made).exports).find((part) => part instanceof WebAssembly.Memory);
      globalThis.engineHeap ??= found ?? null;
      return made;
    };
  }
`;

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
    server: {
      port: 0,
      host: 'localhost',
      hmr: false,
      // Without these the browser tells nobody how much memory a page takes.
      headers: { 'Cross-Origin-Opener-Policy': 'same-origin', 'Cross-Origin-Embedder-Policy': 'require-corp' },
      watch: null,
      fs: { allow: [resolve(SOURCES, '..')] },
    },
    plugins: [
      {
        name: 'bothhands-bench',
        enforce: 'pre',
        transform: (code, id) => (/vosk\.worker\.js\?.*worker_file/.test(id) ? HOLD_HEAP + code : null),
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
    cost: () => page.evaluate(() => hearingBenchPage.cost()),
    beginShift: async (sound) => {
      samples = Float32Array.from(sound.samples);
      await page.evaluate(({ url, rate }) => hearingBenchPage.beginShift(url, rate), {
        url: RECORDING,
        rate: sound.rate,
      });
    },
    hush: async (sound, { voice, ...announced }) => {
      samples = Float32Array.from([...sound.samples, ...voice]);
      return page.evaluate(({ url, rate, length, announced }) => hearingBenchPage.hush(url, rate, length, announced), {
        url: RECORDING,
        rate: sound.rate,
        length: sound.samples.length,
        announced,
      });
    },
    goOn: (seconds) => page.evaluate((seconds) => hearingBenchPage.goOn(seconds), seconds),
    memory: async () => {
      const heaps = await Promise.all(page.workers().map((worker) => worker.evaluate(heapBytes)));
      return { engine: heaps.find((bytes) => bytes !== null) ?? null, all: await page.evaluate(allBytes) };
    },
    close: async () => {
      await browser.close();
      await sources.close();
    },
  };
}

/** Runs in the worker. */
function heapBytes(): number | null {
  const heap: unknown = Reflect.get(globalThis, 'engineHeap');
  return heap instanceof WebAssembly.Memory ? heap.buffer.byteLength : null;
}

/** Runs in the page. */
async function allBytes(): Promise<number | null> {
  const measure: unknown = Reflect.get(performance, 'measureUserAgentSpecificMemory');
  if (typeof measure !== 'function') return null;
  const measured: unknown = await Reflect.apply(measure, performance, []);
  const bytes: unknown = Reflect.get(Object(measured) as object, 'bytes');
  return typeof bytes === 'number' ? bytes : null;
}
