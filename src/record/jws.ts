/**
 * Signed texts in the compact form of JWS (RFC 7515), by the one algorithm that seals use: ES256, which is ECDSA with P-256
 * and SHA-256 (RFC 7518, 3.4). Keys and signatures are the browser's own (Web Cryptography); here is only how they are written.
 */
import { digest } from './hash.ts';

const ECDSA = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;

/** The public half of a key of P-256 (RFC 7518, 6.2.1): its point in base64url. */
export interface PublicJwk {
  readonly kty: 'EC';
  readonly crv: 'P-256';
  readonly x: string;
  readonly y: string;
}

/** A text taken apart; nothing of it is checked yet. */
export interface Jws {
  /** The protected header: what a signer says of key and algorithm. */
  readonly header: unknown;
  readonly payload: Uint8Array<ArrayBuffer>;
  readonly signature: Uint8Array<ArrayBuffer>;
  /** What the signature is over. */
  readonly signed: Uint8Array<ArrayBuffer>;
}

const utf8 = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

/** Bytes in base64url without padding (RFC 7515, 2). */
export const toBase64url = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

/** The bytes of a text in base64url. @throws where it has other characters, or a length that none has */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> {
  if (!/^[\w-]*$/.test(text)) throw new TypeError('There are characters that base64url has not.');
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (byte) => byte.charCodeAt(0));
}

/** Signs a text. @param header the protected header; it has `alg: 'ES256'` */
export async function signText(text: string, header: { readonly alg: 'ES256' }, key: CryptoKey): Promise<string> {
  const signed = `${toBase64url(utf8(JSON.stringify(header)))}.${toBase64url(utf8(text))}`;
  return `${signed}.${toBase64url(new Uint8Array(await crypto.subtle.sign(ECDSA, key, utf8(signed))))}`;
}

/** Takes a text apart. @throws where it has not three parts in base64url, or no JSON as its header */
export function partsOf(jws: string): Jws {
  const [header, payload, signature, ...more] = jws.split('.');
  if (header === undefined || payload === undefined || signature === undefined || more.length > 0)
    throw new TypeError('A JWS has three parts.');
  return {
    header: JSON.parse(new TextDecoder().decode(fromBase64url(header))),
    payload: fromBase64url(payload),
    signature: fromBase64url(signature),
    signed: utf8(`${header}.${payload}`),
  };
}

/** Whether a text was signed by this key. @throws where the point is none of the curve */
export async function isSignedBy({ signature, signed }: Jws, { kty, crv, x, y }: PublicJwk): Promise<boolean> {
  const key = await crypto.subtle.importKey('jwk', { kty, crv, x, y }, ECDSA, false, ['verify']);
  return crypto.subtle.verify(ECDSA, key, signature, signed);
}

/** The thumbprint of a key: SHA-256 of its required members in the order of their names (RFC 7638, 3.2), in base64url. */
export const thumbprintOfJwk = async ({ crv, kty, x, y }: PublicJwk): Promise<string> =>
  toBase64url(await digest(utf8(JSON.stringify({ crv, kty, x, y }))));
