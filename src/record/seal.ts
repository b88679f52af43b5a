/**
 * The seal of a record: one signature over all that the record comes down to.
 *
 * It is a JWS (RFC 7515) by ES256 (RFC 7518): any JOSE tool can check it. Its payload is a statement in canonical JSON;
 * its protected header carries the public key (JWK, RFC 7517) and, as `kid`, the thumbprint of that key (RFC 7638).
 *
 * It lies beside the entries and not among them: it signs the head of the chain, so that no entry can hold it. A seal is
 * made each time a record is saved, also while work is under way; `closedAt` says whether the work was done by then.
 *
 * A good seal shows that the entries are those which the owner of the key saved, all of them. Whose key it is, it cannot
 * show: anybody can write a record anew and seal it with a key of their own. The thumbprint is therefore to be compared
 * with the one known of the device, noted elsewhere, as the head is.
 */
import {
  base64url,
  calculateJwkThumbprint,
  CompactSign,
  compactVerify,
  decodeProtectedHeader,
  EmbeddedJWK,
  exportJWK,
} from 'jose';
import * as v from 'valibot';
import { fileFindings } from '../words/file-findings.ts';
import { canonical, type Entry } from './entry.ts';
import { IN_WORDS } from './exactly.ts';
import { rootOf } from './merkle.ts';
import type { SessionRead, SessionRecord } from './session-record.ts';

/** The version in which statements are made. Version 2 added when the seal was made; one of version 1 is read without it. */
export const SEAL_VERSION = 2;
const TYPE = 'bothhands-seal';
const ALGORITHM = 'ES256';

const Hash = v.pipe(v.string(), v.hash(['sha256']));
const Stated = {
  format: v.literal(TYPE),
  session: v.string(),
  /** How many entries there are. */
  entries: v.pipe(v.number(), v.safeInteger(), v.minValue(1)),
  /** Hash of the last entry. */
  head: Hash,
  /** Merkle root over the entries (RFC 6962). */
  root: Hash,
  /** SHA-256 of the canonical JSON of the procedure, as the opening entry states it. */
  procedureHash: Hash,
  /** The program that made the seal, with its version. */
  app: v.string(),
  /** When the work was closed (RFC 3339); null where it was still under way. */
  closedAt: v.nullable(v.string()),
} as const;
const StatementSchema = v.variant('version', [
  v.strictObject({ ...Stated, version: v.literal(1) }),
  v.strictObject({
    ...Stated,
    version: v.literal(SEAL_VERSION),
    /** When the seal was made, by the clock of the device that made it (RFC 3339). */
    sealedAt: v.pipe(v.string(), v.isoTimestamp()),
  }),
]);

/** What a seal states of a record. */
export type Statement = v.InferOutput<typeof StatementSchema>;

/** A key for ES256, made by WebCrypto: its private half need not be extractable. */
export type SigningKey = Pick<CryptoKeyPair, 'privateKey' | 'publicKey'>;

/** What came of checking a seal against a record. */
export type SealFinding =
  | { readonly kind: 'none' }
  | { readonly kind: 'good'; readonly thumbprint: string; readonly statement: Statement }
  /** `at` is the first entry that is not as it was sealed, where that can be told. */
  | { readonly kind: 'bad'; readonly at: number | null; readonly why: string };

/** Who seals, and when (RFC 3339). */
export interface Sealing {
  /** The program, with its version. */
  readonly app: string;
  readonly at: string;
}

/** The statement about a whole record. @throws TypeError where the record is broken: only a whole one is sealed */
export const statementOf = (record: SessionRecord, { app, at }: Sealing): Statement => ({
  ...factsOf(record, app),
  version: SEAL_VERSION,
  sealedAt: at,
});

/** When a seal was made; null where it does not say so. */
export const sealedAt = (statement: Statement): string | null =>
  statement.version === SEAL_VERSION ? statement.sealedAt : null;

/** What any version of the statement says. @throws TypeError where the record is broken */
function factsOf(record: SessionRecord, app: string): Omit<Statement, 'version' | 'sealedAt'> {
  const { id, entries, verification } = record;
  const [first] = entries;
  if (verification.kind !== 'intact' || first?.body.kind !== 'opened')
    throw new TypeError('Only a record that is whole can be sealed.');
  return {
    format: TYPE,
    session: id,
    entries: entries.length,
    head: verification.head,
    root: rootOf(entries),
    procedureHash: first.body.procedureHash,
    app,
    closedAt: closingOf(entries),
  };
}

const closingOf = (entries: readonly Entry[]): string | null =>
  entries.find(({ body }) => body.kind === 'closed')?.at.utc ?? null;

/**
 * Seals a record: a JWS in its compact form.
 * @throws TypeError where the record is broken
 */
export async function sealRecord(
  record: SessionRecord,
  sealing: Sealing,
  { privateKey, publicKey }: SigningKey,
): Promise<string> {
  const statement = statementOf(record, sealing);
  const { kty, crv, x, y } = v.parse(PublicKey, await exportJWK(publicKey));
  const jwk = { kty, crv, x, y };
  return new CompactSign(new TextEncoder().encode(canonical(statement)))
    .setProtectedHeader({ alg: ALGORITHM, typ: TYPE, kid: await calculateJwkThumbprint(jwk), jwk })
    .sign(privateKey);
}

const Coordinate = v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{43}$/));
const PublicKey = v.object({ kty: v.literal('EC'), crv: v.literal('P-256'), x: Coordinate, y: Coordinate });
const Header = v.strictObject({
  alg: v.literal(ALGORITHM),
  typ: v.literal(TYPE),
  kid: v.string(),
  jwk: v.strictObject(PublicKey.entries),
});

/** The thumbprint of a public key (RFC 7638), by which seals and entries name the device. */
export const thumbprintOf = async (publicKey: CryptoKey): Promise<string> =>
  calculateJwkThumbprint(v.parse(PublicKey, await exportJWK(publicKey)));

/**
 * Checks a seal that was made when the record was closed, and that lies beside it. What may follow a closing, and nothing
 * else may, is taken as it is.
 */
export async function checkClosingSeal(seal: string | null, record: SessionRecord): Promise<SealFinding> {
  const signed = seal === null ? null : await signedBy(seal);
  const sealed = signed === null || typeof signed === 'string' ? Infinity : signed.statement.entries;
  const entries = record.entries.slice(0, sealed);
  const last = entries.at(-1);
  const isLonger = record.verification.kind === 'intact' && last !== undefined && record.entries.length > sealed;
  const part: SessionRecord = isLonger
    ? { ...record, entries, verification: { kind: 'intact', entries: entries.length, head: last.hash } }
    : record;
  return checkSeal(seal, { kind: 'readable', record: part });
}

/** Checks a seal: the signature first, then what it states against the record. It never throws. */
export async function checkSeal(seal: string | null, read: SessionRead): Promise<SealFinding> {
  if (seal === null) return { kind: 'none' };
  const signed = await signedBy(seal);
  if (typeof signed === 'string') return { kind: 'bad', at: null, why: signed };
  const difference = differenceFrom(signed.statement, read);
  return difference === null ? { kind: 'good', ...signed } : { kind: 'bad', ...difference };
}

/** A statement with the thumbprint of the key that signed it, or why the seal is none. */
async function signedBy(seal: string): Promise<{ statement: Statement; thumbprint: string } | string> {
  try {
    const header = v.safeParse(Header, decodeProtectedHeader(seal), IN_WORDS);
    if (!header.success)
      return fileFindings.seal.noSeal(v.getDotPath(header.issues[0]) ?? '', header.issues[0].message);
    const thumbprint = await calculateJwkThumbprint(header.output.jwk);
    if (header.output.kid !== thumbprint) return fileFindings.seal.otherThumbprint;
    // The last digit of a signature holds bits that no decoder looks at: only the one way of writing it is let in.
    const signature = seal.slice(seal.lastIndexOf('.') + 1);
    if (base64url.encode(base64url.decode(signature)) !== signature) return fileFindings.seal.signatureNotWell;
    const { payload } = await compactVerify(seal, EmbeddedJWK, { algorithms: [ALGORITHM] });
    return statementIn(new TextDecoder().decode(payload), thumbprint);
  } catch {
    return fileFindings.seal.signatureNotFitting;
  }
}

function statementIn(text: string, thumbprint: string): { statement: Statement; thumbprint: string } | string {
  const found: unknown = JSON.parse(text);
  const statement = v.safeParse(StatementSchema, found, IN_WORDS);
  if (!statement.success) {
    const field = v.getDotPath(statement.issues[0]) ?? '';
    return fileFindings.seal.statementUnreadable(field, statement.issues[0].message);
  }
  return { statement: statement.output, thumbprint };
}

type Difference = Omit<Extract<SealFinding, { kind: 'bad' }>, 'kind'>;

/** The first thing in which a record is not what was sealed; null where it is the same. */
function differenceFrom(sealed: Statement, read: SessionRead): Difference | null {
  if (read.kind === 'unreadable' || read.record.verification.kind === 'broken') {
    const { verification } = read.kind === 'unreadable' ? read : read.record;
    const at = verification.kind === 'broken' ? verification.at : null;
    return { at, why: fileFindings.seal.otherEntries };
  }
  const { record } = read;
  const { entries } = record;
  const found = factsOf(record, sealed.app);
  if (found.session !== sealed.session) return { at: null, why: fileFindings.seal.otherSession(sealed.session) };
  if (entries.length < sealed.entries) {
    return { at: entries.length, why: fileFindings.seal.cutOff(sealed.entries, entries.length) };
  }
  if (entries[sealed.entries - 1]?.hash !== sealed.head) return { at: null, why: fileFindings.seal.writtenAnew };
  if (entries.length > sealed.entries) return { at: sealed.entries, why: fileFindings.seal.addedLater };
  // When it was made is the sealer's own word: the entries cannot say.
  return canonical({ ...sealed, ...found }) === canonical(sealed)
    ? null
    : { at: null, why: fileFindings.seal.otherStatement };
}
