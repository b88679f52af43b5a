/** Keys made in a test, thrown away with it. */
import type { SigningKey } from '../../src/record/seal.ts';

export const makeKey = (): Promise<SigningKey> =>
  crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);
