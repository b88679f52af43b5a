/** A sealed file with sounds: three readings of a session, each with its own. */
import type { Sounds } from '../../src/record/sounds.ts';
import { soundHash } from '../../src/record/sounds.ts';
import { sealRecord, type SigningKey } from '../../src/record/seal.ts';
import { packSession } from '../../src/record/sealed-file.ts';
import type { SessionRecord } from '../../src/record/session-record.ts';
import type { SoundOfReading } from '../../src/session/intent.ts';
import type { SessionEvent } from '../../src/session/event.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { eventOf } from '../session/play.ts';
import { recordIn, recordOf, SEALING } from './sealed.ts';

/** Bytes that stand for sounds: what is in them means nothing to the record. */
export const SOUNDS: readonly Uint8Array<ArrayBuffer>[] = [1, 2, 3].map((seed) =>
  Uint8Array.from({ length: 200 + seed }, (_, i) => (i * seed) % 251),
);

export const hashes: readonly string[] = await Promise.all(SOUNDS.map(soundHash));

const heardWith = (sound: SoundOfReading): SessionEvent['heard'] => ({ text: 'one two', words: [], sound });

const keptSound = (i: number): SoundOfReading => ({
  kept: true,
  sha256: hashes[i] ?? '',
  bytes: SOUNDS[i]?.length ?? 0,
  from: '2026-03-01T00:00:00.000Z',
  to: '2026-03-01T00:00:02.000Z',
});

/** Events at 1 to 3 name a sound each; 4 names the first once more; 5 says that one could not be kept. */
export const EVENTS: readonly SessionEvent[] = [
  ...[0, 1, 2, 0].map((i, seq) => ({ ...eventOf({ kind: 'repeat asked' }, seq), heard: heardWith(keptSound(i)) })),
  { ...eventOf({ kind: 'repeat asked' }, 4), heard: heardWith({ kept: false, why: 'The disk is full.' }) },
];

export const deletion = (seq: number, ...sounds: readonly string[]): SessionEvent =>
  eventOf({ kind: 'sounds deleted', sounds }, seq);

export const recordWith = async (...more: readonly SessionEvent[]): Promise<SessionRecord> =>
  recordIn(await recordOf(smallProcedure, [...EVENTS, ...more]));

/** All sounds by their hashes. */
export const all: Sounds = new Map(SOUNDS.map((sound, i) => [hashes[i] ?? '', sound]));

export const packedWith = async (record: SessionRecord, sounds: Sounds, key: SigningKey): Promise<Uint8Array> =>
  packSession(record, await sealRecord(record, SEALING, key), sounds);
