import { readFileSync } from 'node:fs';
import path from 'node:path';
import type * as solid from 'solid-js';
import fc from 'fast-check';
import * as fflate from 'fflate';
import { build, type Plugin } from 'vite';
import { describe, expect, test } from 'vitest';
import { leaveOut } from '../../src/cli/leave-out.ts';

const libraries = path.resolve(import.meta.dirname, '../../node_modules');

/** What the build makes of a file; null where it leaves it as it is. */
function built(code: string, file: string): string | null {
  const transform = leaveOut().transform as unknown as (code: string, id: string) => { code: string } | null;
  const error = (why: string): never => {
    throw new Error(why);
  };
  return transform.call({ error } as never, code, file)?.code ?? null;
}

/** Builds a page that takes in these files of libraries; resolves to why the build stopped, null where it did not. */
async function stopsWith(taken: readonly string[]): Promise<string | null> {
  const page: Plugin = {
    name: 'page',
    resolveId: (id) => (id === 'page' ? id : null),
    load: (id) => (id === 'page' ? taken.map((file) => `export * as m${file.length} from '${file}';`).join('') : null),
  };
  const input = { rolldownOptions: { input: 'page' }, write: false };
  return await build({ configFile: false, logLevel: 'silent', plugins: [page, leaveOut()], build: input }).then(
    () => null,
    String,
  );
}

const source = (file: string): string => readFileSync(path.join(libraries, file), 'utf8');

/** The module that the build makes of a file of a library. */
const asBuilt = async <Module>(file: string): Promise<Module> =>
  (await import(`data:text/javascript,${encodeURIComponent(built(source(file), `/${file}`) ?? '')}`)) as Module;

describe('of what packs files', () => {
  const mtime = new Date(2026, 0, 1);
  test('what stores parts is left, to the byte', async () => {
    const { zipSync } = await asBuilt<typeof fflate>('fflate/esm/browser.js');
    fc.assert(
      fc.property(fc.dictionary(fc.stringMatching(/^[a-zé]{1,9}$/), fc.uint8Array()), (parts) => {
        const options = { level: 0, mtime } as const;
        expect(zipSync(parts, options)).toEqual(fflate.zipSync(parts, options));
      }),
    );
  });
  test('what compresses is not: who asks for it is refused', async () => {
    const { zipSync } = await asBuilt<typeof fflate>('fflate/esm/browser.js');
    expect(() => zipSync({ part: new Uint8Array(9) }, { mtime })).toThrow();
  });
});

test('of what draws, signals, memos and resources are left', async () => {
  const { createMemo, createResource, createRoot, createSignal } =
    await asBuilt<typeof solid>('solid-js/dist/solid.js');
  const [loaded, sums] = createRoot(() => {
    const [value, setValue] = createSignal(1);
    const double = createMemo(() => 2 * value());
    const seen = [double()];
    setValue(5);
    seen.push(double());
    return [createResource(() => Promise.resolve('loaded'))[0], seen];
  });
  expect(sums).toEqual([2, 10]);
  expect(loaded.loading).toBe(true);
  await Promise.resolve();
  await Promise.resolve();
  expect(loaded()).toBe('loaded');
});

test('a library without such a place stops the build', () =>
  expect(() => built('export const nothing = 0;', '/fflate/esm/browser.js')).toThrow(/no compression .* any more/));

describe('a library whose file is no longer taken in stops the build', () => {
  const files = ['fflate/esm/browser.js', 'solid-js/dist/solid.js', 'solid-js/web/dist/web.js'].map((file) =>
    path.join(libraries, file),
  );
  test('all of them are in it', async () => expect(await stopsWith(files)).toBeNull());
  test.each(files)('without %s', async (file) =>
    expect(await stopsWith(files.filter((other) => other !== file))).toContain('is not in the build any more'),
  );
});

test.each(['startTransition', 'useTransition', 'hydrate'])('a source that takes %s stops the build', (name) => {
  expect(() => built(`import { ${name} } from 'solid-js';`, '/app/src/ui/part.tsx')).toThrow(name);
  expect(built(`import { createSignal } from 'solid-js';`, '/app/src/ui/part.tsx')).toBeNull();
});

test.each(['dist/solid.js', 'web/dist/web.js'])(
  'what %s itself is made of does not, wherever the project lies',
  (file) =>
    expect(built(source(`solid-js/${file}`), `/home/me/src/bothhands/node_modules/solid-js/${file}`)).not.toBeNull(),
);
