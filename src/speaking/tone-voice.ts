import type { Output } from './output.ts';
import { FULL_PEAK, lengthMs, LOOK_AT_SCREEN, render, TONES, TONE_RATE } from './tones.ts';
import type { Voice } from './voice.ts';

/** The last resort: no words, but tones that call the eye to the screen. */
export function createToneVoice(output: Output): Voice {
  return {
    kind: 'tones',
    startWithinMs: 5_000,
    prepare: () => Promise.resolve(),
    speak({ urgent }, signal, { sounding, started }) {
      const beeps = urgent ? TONES.stop : LOOK_AT_SCREEN;
      return output.play(render(beeps, FULL_PEAK, TONE_RATE), signal, () => {
        sounding();
        started(lengthMs(beeps));
      });
    },
    close: () => undefined,
  };
}
