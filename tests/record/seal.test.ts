import { createHash, createPublicKey, verify, type JsonWebKey } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CompactSign, exportJWK } from 'jose';
import { describe, expect, test } from 'vitest';
import { canonical, type Entry } from '../../src/record/entry.ts';
import { rootOf } from '../../src/record/merkle.ts';
import { checkSeal, sealedAt, sealRecord, statementOf, type SealFinding } from '../../src/record/seal.ts';
import { readSessionRecord } from '../../src/record/session-record.ts';
import { affirm, demo, eventOf, next, start, tell } from '../session/play.ts';
import { makeKey } from './keys.ts';
import { recordIn, recordOf, rehashed, SEALING } from './sealed.ts';

const file = new URL('../../demo-data/ropeway-oil-cooler.json', import.meta.url);
const procedure = JSON.parse(readFileSync(file, 'utf8')) as object;
const played = tell(start(demo()), affirm, affirm, next, next, affirm, affirm, next);
const entries = await recordOf(procedure, played.events);
const key = await makeKey();

const read = (found: readonly unknown[], id = 'session') => readSessionRecord(id, found);
const record = await recordIn(entries);
const seal = await sealRecord(record, SEALING, key);
const check = async (text: string | null, found: readonly unknown[] = entries): Promise<SealFinding> =>
  checkSeal(text, await read(found));

/** The three parts of a JWS, decoded. */
const partsOf = (jws: string): readonly string[] =>
  jws.split('.').map((part) => Buffer.from(part, 'base64url').toString('utf8'));

/** A seal over any text, by a key. */
async function signed(payload: string, header: object = {}, by = key): Promise<string> {
  const [own = ''] = partsOf(await sealRecord(record, SEALING, by));
  return new CompactSign(new TextEncoder().encode(payload))
    .setProtectedHeader({ ...(JSON.parse(own) as { alg: string }), ...header })
    .sign(by.privateKey);
}

describe('a seal', () => {
  test('states what the record comes down to', () =>
    expect(statementOf(record, SEALING)).toEqual({
      format: 'bothhands-seal',
      version: 2,
      sealedAt: SEALING.at,
      session: 'session',
      entries: entries.length,
      head: entries.at(-1)?.hash,
      root: rootOf(entries),
      procedureHash: createHash('sha256').update(canonical(procedure)).digest('hex'),
      app: 'Bothhands 9.9.9',
      closedAt: null,
    }));
  test('states when the work was closed', async () => {
    const closed = await recordOf(procedure, [...played.events, eventOf({ kind: 'closed' }, played.events.length)]);
    const { closedAt } = statementOf(await recordIn(closed), SEALING);
    expect(closedAt).toBe(closed.at(-1)?.at.utc);
  });
  test('is a JWS by ES256 that another implementation accepts (RFC 7515, RFC 7518)', () => {
    const [header = '', payload = '', signature = ''] = seal.split('.');
    const { jwk, ...rest } = JSON.parse(Buffer.from(header, 'base64url').toString()) as { jwk: JsonWebKey };
    expect(rest).toMatchObject({ alg: 'ES256', typ: 'bothhands-seal' });
    const publicKey = createPublicKey({ key: jwk, format: 'jwk' });
    const options = { key: publicKey, dsaEncoding: 'ieee-p1363' } as const;
    const text = Buffer.from(`${header}.${payload}`);
    expect(verify('sha256', text, options, Buffer.from(signature, 'base64url'))).toBe(true);
  });
  test('names its key by the thumbprint (RFC 7638: SHA-256 of the required members in order)', async () => {
    const { crv, kty, x, y } = await exportJWK(key.publicKey);
    const thumbprint = createHash('sha256').update(JSON.stringify({ crv, kty, x, y })).digest('base64url');
    expect(JSON.parse(partsOf(seal)[0] ?? '')).toMatchObject({ kid: thumbprint, jwk: { crv, kty, x, y } });
    expect(await check(seal)).toMatchObject({ kind: 'good', thumbprint });
  });
  test('holds nothing of the private key', () =>
    expect(Object.keys(JSON.parse(partsOf(seal)[0] ?? '{}') as object).sort()).toEqual(['alg', 'jwk', 'kid', 'typ']));
  test('is not put on a record that is broken', async () => {
    const broken = await recordIn(entries.map((entry) => (entry.seq === 4 ? { ...entry, person: 'Other' } : entry)));
    await expect(sealRecord(broken, SEALING, key)).rejects.toThrow('Only a record that is whole can be sealed.');
  });
});

describe('a record under a seal', () => {
  test('is as it was sealed', async () =>
    expect(await check(seal)).toEqual({
      kind: 'good',
      thumbprint: (JSON.parse(partsOf(seal)[0] ?? '') as { kid: string }).kid,
      statement: statementOf(record, SEALING),
    }));
  test('may have none', async () => expect(await check(null)).toEqual({ kind: 'none' }));
  test('was cut off at its end, which the chain alone does not show', async () =>
    expect(await check(seal, entries.slice(0, -2))).toEqual({
      kind: 'bad',
      at: entries.length - 2,
      why: `it was cut off: ${entries.length} entries were sealed, ${entries.length - 2} are left`,
    }));
  test('was written anew to its end, which the chain alone does not show', async () => {
    const forged = await recordOf(
      procedure,
      played.events.map((event) => (event.seq < 3 ? event : { ...event, person: 'Somebody else' })),
    );
    expect(await check(seal, forged)).toEqual({
      kind: 'bad',
      at: null,
      why: 'the entries are not those that were sealed: they were rewritten',
    });
  });
  test('was added to', async () => {
    const longer = await recordOf(procedure, [...played.events, eventOf({ kind: 'closed' }, played.events.length)]);
    expect(await check(seal, longer)).toMatchObject({ kind: 'bad', at: entries.length });
  });
  test('is broken', async () => {
    const broken = entries.with(3, await rehashed(entries[3] as Entry, { person: 'Somebody else' }));
    expect(await check(seal, broken)).toMatchObject({ kind: 'bad', at: 4 });
    expect(await check(seal, [null, ...entries.slice(1)])).toMatchObject({ kind: 'bad', at: 0 });
  });
  test('is another one, of another session', async () => {
    const other = await recordIn(
      await Promise.all(entries.slice(0, 1).map((entry) => rehashed(entry, { session: 'other' }))),
      'other',
    );
    const finding = await checkSeal(seal, { kind: 'readable', record: other });
    expect(finding).toEqual({ kind: 'bad', at: null, why: 'it is of another session, session' });
  });
});

test('a seal of version 1, which does not say when it was made, is read as it is', async () => {
  const { sealedAt: _none, ...first } = { sealedAt: '', ...statementOf(record, SEALING), version: 1 };
  const finding = await check(await signed(canonical(first)));
  expect(finding).toMatchObject({ kind: 'good', statement: first });
  if (finding.kind === 'good') expect(sealedAt(finding.statement)).toBeNull();
});

describe('a seal that is none says why', () => {
  const why = async (text: string): Promise<string> => {
    const finding = await check(text);
    if (finding.kind !== 'bad') throw new Error(`It was taken as ${finding.kind}.`);
    return finding.why;
  };
  const CHANGED = 'its signature does not match: it was changed after it was signed, or never was one';
  const statement = statementOf(record, SEALING);

  test.each(['', 'seal', '..', 'a.b.c', '{}', seal.slice(0, -10), `${seal}.`, `${seal}AA`, `.${seal}`])(
    '“%s”',
    async (text) => expect(await why(text)).toMatch(/^its signature|^it is no seal/),
  );
  test('a payload of another record under the old signature', async () => {
    const [header, , signature] = seal.split('.');
    const payload = Buffer.from(canonical({ ...statement, entries: 1 })).toString('base64url');
    expect(await why([header, payload, signature].join('.'))).toBe(CHANGED);
  });
  test('one without a signature (alg none)', async () => {
    const [header = ''] = partsOf(seal);
    const none = { ...(JSON.parse(header) as object), alg: 'none' };
    const forged = [JSON.stringify(none), canonical(statement), ''].map((part) =>
      Buffer.from(part).toString('base64url'),
    );
    expect(await why(forged.join('.'))).toMatch(/^it is not a seal of this format: alg /);
  });
  test('the key of another put in for its own', async () => {
    const { crv, kty, x, y } = await exportJWK((await makeKey()).publicKey);
    expect(await why(await signed(canonical(statement), { jwk: { crv, kty, x, y } }))).toBe(
      'the thumbprint in it is not that of its key',
    );
  });
  test('a key that holds a private half', async () => {
    const { crv, kty, x, y } = await exportJWK(key.publicKey);
    expect(await why(await signed(canonical(statement), { jwk: { crv, kty, x, y, d: 'secret' } }))).toMatch(
      /^it is not a seal/,
    );
  });
  test.each<[string, object]>([
    ['version', { version: 3 }],
    ['sealedAt', { sealedAt: 'yesterday' }],
    ['sealedAt', { version: 1 }],
    ['entries', { entries: 0 }],
    ['entries', { entries: 1e300 }],
    ['head', { head: 'abc' }],
    ['more', { more: true }],
  ])('a statement whose %s is not as expected', async (field, change) =>
    expect(await why(await signed(canonical({ ...statement, ...change })))).toMatch(
      new RegExp(`^what it states cannot be read: ${field} `),
    ),
  );
  test.each<[string, object]>([
    ['root', { root: '0'.repeat(64) }],
    ['procedure', { procedureHash: '0'.repeat(64) }],
    ['closing', { closedAt: '2026-03-01T00:00:00.000Z' }],
  ])('a %s that is not that of the entries', async (_, change) =>
    expect(await why(await signed(canonical({ ...statement, ...change })))).toBe(
      'what it states is not what the entries say',
    ),
  );
  test('any one character of it changed', async () => {
    const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.= \n';
    await fc.assert(
      fc.asyncProperty(fc.nat(seal.length - 1), fc.constantFrom(...digits), async (at, digit) => {
        fc.pre(seal[at] !== digit);
        expect(await check(seal.slice(0, at) + digit + seal.slice(at + 1))).toMatchObject({ kind: 'bad' });
      }),
      { numRuns: 500 },
    );
  });
});
