import { readFileSync } from 'node:fs';
import path from 'node:path';
import type * as solid from 'solid-js';
import fc from 'fast-check';
import * as fflate from 'fflate';
import * as jose from 'jose';
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

/** Builds a page that takes in these files of libraries. @returns its script */
async function pageOf(taken: readonly string[]): Promise<string> {
  const page: Plugin = {
    name: 'page',
    resolveId: (id) => (id === 'page' ? id : null),
    load: (id) => (id === 'page' ? taken.map((file, i) => `export * as m${i} from '${file}';`).join('') : null),
  };
  const options = { rolldownOptions: { input: 'page', preserveEntrySignatures: 'strict' }, write: false } as const;
  const made = await build({ configFile: false, logLevel: 'silent', plugins: [page, leaveOut()], build: options });
  const [script] = 'output' in made ? made.output : [];
  return script?.type === 'chunk' ? script.code : '';
}

/** Why the build of such a page stopped; null where it did not. */
const stopsWith = (taken: readonly string[]): Promise<string | null> => pageOf(taken).then(() => null, String);

/** Of which something is left out. */
const files = [
  'fflate/esm/browser.js',
  'solid-js/dist/solid.js',
  'solid-js/web/dist/web.js',
  'jose/dist/webapi/lib/jws_algorithms.js',
  'jose/dist/webapi/jwk/thumbprint.js',
].map((file) => path.join(libraries, file));

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

test('of what signs, the one algorithm of seals is left, to the letter; every other is refused', async () => {
  const script = await pageOf([path.join(libraries, 'jose/dist/webapi/index.js'), ...files]);
  const { m0: cut } = (await import(`data:text/javascript,${encodeURIComponent(script)}`)) as { m0: typeof jose };
  const payload = new TextEncoder().encode('what is sealed');
  const sealed = async (by: typeof jose, alg: string) => {
    const { privateKey, publicKey } = await jose.generateKeyPair(alg, { extractable: true });
    const jws = await new by.CompactSign(payload).setProtectedHeader({ alg }).sign(privateKey);
    return { jws, publicKey };
  };
  for (const [signs, verifies] of [
    [cut, jose],
    [jose, cut],
  ] as const) {
    const { jws, publicKey } = await sealed(signs, 'ES256');
    expect((await verifies.compactVerify(jws, publicKey)).payload).toEqual(payload);
    const jwk = await jose.exportJWK(publicKey);
    expect(await cut.calculateJwkThumbprint(jwk)).toBe(await jose.calculateJwkThumbprint(jwk));
  }
  for (const alg of ['RS256', 'PS512', 'ES384', 'Ed25519']) {
    const { jws, publicKey } = await sealed(jose, alg);
    await expect(cut.compactVerify(jws, publicKey)).rejects.toThrow('not supported');
    await expect(sealed(cut, alg)).rejects.toThrow('not supported');
  }
  for (const kty of ['RSA', 'OKP', 'oct'])
    await expect(
      cut.calculateJwkThumbprint({ kty, e: 'AQAB', n: 'AQ', k: 'AQ', crv: 'Ed25519', x: 'AQ' }),
    ).rejects.toThrow('unsupported');
});

test('a library without such a place stops the build', () =>
  expect(() => built('export const nothing = 0;', '/fflate/esm/browser.js')).toThrow(/no compression .* any more/));

describe('a library whose file is no longer taken in stops the build', () => {
  test('all of them are in it', async () => expect(await stopsWith(files)).toBeNull());
  // What makes thumbprints takes in the algorithms by itself.
  test.each(files.filter((file) => !file.endsWith('jws_algorithms.js')))('without %s', async (file) =>
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
