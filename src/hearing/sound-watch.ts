import { levelOf } from './level.ts';
import { Listeners } from './listeners.ts';
import { SoundMeter, type Sound } from './sound-meter.ts';
import type { AudioChunk, Utterance } from './types.ts';

const LEVEL_FLOOR_DBFS = -120;

/** Who wants to know how loud it is, and what they are told. */
export class SoundWatch {
  readonly levels = new Listeners<number>();
  readonly sounds = new Listeners<Sound>();
  #meter: SoundMeter | null = null;

  /** A microphone was opened: what another one gave says nothing about it. */
  open(sampleRate: number): void {
    this.#meter = new SoundMeter(sampleRate);
  }

  /** @param isHeard whether the ear is open: the app's own voice is neither speech nor background */
  take(chunk: AudioChunk, isHeard: boolean): void {
    this.levels.tell(Math.max(levelOf(chunk.samples), LEVEL_FLOOR_DBFS));
    if (isHeard && this.#meter) this.sounds.tell(this.#meter.take(chunk));
  }

  spoke({ words }: Utterance): void {
    this.#meter?.spoke(words);
  }
}
