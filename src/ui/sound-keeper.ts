/** Keeps the sound around readings, where everybody who takes part agreed to that. */
import type { RememberedSound, SoundMemory } from '../hearing/sound-memory.ts';
import { soundHash } from '../record/sounds.ts';
import { wavFile } from '../record/wav.ts';
import type { EventBody, People } from '../session/event.ts';
import type { SoundOfReading } from '../session/intent.ts';
import { roomLeft } from '../storage/persistence.ts';
import type { SoundStore } from '../storage/sound-store.ts';
import { keptSounds } from '../words/kept-sounds.ts';
import { instantAt } from './clock.ts';
import { atHeardRate } from './heard-rate.ts';
import { messageOf } from './message.ts';

/** How much the memory of the microphone holds, in seconds. */
export const SECONDS_REMEMBERED = 10;

/** Before the first word and behind the last, in milliseconds. */
const AROUND = { before: 1000, after: 500 };
/** The read-back is heard before the word that answers it; of both together no more than this, in milliseconds. */
const LONGEST_ANSWER = 8000;

/**
 * Sound must never take the room that entries need: they are written first of all, and work stops where they cannot be. In
 * bytes: a long job's entries are a few million.
 */
const ROOM_FOR_ENTRIES = 20 * 2 ** 20;

/** When words were spoken, on the `performance.now()` clock. */
export interface Spoken {
  readonly from: number;
  readonly to: number;
}

/** What the sound of is kept: a reading, the second person's own, and the answer to the read-back. */
const ABOUT_READINGS: ReadonlySet<EventBody['kind']> = new Set([
  'reading captured',
  'witnessed',
  'disputed',
  'reading confirmed',
  'reading rejected',
  'reading disregarded',
]);

export const isAboutReading = (bodies: readonly EventBody[]): boolean =>
  bodies.some(({ kind }) => ABOUT_READINGS.has(kind));

/** Keeps the sound around words. `since` is when what they answer began. It never throws: work goes on without a sound. */
export type KeepSound = (spoken: Spoken, since: number, people: People) => Promise<SoundOfReading>;

const lost = (why: string): SoundOfReading => ({ kept: false, why });

/**
 * @param asked those who agreed at the start: with anybody else there, nothing is kept
 * @param room how much this device still has, in bytes; null where that is not known
 */
export function createSoundKeeper(
  session: string,
  asked: People,
  memory: Pick<SoundMemory, 'cut'>,
  store: Pick<SoundStore, 'keep'>,
  room: () => Promise<number | null> = roomLeft,
): KeepSound {
  return async ({ from, to }, since, people) => {
    const newcomer = [people.mechanic, people.second].find(
      (name) => name !== null && name !== asked.mechanic && name !== asked.second,
    );
    if (typeof newcomer === 'string') return lost(keptSounds.notAsked(newcomer));
    const beginning = Math.min(from - AROUND.before, Math.max(since, to - LONGEST_ANSWER));
    const cut = memory.cut(beginning, to + AROUND.after);
    if (cut === null) return lost(keptSounds.noSound);
    try {
      if (((await room()) ?? Infinity) < ROOM_FOR_ENTRIES) return lost(keptSounds.roomForRecord);
      return await written(cut);
    } catch (error) {
      return lost(keptSounds.notWritten(messageOf(error)));
    }
  };

  async function written(cut: RememberedSound): Promise<SoundOfReading> {
    const { samples, rate } = await atHeardRate(cut);
    const sound = wavFile(samples, rate);
    const sha256 = await soundHash(sound);
    await store.keep(session, sha256, sound);
    const [began, ended] = [instantAt(cut.from).utc, instantAt(cut.to).utc];
    return { kept: true, sha256, bytes: sound.length, from: began, to: ended };
  }
}
