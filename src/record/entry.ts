import * as v from 'valibot';
import type { SessionEvent } from '../session/event.ts';
import { recordFindings } from '../words/record-findings.ts';
import { canonical, canonicalContent } from './canonical.ts';
import { EventBodySchema } from './event-schema.ts';
import { IN_WORDS } from './exactly.ts';
import { digest, toHex } from './hash.ts';
import { HeardSchema, InstantSchema, SourceSchema } from './input-schema.ts';
import { hashNow } from './sha256.ts';

export { canonical } from './canonical.ts';

/**
 * The version in which entries are written: every entry carries its own. Version 2 added fields that may be absent (sound,
 * speech model, device), version 3 added kinds of event. Neither changed what there was: older entries are read as they are.
 */
export const RECORD_VERSION = 3;
const READ_VERSIONS = [1, 2, RECORD_VERSION] as const;

/** `prev` of the first entry: there is nothing before it. */
export const GENESIS = '0'.repeat(64);

/** One line of the record: an event, bound to all that came before it. */
export interface Entry extends SessionEvent {
  readonly v: (typeof READ_VERSIONS)[number];
  readonly session: string;
  /** Hash of the entry before this one, as 64 hexadecimal digits. */
  readonly prev: string;
  /** SHA-256 over the canonical JSON (RFC 8785) of this entry without `hash`. */
  readonly hash: string;
}

/** SHA-256 (FIPS 180-4) of UTF-8 text, as 64 hexadecimal digits. */
export const sha256 = async (text: string): Promise<string> => toHex(await digest(utf8.encode(text)));
const utf8 = new TextEncoder();

/** Binds an event to the record after `last` (null at the start). */
export async function seal(session: string, event: SessionEvent, last: Entry | null): Promise<Entry> {
  const open = { v: RECORD_VERSION, session, ...event, prev: last?.hash ?? GENESIS } as const;
  return { ...open, hash: await sha256(canonical(open)) };
}

const Hash = v.pipe(v.string(), v.hash(['sha256']));

/** What binds an entry to the others. It is looked at first: whether an entry was changed matters more than how. */
const Bond = v.looseObject({
  v: v.picklist(READ_VERSIONS),
  session: v.string(),
  seq: v.pipe(v.number(), v.safeInteger(), v.minValue(0)),
  at: InstantSchema,
  source: SourceSchema,
  person: v.string(),
  device: v.exactOptional(v.string()),
  body: v.looseObject({ kind: v.string() }),
  prev: Hash,
  hash: Hash,
});

/** An entry with all that it says. */
export const EntrySchema = v.strictObject({
  ...Bond.entries,
  heard: v.nullable(HeardSchema),
  body: EventBodySchema,
}) satisfies v.GenericSchema<unknown, Entry>;

/** In the place of an entry: what was found there could not even be read. */
export class Misread {
  constructor(readonly why: string) {}
}

/** In the place of an entry: what was read from a line, with that line, which is its canonical JSON and need not be made again. */
export class Line {
  constructor(
    readonly value: unknown,
    readonly text: string,
  ) {}
}

export type Verification =
  | { readonly kind: 'intact'; readonly entries: number; readonly head: string }
  | { readonly kind: 'broken'; readonly at: number; readonly why: string };

/** A record as it was found: whether it is whole, and the entries before the first fault, which can be read. */
export interface Verified {
  readonly verification: Verification;
  readonly intact: readonly Entry[];
}

const valueOf = (found: unknown): unknown => (found instanceof Line ? found.value : found);

/** The hash of an entry's content; null where it has no JSON form, as no entry had when it was written. */
function contentHash(found: unknown): string | null {
  // It is over what was found, not over what the schema takes from it.
  const value = valueOf(found);
  if (typeof value !== 'object' || value === null) return null;
  try {
    return toHex(hashNow(utf8.encode(canonicalContent(value, found instanceof Line ? found.text : undefined))));
  } catch {
    return null;
  }
}

/**
 * Checks a record from its first entry to its last: bond, order, chain, hashes, and what each entry says. The first
 * fault is named.
 *
 * A chain kept on one device proves that nothing was changed inside it, but not that nothing was cut off its end, nor
 * that it was not written anew from some entry to its end: both are chains as good as the first. Only a copy of a later
 * hash somewhere else (`head`, on the printed record or with another person) shows these.
 */
export const verify = (found: readonly unknown[]): Verification => verifyEntries(found).verification;

/**
 * Checks a record as `verify` does, and gives the entries that can be trusted: all before the first fault.
 * @param found each a JSON value, or a `Line` or `Misread` where it comes from a file
 * @param session the session that the entries must belong to; that of the first entry where none is given
 */
export function verifyEntries(found: readonly unknown[], session?: string): Verified {
  const intact: Entry[] = [];
  for (const each of found) {
    const read = readNext(each, intact.at(-1) ?? null, session);
    if (typeof read === 'string') return { verification: { kind: 'broken', at: intact.length, why: read }, intact };
    intact.push(read);
  }
  const head = intact.at(-1)?.hash ?? GENESIS;
  return { verification: { kind: 'intact', entries: intact.length, head }, intact };
}

/** The entry that follows `last`, or why what was found is none. */
function readNext(found: unknown, last: Entry | null, session = last?.session): Entry | string {
  if (found instanceof Misread) return found.why;
  const value = valueOf(found);
  const entry = v.safeParse(EntrySchema, value, IN_WORDS);
  // What passes the whole schema passes its bond; where it does not, whether it is bound is said first.
  const bond = entry.success ? entry : v.safeParse(Bond, value, IN_WORDS);
  if (!bond.success) return recordFindings.noEntry(firstIssue(bond.issues));
  const { output } = bond;
  if (session !== undefined && output.session !== session) return recordFindings.otherSession;
  if (output.seq !== (last?.seq ?? -1) + 1) return recordFindings.outOfPlace(output.seq);
  if (output.prev !== (last?.hash ?? GENESIS)) return recordFindings.doesNotFollow;
  if (output.hash !== contentHash(found)) return recordFindings.changed;
  return entry.success ? entry.output : recordFindings.unreadable(firstIssue(entry.issues));
}

/** What was found may be of any length: a reason is a line. */
const LONGEST_REASON = 200;

const firstIssue = ([issue]: readonly [v.BaseIssue<unknown>, ...v.BaseIssue<unknown>[]]): string => {
  const reason = `${v.getDotPath(issue) ?? ''} ${issue.message}`;
  return reason.length > LONGEST_REASON ? `${reason.slice(0, LONGEST_REASON)}…` : reason;
};
