/** Sound at the rate at which it is heard: the speech models know nothing of a higher one, and it takes three times the room. */
import type { RememberedSound } from '../hearing/sound-memory.ts';
import { wavFile } from '../record/wav.ts';

/** Of the speech models, in hertz. */
export const HEARD_RATE = 16_000;

/** A sound at no higher a rate than that; as it is where this browser cannot change its rate. It never throws. */
export async function atHeardRate(sound: RememberedSound): Promise<RememberedSound> {
  if (sound.rate <= HEARD_RATE) return sound;
  try {
    const context = new OfflineAudioContext(1, 1, HEARD_RATE);
    // Decoding filters out what the lower rate cannot carry; playing at another rate would fold it back onto the speech.
    const decoded = await context.decodeAudioData(wavFile(sound.samples, sound.rate).buffer);
    return { ...sound, samples: inSixteenBits(decoded.getChannelData(0)), rate: HEARD_RATE };
  } catch {
    return sound;
  }
}

const inSixteenBits = (samples: Float32Array): Int16Array<ArrayBuffer> =>
  Int16Array.from(samples, (sample) => Math.round(Math.max(-32768, Math.min(32767, sample * 32768))));
