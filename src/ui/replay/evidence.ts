/** What was heard, as sound: only a sound whose hash is the one in the record is evidence of it. */
import { digest, toHex } from '../../record/hash.ts';

/** Sounds that came with a record, by the SHA-256 of their bytes: WAV, 16 bit. */
export type Sounds = ReadonlyMap<string, Uint8Array<ArrayBuffer>>;

export type SoundFinding =
  | { readonly kind: 'good'; readonly bytes: Uint8Array<ArrayBuffer> }
  /** The record names it, and it is not here. */
  | { readonly kind: 'absent' }
  /** What is here under its name is another sound. */
  | { readonly kind: 'changed' };

/** Looks a sound up by the hash in the record, and checks that it is the one. */
export async function soundBy(hash: string, sounds: Sounds): Promise<SoundFinding> {
  const bytes = sounds.get(hash);
  if (!bytes) return { kind: 'absent' };
  return toHex(await digest(bytes)) === hash ? { kind: 'good', bytes } : { kind: 'changed' };
}
