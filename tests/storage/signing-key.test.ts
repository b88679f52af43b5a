import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { get, set } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { signingKey } from '../../src/storage/signing-key.ts';
import { createStrictStore } from '../../src/storage/strict-store.ts';

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => vi.unstubAllGlobals());

const text = new TextEncoder().encode('text');
const ES256 = { name: 'ECDSA', hash: 'SHA-256' };

describe('the signing key of a device', () => {
  test('signs, and its private half cannot be taken out', async () => {
    const { privateKey, publicKey } = await signingKey();
    const signature = await crypto.subtle.sign(ES256, privateKey, text);
    expect(await crypto.subtle.verify(ES256, publicKey, signature, text)).toBe(true);
    expect(privateKey.extractable).toBe(false);
    await expect(crypto.subtle.exportKey('jwk', privateKey)).rejects.toThrow();
  });
  test('is the same at the next visit', async () => {
    const first = await signingKey();
    const { publicKey } = await signingKey();
    const signature = await crypto.subtle.sign(ES256, first.privateKey, text);
    expect(await crypto.subtle.verify(ES256, publicKey, signature, text)).toBe(true);
  });
  test('is one for all windows that ask at once', async () => {
    const keys = await Promise.all(Array.from({ length: 4 }, () => signingKey()));
    const publics = await Promise.all(keys.map(({ publicKey }) => crypto.subtle.exportKey('jwk', publicKey)));
    expect(new Set(publics.map(({ x }) => x)).size).toBe(1);
  });
  test('is made anew where what was kept is none', async () => {
    const store = createStrictStore('bothhands-key', 'keys');
    await set('signing key', { privateKey: 'gone', publicKey: 'gone' }, store);
    const { privateKey } = await signingKey(store);
    expect(privateKey).toBeInstanceOf(CryptoKey);
    expect(await get('signing key', store)).toMatchObject({ privateKey: { type: 'private' } });
  });
  test('is asked for in vain where the browser keeps nothing', async () => {
    const closed = () => Promise.reject(new Error('The browser keeps nothing.'));
    await expect(signingKey(closed)).rejects.toThrow('The browser keeps nothing.');
  });
});
