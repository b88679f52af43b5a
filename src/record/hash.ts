/** SHA-256 (FIPS 180-4) over bytes, and hashes as text. */

/** SHA-256 of bytes: 32 bytes. */
export const digest = async (bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> =>
  new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));

/** Bytes as lower-case hexadecimal digits, two for each. */
export const toHex = (bytes: Uint8Array): string => bytes.reduce((text, byte) => text + (PAIRS[byte] ?? ''), '');
const PAIRS = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

/** The bytes that pairs of hexadecimal digits name. @throws RangeError where the text is no such pairs */
export function fromHex(text: string): Uint8Array<ArrayBuffer> {
  if (!/^(?:[0-9a-f]{2})*$/i.test(text)) throw new RangeError(`“${text}” is not pairs of hexadecimal digits.`);
  const bytes = new Uint8Array(text.length / 2);
  for (let at = 0; at < bytes.length; at++) bytes[at] = Number.parseInt(text.slice(2 * at, 2 * at + 2), 16);
  return bytes;
}
