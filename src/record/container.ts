/**
 * The outside of a sealed file: a zip archive whose parts are stored and never compressed. So the text in it can be read
 * with any tool, damage hurts only the place it is in, and there is nothing to inflate, however large it claims to be.
 *
 * There is one way to pack given parts. What was read is packed again and compared: whatever else is in a file, before,
 * between or behind the parts or in their headers, is found by that.
 */
import { Unzip, UnzipPassThrough, zipSync, type UnzipFile, type Zippable } from 'fflate';
import { fileFindings } from '../words/file-findings.ts';

/** The parts of a file, in their order. All but the seal must be there; sounds follow them, in the order of their names. */
export const PARTS = ['format.json', 'README.txt', 'entries.jsonl', 'procedure.json', 'seal.jws'] as const;
export type SoundName = `evidence/${string}.wav`;
export type PartName = (typeof PARTS)[number] | SoundName;
export type Parts = ReadonlyMap<PartName, Uint8Array>;

/** A file of more is not looked into: a day's work is a few megabytes, and some tens with its sound. */
export const LARGEST_FILE = 256 * 2 ** 20;

/** The part that holds a sound, by its SHA-256 in hexadecimal digits. */
export const soundName = (sha256: string): SoundName => `evidence/${sha256}.wav`;

/** The SHA-256 by which a part that is a sound is named; null where it is another part. */
export const hashInName = (name: PartName): string | null => SOUND.exec(name)?.[1] ?? null;

const SOUND = /^evidence\/([0-9a-f]{64})\.wav$/;

/** What is wrong with the outside of a file: in one part, or, with null, behind the last. */
export interface Damage {
  readonly part: PartName | null;
  readonly why: string;
  /** The file ends inside this part, or before it. */
  readonly isCut?: true;
}

export type Unpacked =
  | { readonly kind: 'unpacked'; readonly parts: Parts; readonly damage: Damage | null }
  /** `format` is its first part, where that could be read: it may tell that the file is of a later version. */
  | { readonly kind: 'refused'; readonly why: string; readonly format?: Uint8Array };

/** Packs parts. The same parts always give the same bytes: neither time nor place goes in. */
export function packParts(parts: Parts): Uint8Array<ArrayBuffer> {
  // Zip times are local, and begin in 1980; noon is there in every time zone.
  const mtime = new Date(1980, 0, 1, 12);
  const files: Zippable = {};
  const inOrder = [...parts].sort(([one], [other]) => compareNames(one, other));
  for (const [name, content] of inOrder) files[name] = [content, { level: 0, mtime }];
  return zipSync(files);
}

/** The order of parts in a file: negative where the first comes before the other. */
function compareNames(one: PartName, other: PartName): number {
  const places = placeOf(one) - placeOf(other);
  if (places !== 0 || one === other) return places;
  return one < other ? -1 : 1;
}

const placeOf = (name: PartName): number => {
  const place = PARTS.findIndex((known) => known === name);
  return place < 0 ? PARTS.length : place;
};

/**
 * Takes a file apart. One that is damaged or cut off is taken apart as far as it goes; one that was never a sealed file,
 * or wants more than it may, is refused before any of it is read.
 */
export function unpackParts(bytes: Uint8Array): Unpacked {
  if (bytes.length > LARGEST_FILE) return refused(fileFindings.tooLarge(LARGEST_FILE / 2 ** 20));
  if (!BEGINNING.every((byte, i) => bytes[i] === byte)) return refused(fileFindings.noArchive);
  const { read, misfit } = readInOrder(bytes);
  const [first] = read;
  if (first?.name !== 'format.json' || first.content.length < first.size) return refused(fileFindings.formatNotFirst);
  if (misfit !== null) return { ...refused(misfit), format: first.content };
  const parts = new Map(read.map(({ name, content }) => [name, content]));
  return { kind: 'unpacked', parts, damage: damageIn(bytes, read, parts) };
}

const refused = (why: string) => ({ kind: 'refused', why: fileFindings.noSealedFile(why) }) satisfies Unpacked;

/** The header that stands before each part begins with this (zip specification, 4.3.7). */
const BEGINNING = [0x50, 0x4b, 0x03, 0x04];
/** The method of compression that is none. */
const STORED = 0;

interface ReadPart {
  readonly name: PartName;
  /** Bytes that its header promises. */
  readonly size: number;
  /** Shorter than `size` where the file is cut off. */
  content: Uint8Array;
}

class Misfit extends Error {}

/** The parts as they follow one another, up to one that is none of a sealed file. */
function readInOrder(bytes: Uint8Array): { readonly read: readonly ReadPart[]; readonly misfit: string | null } {
  const read: ReadPart[] = [];
  const reader = new Unzip((file) => {
    const { name, size } = partOf(file, read.at(-1)?.name);
    const part: ReadPart = { name, size, content: new Uint8Array() };
    read.push(part);
    file.ondata = (_, data) => {
      if (data.length > 0) part.content = data;
    };
    file.start();
  });
  reader.register(UnzipPassThrough);
  try {
    reader.push(bytes, true);
  } catch (error) {
    if (error instanceof Misfit) return { read, misfit: error.message };
    // The reader says so of a file that is cut off inside a part. What came before the cut was read.
  }
  return { read, misfit: null };
}

const isPartName = (name: string): name is PartName => PARTS.some((known) => known === name) || SOUND.test(name);

/** A part of a sealed file that may follow `last`. @throws Misfit where it is none */
function partOf(
  { name, size, originalSize, compression }: UnzipFile,
  last: PartName | undefined,
): Omit<ReadPart, 'content'> {
  if (!isPartName(name)) throw new Misfit(fileFindings.strangePart(JSON.stringify(name.slice(0, 80))));
  const part = name;
  if (last !== undefined && compareNames(part, last) <= 0) throw new Misfit(fileFindings.partOutOfPlace(part));
  if (compression !== STORED) throw new Misfit(fileFindings.compressed(part));
  if (size === undefined || size !== originalSize) throw new Misfit(fileFindings.sizeMissing(part));
  return { name: part, size };
}

/** How what was read differs from what packing it gives; null where it does not. */
function damageIn(bytes: Uint8Array, read: readonly ReadPart[], parts: Parts): Damage | null {
  const last = read.at(-1);
  if (last && last.content.length < last.size)
    return { part: last.name, why: fileFindings.cutOffInside(last.name), isCut: true };
  const packed = packParts(parts);
  const at = firstDifference(bytes, packed);
  if (at === null) {
    const missing = PARTS.find((name) => name !== 'seal.jws' && !parts.has(name));
    return missing ? { part: missing, why: fileFindings.partMissing(missing) } : null;
  }
  if (at === packed.length) return { part: null, why: fileFindings.addedBehind };
  if (bytes.length !== packed.length && !hasEnd(bytes)) return { ...behind(last), isCut: true };
  const part = partAt(read, at);
  return {
    part,
    why: part ? fileFindings.partChanged(part) : fileFindings.listChanged,
  };
}

/** Whether the record is there that ends each zip archive, and with which a sealed file ends (zip specification, 4.3.16). */
function hasEnd(bytes: Uint8Array): boolean {
  const at = bytes.length - 22;
  return [0x50, 0x4b, 0x05, 0x06].every((byte, i) => bytes[at + i] === byte);
}

/** Where a file is cut off that ends behind a part: before the next. */
function behind(last: ReadPart | undefined): Damage {
  const next = last && PARTS[placeOf(last.name) + 1];
  return { part: next ?? null, why: fileFindings.cutOffBehind(last?.name ?? '') };
}

/** Where two lists of bytes part; null where they are the same. */
function firstDifference(one: Uint8Array, other: Uint8Array): number | null {
  const shorter = Math.min(one.length, other.length);
  for (let at = 0; at < shorter; at++) if (one[at] !== other[at]) return at;
  return one.length === other.length ? null : shorter;
}

/** Bytes of a header without its name, where nothing but the name varies in length (zip specification, 4.3.7). */
const HEADER = 30;

/** The part in whose header or content a byte lies; null behind the last. */
function partAt(read: readonly ReadPart[], at: number): PartName | null {
  let end = 0;
  for (const { name, size } of read) {
    end += HEADER + name.length + size;
    if (at < end) return name;
  }
  return null;
}
