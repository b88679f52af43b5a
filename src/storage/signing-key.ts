/**
 * The key that this device seals records with. WebCrypto makes it such that its private half can be used and never read,
 * not by this program either; this browser keeps it. Where a browser forgets it, with all its data, a new one is made:
 * old seals stay good, and new ones carry another thumbprint.
 */
import { get, update, type UseStore } from 'idb-keyval';
import type { SigningKey } from '../record/seal.ts';
import { createStrictStore } from './strict-store.ts';

const KEY = 'signing key';

/**
 * The key of this device; the first call makes it.
 * @throws where the browser keeps nothing: a key that is forgotten at once would be nobody's
 */
export async function signingKey(store: UseStore = createStrictStore('bothhands-key', 'keys')): Promise<SigningKey> {
  const kept = await get<unknown>(KEY, store);
  if (isSigningKey(kept)) return kept;
  const { privateKey, publicKey } = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, [
    'sign',
    'verify',
  ]);
  let agreed: SigningKey = { privateKey, publicKey };
  // Another window may have made one meanwhile: one transaction looks and writes, so that all windows get the same.
  await update<unknown>(KEY, (found) => (agreed = isSigningKey(found) ? found : agreed), store);
  return agreed;
}

const isSigningKey = (found: unknown): found is SigningKey =>
  typeof found === 'object' &&
  found !== null &&
  'privateKey' in found &&
  'publicKey' in found &&
  found.privateKey instanceof CryptoKey &&
  found.publicKey instanceof CryptoKey;
