/** What was heard, as sound: only a sound whose hash is the one in the record is evidence of it. */
import type { Entry } from '../../record/entry.ts';
import { deletedSounds, soundHash, type Sounds } from '../../record/sounds.ts';

export type SoundFinding =
  | { readonly kind: 'good'; readonly bytes: Uint8Array<ArrayBuffer> }
  /** It was deleted, as an entry says. */
  | { readonly kind: 'deleted' }
  /** The record names it, and it is not here. */
  | { readonly kind: 'absent' }
  /** What is here under its name is another sound. */
  | { readonly kind: 'changed' };

/** Looks a sound up by the hash in the record, and checks that it is the one. */
export async function soundBy(
  hash: string,
  sounds: Sounds,
  entries: readonly Pick<Entry, 'body'>[],
): Promise<SoundFinding> {
  const bytes = sounds.get(hash);
  if (!bytes) return { kind: deletedSounds(entries).has(hash) ? 'deleted' : 'absent' };
  return (await soundHash(bytes)) === hash ? { kind: 'good', bytes } : { kind: 'changed' };
}
