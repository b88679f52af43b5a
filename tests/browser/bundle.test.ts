import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

// Counted are scripts and stylesheets of the build, service worker and camera watcher among them. Not counted are the engines with
// their workers, the speech model and the voice, and the demonstration procedures: data that is fetched as it lies in the folder.

/** The build that the browser tests run; it is there when this begins. */
const dist = path.resolve(import.meta.dirname, '../../dist');
const read = (file: string): string => readFileSync(path.join(dist, file), 'utf8');
const gzipped = (file: string): number => gzipSync(readFileSync(path.join(dist, file)), { level: 9 }).length;
const kB = (files: readonly string[]): number => files.reduce((sum, file) => sum + gzipped(file), 0) / 1000;

/** Recogniser and voice with their workers are engines, not ours. */
const isEngine = (file: string): boolean => /^assets\/(vosk\.worker|flite-worker)-/.test(file);
const ours = readdirSync(dist, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll(path.sep, '/'))
  .filter((file) => /\.(js|css)$/.test(file) && !isEngine(file));

/** Scripts that a script imports before it runs itself. What it fetches later is called with `import(…)`. */
const importsOf = (file: string): readonly string[] =>
  [...read(file).matchAll(/(?:\bfrom|\bimport)\s*["'](\.\/[^"']+\.js)["']/g)].map(([, name = '']) =>
    path.posix.join(path.posix.dirname(file), name),
  );

function withImports(files: readonly string[]): readonly string[] {
  const found = new Set<string>();
  const add = (file: string): void => {
    if (found.has(file)) return;
    found.add(file);
    if (file.endsWith('.js')) importsOf(file).forEach(add);
  };
  files.forEach(add);
  return [...found];
}

/** What the page itself names: the script, what it preloads, the stylesheets. */
const named = [...read('index.html').matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g)].map(
  ([, file = '']) => file,
);

/** Only who writes procedures opens it; its files come when it is opened. */
const isOfEditor = (file: string): boolean => /^assets\/editor-screen-/.test(file);

test('everything that a job opens is below 250 kB gzipped', () => {
  const ofJob = ours.filter((file) => !isOfEditor(file));
  console.log(`for a job: ${kB(ofJob).toFixed(2)} kB gzipped; with the editor: ${kB(ours).toFixed(1)} kB`);
  expect(ours.some(isOfEditor)).toBe(true);
  expect(ofJob.some((file) => /^assets\/job-screens-.*\.js$/.test(file))).toBe(true);
  expect(kB(ofJob)).toBeLessThan(250);
  // They come as files of their own, and are in no script.
  const demos = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((file) =>
    /oil-cooler-.*\.json$/.test(file),
  );
  expect(demos.length).toBe(1);
  expect(ofJob.filter((file) => read(file).includes('Oil cooler of the drive gearbox'))).toEqual([]);
});

test('the start screen comes with less than 100 kB of it', () => {
  const first = withImports(named);
  console.log(`first load: ${kB(first).toFixed(1)} kB gzipped: ${first.join(', ')}`);
  expect(first.filter((file) => file.endsWith('.js')).length).toBeGreaterThan(0);
  expect(first.some((file) => file.endsWith('.css'))).toBe(true);
  expect(first.filter((file) => /screen/.test(file))).toEqual([]);
  expect(kB(first)).toBeLessThan(100);
});

test('no script imports one that imports it: each finds what it takes ready', () => {
  const scripts = ours.filter((file) => file.startsWith('assets/') && file.endsWith('.js'));
  const reached = (file: string): readonly string[] => withImports(importsOf(file));
  expect(scripts.filter((file) => reached(file).includes(file))).toEqual([]);
  expect(scripts.some((file) => reached(file).length > 2)).toBe(true);
});
