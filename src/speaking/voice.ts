import type { VoiceKind } from './types.ts';

export interface Utterance {
  readonly text: string;
  readonly urgent: boolean;
}

/** What a voice reports while it speaks. */
export interface Progress {
  /** From now on sound may be heard. Called before the first sound, in the same turn. */
  readonly sounding: () => void;
  /** Sound is heard, and should last this long, in milliseconds. */
  readonly started: (expectedMs: number) => void;
}

/** One way to say things. Voices may fail or hang: whoever uses one watches the clock (see watchdog.ts). */
export interface Voice {
  readonly kind: VoiceKind;
  /** How long after the request `started` may come, in milliseconds. */
  readonly startWithinMs: number;
  /** Gets ready in bounded time. Rejects with a reason for a person. */
  prepare(): Promise<void>;
  /**
   * Says the words; resolves after the last sound. Falls silent in the turn in which `signal` aborts.
   * @throws OutputStopped when no sound can be made at all; any other error when this voice has failed.
   */
  speak(utterance: Utterance, signal: AbortSignal, progress: Progress): Promise<void>;
  close(): void;
}

/** The sound output is not running. No voice is to blame and none can help. */
export class OutputStopped extends Error {
  override readonly name = 'OutputStopped';
}

/** What a caught thing says, as the end of a sentence for a person. */
export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
