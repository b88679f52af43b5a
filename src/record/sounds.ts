/**
 * Sounds beside a record. An entry names a sound by its hash; the sound itself lies elsewhere: in a store of its own, or in
 * a part of its own in a sealed file. So it can be deleted later and the chain stays whole: the hash stays, the sound
 * goes, and that it was deleted is an entry.
 */
import type { Entry } from './entry.ts';
import { digest, toHex } from './hash.ts';

/** Sounds as WAV files, by the SHA-256 of each (64 hexadecimal digits). */
export type Sounds = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

/** A sound that entries name. */
export interface NamedSound {
  readonly sha256: string;
  /** The number of the first entry that names it. */
  readonly entry: number;
}

/** What became of the sounds that a record names. */
export interface SoundsFound {
  /** Those that are there and are the ones that were kept. */
  readonly sounds: Sounds;
  /** Those that were deleted, as an entry says. */
  readonly deleted: readonly NamedSound[];
  /** Those that are not there, though no entry says that they were deleted. */
  readonly missing: readonly NamedSound[];
  /** Those in whose place lies something else. */
  readonly changed: readonly NamedSound[];
  /** What lies beside the record and belongs to no entry, or was deleted from it. */
  readonly strays: readonly string[];
}

/** The name of a sound by its content. */
export const soundHash = async (sound: Uint8Array<ArrayBuffer>): Promise<string> => toHex(await digest(sound));

/** The sounds that entries name, in their order, each once. */
export function namedSounds(entries: readonly Pick<Entry, 'heard' | 'seq'>[]): readonly NamedSound[] {
  const named = new Map<string, NamedSound>();
  for (const { heard, seq } of entries)
    if (heard?.sound?.kept && !named.has(heard.sound.sha256))
      named.set(heard.sound.sha256, { sha256: heard.sound.sha256, entry: seq });
  return [...named.values()];
}

/** The sounds that entries say were deleted, by their hashes. */
export const deletedSounds = (entries: readonly Pick<Entry, 'body'>[]): ReadonlySet<string> =>
  new Set(entries.flatMap(({ body }) => (body.kind === 'sounds deleted' ? body.sounds : [])));

/** Holds sounds that were found against the entries that name them. */
export async function checkSounds(entries: readonly Entry[], found: Sounds): Promise<SoundsFound> {
  const gone = deletedSounds(entries);
  const named = namedSounds(entries);
  const wanted = named.filter(({ sha256 }) => !gone.has(sha256));
  const sounds = new Map<string, Uint8Array<ArrayBuffer>>();
  const changed: NamedSound[] = [];
  for (const each of wanted) {
    const sound = found.get(each.sha256);
    if (sound === undefined) continue;
    if ((await soundHash(sound)) === each.sha256) sounds.set(each.sha256, sound);
    else changed.push(each);
  }
  const isWanted = new Set(wanted.map(({ sha256 }) => sha256));
  return {
    sounds,
    changed,
    deleted: named.filter(({ sha256 }) => gone.has(sha256)),
    missing: wanted.filter(({ sha256 }) => !found.has(sha256)),
    strays: [...found.keys()].filter((sha256) => !isWanted.has(sha256)),
  };
}
