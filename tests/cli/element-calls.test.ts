import path from 'node:path';
import { build, type Rollup } from 'vite';
import solid from 'vite-plugin-solid';
import { expect, test } from 'vitest';
import { elementCalls } from '../../src/cli/element-calls.ts';

/** What is used here of a package that has no types. */
interface Jsdom {
  readonly JSDOM: new (
    html: string,
    options: object,
  ) => { readonly window: { eval(code: string): void; readonly document: Document } };
}
const untyped: string = 'jsdom';
const { JSDOM } = (await import(untyped)) as Jsdom;

/** The sample as it is built by Solid alone or with elements as calls: what its page holds after each of its steps. */
async function storyOf(plugins: readonly (typeof elementCalls)[]): Promise<readonly string[]> {
  const built = (await build({
    configFile: false,
    logLevel: 'silent',
    root: import.meta.dirname,
    plugins: [solid({ babel: { plugins: [...plugins] } })],
    build: {
      write: false,
      minify: false,
      lib: { entry: path.join(import.meta.dirname, 'element-calls-sample.tsx'), formats: ['iife'], name: 'sample' },
    },
  })) as Rollup.RollupOutput[];
  const [chunk] = built[0]?.output ?? [];
  if (!chunk) throw new Error('Nothing was built.');
  expect(chunk.code.includes('createElementNS("http://www.w3.org/2000/svg"')).toBe(plugins.length > 0);
  const { window } = new JSDOM('<!doctype html><body></body>', { runScripts: 'outside-only', pretendToBeVisual: true });
  window.eval(chunk.code);
  await new Promise((resolve) => setTimeout(resolve, 0));
  return JSON.parse(window.document.documentElement.dataset['story'] ?? 'null') as readonly string[];
}

test('elements that are made by calls are those that Solid makes of templates, through every change', async () => {
  const [ours, theirs] = [await storyOf([elementCalls]), await storyOf([])];
  expect(theirs.length).toBeGreaterThan(40);
  expect(theirs.at(-1)).toBe('mounted P,click 0,click 1');
  expect(ours).toEqual(theirs);
});
