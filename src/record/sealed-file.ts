/** One session as one file: packed to be kept elsewhere, and opened again with everything in it checked. */
import * as v from 'valibot';
import { fileFindings } from '../words/file-findings.ts';
import { sealedReadme } from '../words/sealed-readme.ts';
import { recordFindings } from '../words/record-findings.ts';
import {
  hashInName,
  packParts,
  PARTS,
  soundName,
  unpackParts,
  type Damage,
  type PartName,
  type Parts,
} from './container.ts';
import { canonical } from './entry.ts';
import { countLines, entryLines, readEntryLines } from './entry-lines.ts';
import { checkSeal, type SealFinding } from './seal.ts';
import { readSessionRecord, type SessionRead, type SessionRecord } from './session-record.ts';
import { checkSounds, deletedSounds, namedSounds, type Sounds, type SoundsFound } from './sounds.ts';

/** What a sealed file is called at its end. */
export const EXTENSION = '.bhsession';

const FORMAT = 'bothhands-session';
/** The version of the file. That of its entries is in each entry, that of its seal in the seal. */
export const FILE_VERSION = 2;

/** More entries than any job has: a file with more is refused before they are read. */
export const MOST_ENTRIES = 100_000;

/** Events may be later than the clock of the reader by this: clocks differ, and some are not set. */
const CLOCKS_DIFFER = 24 * 3_600_000;

/** Whether a file is, as a whole, what was sealed. */
export type FileVerdict =
  | {
      readonly kind: 'intact';
      readonly entries: number;
      /** Hash of the last entry. */
      readonly head: string;
      /** Of the key that sealed it (RFC 7638). */
      readonly thumbprint: string;
      /** When the work was closed (RFC 3339); null where it was under way. */
      readonly closedAt: string | null;
    }
  /** `at` is the first entry that is not as it was, where the fault is in an entry. */
  | { readonly kind: 'not intact'; readonly at: number | null; readonly why: string };

export type SessionFile =
  | {
      readonly kind: 'opened';
      readonly session: SessionRead;
      readonly seal: SealFinding;
      /** Its sounds, each held against its hash. Without those that are missing or deleted, a file may still be intact. */
      readonly sounds: SoundsFound;
      readonly verdict: FileVerdict;
    }
  /** Nothing of it can be read as a session. */
  | { readonly kind: 'refused'; readonly why: string };

/** What the opening of a file needs from outside. */
export interface OpenOptions {
  /** The time now (RFC 3339): an event that is later than it was never recorded. */
  readonly now: string;
  /** Thumbprints of keys that are known. Where any are given, a seal by another key is not good enough. */
  readonly keys?: readonly string[];
}

/**
 * Packs a session. The same record, seal and sounds always give the same bytes.
 * @param sounds what is kept of its sounds; any that the record does not name, or names as deleted, stays out
 * @throws TypeError where the record is broken
 */
export function packSession(
  record: SessionRecord,
  seal: string | null,
  sounds: Sounds = new Map(),
): Uint8Array<ArrayBuffer> {
  const [first] = record.entries;
  if (record.verification.kind !== 'intact' || first?.body.kind !== 'opened')
    throw new TypeError('Only a record that is whole can be packed.');
  const format = { format: FORMAT, version: FILE_VERSION, session: record.id };
  return packParts(
    new Map([
      ['format.json', encode(`${canonical(format)}\n`)],
      ['README.txt', encode(sealedReadme.text)],
      ['entries.jsonl', entryLines(record.entries)],
      ['procedure.json', encode(procedureText(first.body.procedure))],
      ...(seal === null ? [] : ([['seal.jws', encode(seal)]] as const)),
      ...soundParts(record, sounds),
    ]),
  );
}

function soundParts({ entries }: SessionRecord, sounds: Sounds): readonly (readonly [PartName, Uint8Array])[] {
  const deleted = deletedSounds(entries);
  return namedSounds(entries).flatMap(({ sha256 }) => {
    const sound = deleted.has(sha256) ? undefined : sounds.get(sha256);
    return sound ? [[soundName(sha256), sound] as const] : [];
  });
}

/** The sounds in a file, by the hashes that they are named by. */
function soundsIn(parts: Parts): Sounds {
  const found = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const [name, content] of parts) {
    const sha256 = hashInName(name);
    if (sha256 !== null) found.set(sha256, Uint8Array.from(content));
  }
  return found;
}

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The copy of the procedure, for people. Through the canonical form, so that it is the same from memory and from a file. */
const procedureText = (procedure: unknown): string => `${JSON.stringify(JSON.parse(canonical(procedure)), null, 2)}\n`;

/**
 * Opens a file: its outside, its version, each entry, the chain, the seal. It never throws; what is wrong is named with
 * its place. Nothing is kept anywhere by it.
 */
export async function openSessionFile(bytes: Uint8Array, { now, keys = [] }: OpenOptions): Promise<SessionFile> {
  const unpacked = unpackParts(bytes);
  if (unpacked.kind === 'refused') return { kind: 'refused', why: laterVersion(unpacked.format) ?? unpacked.why };
  const current = currentParts(unpacked.parts);
  if ('why' in current) return { kind: 'refused', why: current.why };
  const { parts, session: id } = current;
  const lines = parts.get('entries.jsonl') ?? new Uint8Array();
  if (countLines(lines) > MOST_ENTRIES) return { kind: 'refused', why: fileFindings.tooManyEntries(MOST_ENTRIES) };
  const read = await readSessionRecord(id, readEntryLines(lines));
  const seal = await checkSeal(textOf(parts.get('seal.jws')), read);
  const session = upToSeal(untilNow(read, now), seal);
  const sounds = await checkSounds(session.kind === 'readable' ? session.record.entries : [], soundsIn(parts));
  const damage = unpacked.damage ?? copyDamage(parts, session) ?? soundDamage(sounds);
  return { kind: 'opened', session, seal, sounds, verdict: judge(session, seal, damage, keys) };
}

const textOf = (bytes: Uint8Array | undefined): string | null => (bytes ? new TextDecoder().decode(bytes) : null);

/**
 * For each older version of the file, how its parts become those of the next version. Version 2 added parts for sounds
 * and fields that may be absent: a file of version 1 is one without them.
 */
const MIGRATIONS: ReadonlyMap<number, (parts: Parts) => Parts> = new Map([[1, (parts) => parts]]);

const Format = v.object({ format: v.literal(FORMAT), version: v.pipe(v.number(), v.safeInteger(), v.minValue(1)) });
const CurrentFormat = v.strictObject({ ...Format.entries, session: v.string() });

/** The parts of a file of any known version as those of today, with the session they are about; or why not. */
function currentParts(found: Parts): { readonly parts: Parts; readonly session: string } | { readonly why: string } {
  const stated = v.safeParse(Format, jsonIn(found.get('format.json')));
  if (!stated.success) return { why: fileFindings.noSealedFile(fileFindings.noFormat(FORMAT)) };
  const { version } = stated.output;
  const later = laterVersion(found.get('format.json'));
  if (later !== null) return { why: later };
  let parts = found;
  for (let at = version; at < FILE_VERSION; at++) {
    const migration = MIGRATIONS.get(at);
    if (!migration) return { why: fileFindings.tooOld(version) };
    parts = migration(parts);
  }
  const format = v.safeParse(CurrentFormat, jsonIn(parts.get('format.json')));
  if (!format.success) return { why: fileFindings.formatNotAsExpected(v.getDotPath(format.issues[0]) ?? '') };
  return { parts, session: format.output.session };
}

/** Why a file of a later version is not read; null where it is of none. */
function laterVersion(format: Uint8Array | undefined): string | null {
  const stated = v.safeParse(Format, jsonIn(format));
  if (!stated.success || stated.output.version <= FILE_VERSION) return null;
  return fileFindings.tooNew(stated.output.version, FILE_VERSION);
}

function jsonIn(bytes: Uint8Array | undefined): unknown {
  try {
    return JSON.parse(textOf(bytes) ?? '');
  } catch {
    return undefined;
  }
}

/** A session up to the first event that had not come yet by the reader's clock: what follows cannot be believed. */
function untilNow(read: SessionRead, now: string): SessionRead {
  if (read.kind === 'unreadable') return read;
  const latest = Date.parse(now) + CLOCKS_DIFFER;
  const at = read.record.entries.findIndex((entry) => Date.parse(entry.at.utc) > latest);
  const dated = read.record.entries[at]?.at.utc;
  return dated === undefined ? read : upTo(read, at, recordFindings.notYetCome(dated, now));
}

/** A session up to the first entry that came after it was sealed. */
function upToSeal(read: SessionRead, seal: SealFinding): SessionRead {
  if (read.kind === 'unreadable' || seal.kind !== 'bad' || seal.at === null) return read;
  return seal.at < read.record.entries.length ? upTo(read, seal.at, seal.why) : read;
}

/** A session up to an entry that is not to be believed. */
function upTo({ record }: Extract<SessionRead, { kind: 'readable' }>, at: number, why: string): SessionRead {
  const verification = { kind: 'broken', at, why } as const;
  if (at === 0) return { kind: 'unreadable', id: record.id, found: record.found, verification };
  return { kind: 'readable', record: { ...record, entries: record.entries.slice(0, at), verification } };
}

/** Whether the copy of the procedure, which people read, is the one that was worked by. */
function copyDamage(parts: Parts, session: SessionRead): Damage | null {
  const first = session.kind === 'readable' ? session.record.entries[0] : undefined;
  if (first?.body.kind !== 'opened') return null;
  const isCopy = textOf(parts.get('procedure.json')) === procedureText(first.body.procedure);
  return isCopy ? null : { part: 'procedure.json', why: fileFindings.procedureIsNoCopy };
}

/** What is wrong with the sounds of a file. One that is missing is none of it: it may be kept apart, and its hash stands. */
function soundDamage({ changed, strays }: SoundsFound): Damage | null {
  const [first] = changed;
  if (first) {
    return { part: soundName(first.sha256), why: fileFindings.otherSound(first.entry) };
  }
  const [stray] = strays;
  return stray === undefined ? null : { part: soundName(stray), why: fileFindings.straySound(soundName(stray)) };
}

/** What is wrong in an entry is said first, then what is wrong with the seal, then with the file around them. */
function judge(session: SessionRead, seal: SealFinding, damage: Damage | null, keys: readonly string[]): FileVerdict {
  const notIntact = (at: number | null, why: string): FileVerdict => ({ kind: 'not intact', at, why });
  const verification = session.kind === 'readable' ? session.record.verification : session.verification;
  // A session that is misnamed makes every entry seem to be of another: the name is to blame, not the entries.
  if (damage?.part === 'format.json') return notIntact(null, damage.why);
  const isEmpty = session.kind === 'unreadable' && session.found === 0;
  if (damage?.isCut && (verification.kind === 'intact' || isEmpty)) {
    const left = verification.kind === 'intact' ? verification.entries : 0;
    return notIntact(lacksEntries(damage) ? left : null, damage.why);
  }
  // Where no entry was found in a file that is damaged, the damage is to blame.
  if (damage && isEmpty) return notIntact(null, damage.why);
  if (verification.kind === 'broken') return notIntact(verification.at, verification.why);
  if (seal.kind === 'bad') return notIntact(seal.at, seal.at === null ? fileFindings.seal.bad(seal.why) : seal.why);
  if (damage) return notIntact(null, damage.why);
  if (seal.kind === 'none') return notIntact(null, fileFindings.seal.missing);
  const { thumbprint, statement } = seal;
  if (keys.length > 0 && !keys.includes(thumbprint)) return notIntact(null, fileFindings.seal.otherKey(thumbprint));
  return {
    kind: 'intact',
    entries: verification.entries,
    head: verification.head,
    thumbprint,
    closedAt: statement.closedAt,
  };
}

/** Whether a file that is cut off ends before the last of its entries. */
const lacksEntries = ({ part }: Damage): boolean =>
  part !== null && PARTS.slice(0, PARTS.indexOf('entries.jsonl') + 1).some((name) => name === part);
