import canonicalize from 'canonicalize';
import * as v from 'valibot';
import type { SessionEvent } from '../session/event.ts';

/** The version of the record's format: every entry carries it, and old versions stay readable. */
export const RECORD_VERSION = 1;

/** `prev` of the first entry: there is nothing before it. */
export const GENESIS = '0'.repeat(64);

/** One line of the record: an event, bound to all that came before it. */
export interface Entry extends SessionEvent {
  readonly v: typeof RECORD_VERSION;
  readonly session: string;
  /** Hash of the entry before this one, as 64 hexadecimal digits. */
  readonly prev: string;
  /** SHA-256 over the canonical JSON (RFC 8785) of this entry without `hash`. */
  readonly hash: string;
}

/** Canonical JSON text of a value (RFC 8785). @throws where the value has no JSON form, such as NaN or a lone surrogate */
export function canonical(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('Only a JSON value has a canonical form.');
  return text;
}

/** SHA-256 (FIPS 180-4) of UTF-8 text, as 64 hexadecimal digits. */
export async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Binds an event to the record after `last` (null at the start). */
export async function seal(session: string, event: SessionEvent, last: Entry | null): Promise<Entry> {
  const open = { v: RECORD_VERSION, session, ...event, prev: last?.hash ?? GENESIS } as const;
  return { ...open, hash: await sha256(canonical(open)) };
}

/** What an entry must look like at the door. The body is read by the fold, which knows every kind of event. */
const EntryShape = v.looseObject({
  v: v.literal(RECORD_VERSION),
  session: v.string(),
  seq: v.pipe(v.number(), v.integer(), v.minValue(0)),
  at: v.strictObject({ utc: v.pipe(v.string(), v.isoTimestamp()), monotonic: v.number() }),
  source: v.picklist(['voice', 'gesture', 'pedal', 'touch', 'key', 'program']),
  person: v.string(),
  body: v.looseObject({ kind: v.string() }),
  prev: v.pipe(v.string(), v.hash(['sha256'])),
  hash: v.pipe(v.string(), v.hash(['sha256'])),
});

export type Verification =
  | { readonly kind: 'intact'; readonly entries: number; readonly head: string }
  | { readonly kind: 'broken'; readonly at: number; readonly why: string };

/** The hash of an entry's content; null where it has no JSON form, as no entry had when it was written. */
async function hashOf(open: Omit<Entry, 'hash'>): Promise<string | null> {
  try {
    return await sha256(canonical(open));
  } catch {
    return null;
  }
}

/**
 * Checks a record from its first entry to its last: shape, order, chain and hashes. The first fault is named.
 *
 * A chain kept on one device proves that nothing was changed inside it, but not that nothing was cut off its end, nor
 * that it was not written anew from some entry to its end: both are chains as good as the first. Only a copy of a later
 * hash somewhere else (`head`, on the printed record or with another person) shows these.
 */
export async function verify(entries: readonly unknown[]): Promise<Verification> {
  let prev = GENESIS;
  let session: string | null = null;
  for (const [index, found] of entries.entries()) {
    const broken = (why: string): Verification => ({ kind: 'broken', at: index, why });
    const shape = v.safeParse(EntryShape, found);
    if (!shape.success)
      return broken(`not an entry of a record: ${v.getDotPath(shape.issues[0]) ?? ''} ${shape.issues[0].message}`);
    const entry = shape.output;
    session ??= entry.session;
    if (entry.session !== session) return broken('it belongs to another session');
    if (entry.seq !== index)
      return broken(`its number is ${entry.seq}: an entry is missing, doubled or out of its place`);
    if (entry.prev !== prev) return broken('it does not follow from the entry before it');
    const { hash, ...open } = found as Entry;
    if ((await hashOf(open)) !== hash) return broken('its content was changed after it was written');
    prev = hash;
  }
  return { kind: 'intact', entries: entries.length, head: prev };
}
