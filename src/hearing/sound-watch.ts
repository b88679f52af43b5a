import { AutomaticGain } from './automatic-gain.ts';
import { levelOf } from './level.ts';
import { Listeners } from './listeners.ts';
import { SoundMeter, type Sound } from './sound-meter.ts';
import type { AudioChunk, Utterance } from './types.ts';

const LEVEL_FLOOR_DBFS = -120;

/** How loud it is: told to whoever wants to know, and evened out for the engine. */
export class SoundWatch {
  readonly levels = new Listeners<number>();
  readonly sounds = new Listeners<Sound>();
  readonly #gain = new AutomaticGain();
  #meter: SoundMeter | null = null;
  #sampleRate = 0;

  /** A microphone was opened: what another one gave says nothing about it. */
  open(sampleRate: number): void {
    this.#meter = new SoundMeter(sampleRate);
    this.#sampleRate = sampleRate;
  }

  /** @param isHeard whether the ear is open: the app's own voice is neither speech nor background */
  take(chunk: AudioChunk, isHeard: boolean): void {
    this.levels.tell(Math.max(levelOf(chunk.samples), LEVEL_FLOOR_DBFS));
    if (isHeard && this.#meter) this.sounds.tell(this.#meter.take(chunk));
  }

  /** The same sound as the engine gets it: quiet speech made louder. What is measured and kept is the sound as it came. */
  louder({ samples, time }: AudioChunk): AudioChunk {
    return { samples: this.#gain.process(samples, this.#sampleRate), time };
  }

  expect(dBFS: number): void {
    this.#gain.expect(dBFS);
  }

  /** @returns how far it stood above the background, in dB; null where that is not known */
  spoke({ words }: Utterance): number | null {
    return this.#meter?.spoke(words) ?? null;
  }
}
