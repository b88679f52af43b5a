import { separateDigits } from './digits.ts';
import type { FliteVoice } from './flite.ts';
import type { Output } from './output.ts';
import { durationMs, scalePeak, trimSilence } from './sound.ts';
import type { Synthesiser } from './synthesiser.ts';
import type { Voice } from './voice.ts';

const PEAK = 0.9;
const SILENCE_KEPT_MS = 40;

export interface EmbeddedVoiceOptions {
  readonly synthesiser: Synthesiser;
  readonly output: Output;
  readonly voice: FliteVoice;
  readonly stretch: () => number;
  readonly startWithinMs: number;
}

/** The voice that Bothhands brings with it: the same on every device, and without a network. */
export function createEmbeddedVoice({
  synthesiser,
  output,
  voice,
  stretch,
  startWithinMs,
}: EmbeddedVoiceOptions): Voice {
  return {
    kind: 'embedded',
    startWithinMs,
    prepare: () => synthesiser.load(),
    async speak({ text }, signal, { sounding, started }) {
      const raw = await synthesiser.synthesise(separateDigits(text), { voice, stretch: stretch() });
      const sound = scalePeak(trimSilence(raw, SILENCE_KEPT_MS), PEAK);
      if (signal.aborted) return;
      await output.play(sound, signal, () => {
        sounding();
        started(durationMs(sound));
      });
    },
    close: () => synthesiser.close(),
  };
}
