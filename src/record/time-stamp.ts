/**
 * Time-stamps by the Time-Stamp Protocol (RFC 3161): a request for one over the seal of a record, and what an answer says.
 *
 * The clock of a device can be set, and its key signs whatever its owner wants. An authority that has nothing to do with
 * either signs that it saw a hash at a time: from then on nobody can have written the record later. Only the hash goes to
 * it. It is that of the seal, which states the head of the chain and the Merkle root over all entries.
 */
import { ContentInfo, id_signedData, SignedData } from '@peculiar/asn1-cms';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import { id_ct_tstInfo, MessageImprint, PKIStatus, TimeStampReq, TimeStampResp, TSTInfo } from '@peculiar/asn1-tsp';
import { AlgorithmIdentifier } from '@peculiar/asn1-x509';
import { digest, toHex } from './hash.ts';

/** SHA-256 (FIPS 180-4), as an object identifier. */
const SHA_256 = '2.16.840.1.101.3.4.2.1';
/** NULL in DER. Its parameters may as well be absent (RFC 5754); authorities read both, some older ones only this. */
const NULL_PARAMETERS = Uint8Array.of(0x05, 0x00).buffer;

/** Bytes of chance that a nonce is made of. */
export const NONCE_BYTES = 16;

/** What is stamped: the SHA-256 of the seal as it stands in the file, 32 bytes. */
export const imprintOf = (seal: string): Promise<Uint8Array<ArrayBuffer>> => digest(new TextEncoder().encode(seal));

/**
 * A request (TimeStampReq, RFC 3161, section 2.4.1) in DER, as it is sent as `application/timestamp-query`. It asks for
 * the certificate of the authority, so that the answer can be checked by itself later.
 * @param imprint 32 bytes
 * @param chance 16 bytes of chance: the answer repeats them, so that an old one cannot pass for it
 * @throws RangeError where either has another length
 */
export function timeStampRequest(imprint: Uint8Array<ArrayBuffer>, chance: Uint8Array): Uint8Array<ArrayBuffer> {
  if (imprint.length !== 32) throw new RangeError(`A SHA-256 has 32 bytes; this one has ${imprint.length}.`);
  if (chance.length !== NONCE_BYTES) throw new RangeError(`A nonce is made of ${NONCE_BYTES} bytes of chance.`);
  const request = new TimeStampReq({
    messageImprint: new MessageImprint({
      hashAlgorithm: new AlgorithmIdentifier({ algorithm: SHA_256, parameters: NULL_PARAMETERS }),
      hashedMessage: new OctetString(imprint),
    }),
    nonce: asPositive(chance).buffer,
    certReq: true,
  });
  return new Uint8Array(AsnConvert.serialize(request));
}

/** A positive whole number in the only way that DER has for it: neither a sign nor a zero in front. */
function asPositive([first = 0, ...rest]: Uint8Array): Uint8Array<ArrayBuffer> {
  return Uint8Array.of((first & 0x7f) | 0x40, ...rest);
}

/** What a request asks for. Hashes and nonces as lower-case hexadecimal digits. */
export interface Requested {
  readonly imprint: string;
  readonly nonce: string | null;
}

/** Reads a request; null where it is none for a SHA-256. */
export function readRequest(bytes: Uint8Array<ArrayBuffer>): Requested | null {
  try {
    const { messageImprint, nonce } = AsnConvert.parse(bytes, TimeStampReq);
    return isSha256(messageImprint) ? { imprint: imprintText(messageImprint), nonce: nonceText(nonce) } : null;
  } catch {
    return null;
  }
}

/** What an answer says. Nothing of it was proved: see `readAnswer`. */
export type TimeStampAnswer =
  | {
      readonly kind: 'stamped';
      readonly imprint: string;
      readonly nonce: string | null;
      /** When the authority says it saw the imprint (RFC 3339). */
      readonly at: string;
      /** By which of its policies, an object identifier. */
      readonly policy: string;
      readonly serial: string;
    }
  /** The authority gave no stamp; `why` in its words. */
  | { readonly kind: 'not granted'; readonly why: string }
  | { readonly kind: 'unreadable'; readonly why: string };

/**
 * Reads an answer (TimeStampResp, RFC 3161, section 2.4.2), or the bare token in it. It never throws.
 *
 * It says what stands in the answer, not whether it is true: the signature of the authority, and who vouches for its
 * certificate, are for a tool that knows which authorities to trust, such as `openssl ts -verify`.
 */
export function readAnswer(bytes: Uint8Array<ArrayBuffer>): TimeStampAnswer {
  try {
    const found = tokenIn(bytes);
    return found instanceof ContentInfo ? stampIn(found) : found;
  } catch {
    return { kind: 'unreadable', why: 'It is no answer by RFC 3161.' };
  }
}

function tokenIn(bytes: Uint8Array<ArrayBuffer>): ContentInfo | TimeStampAnswer {
  const response = attempt(() => AsnConvert.parse(bytes, TimeStampResp));
  if (response === null) return AsnConvert.parse(bytes, ContentInfo);
  const { status, timeStampToken } = response;
  if (timeStampToken && (status.status === PKIStatus.granted || status.status === PKIStatus.grantedWithMods))
    return timeStampToken;
  const words = status.statusString ? [...status.statusString].join('; ') : '';
  return { kind: 'not granted', why: words === '' ? `status ${status.status}` : words };
}

function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}

function stampIn(token: ContentInfo): TimeStampAnswer {
  if (token.contentType !== id_signedData) return { kind: 'unreadable', why: 'It is not signed.' };
  const { eContentType, eContent } = AsnConvert.parse(token.content, SignedData).encapContentInfo;
  const content = eContent?.single;
  if (eContentType !== id_ct_tstInfo || !content) return { kind: 'unreadable', why: 'It holds no time-stamp.' };
  const { messageImprint, nonce, genTime, policy, serialNumber } = AsnConvert.parse(content, TSTInfo);
  if (!isSha256(messageImprint)) return { kind: 'unreadable', why: 'Its hash is no SHA-256.' };
  return {
    kind: 'stamped',
    imprint: imprintText(messageImprint),
    nonce: nonceText(nonce),
    at: genTime.toISOString(),
    policy,
    serial: toHex(new Uint8Array(serialNumber)),
  };
}

const isSha256 = ({ hashAlgorithm, hashedMessage }: MessageImprint): boolean =>
  hashAlgorithm.algorithm === SHA_256 && hashedMessage.byteLength === 32;
const imprintText = ({ hashedMessage }: MessageImprint): string => toHex(new Uint8Array(hashedMessage.buffer));
const nonceText = (nonce: ArrayBuffer | undefined): string | null => (nonce ? toHex(new Uint8Array(nonce)) : null);
