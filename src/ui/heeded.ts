/** What comes in by voice or before the camera, and how the record keeps it. */
import type { HeardWord } from '../language/understand.ts';
import type { Heard } from '../session/intent.ts';
import { instantAt } from './clock.ts';
import type { Spoken } from './sound-keeper.ts';

/** An utterance with its time, where it was spoken. */
export interface Heeded {
  readonly words: readonly HeardWord[];
  /** Absent for typed words. */
  readonly spoken?: Spoken;
  /**
   * Of what was counted by presses or gestures the least sureness of them, 0 to 1. They were sure enough each, and what
   * they make is read back: it is for the record.
   */
  readonly sureness?: number;
  /** The same sound heard without the phrases of the moment, where it was heard a second time. */
  readonly again?: string | null;
  /** Whether the sound could be trusted that it was heard from; absent for typed words. */
  readonly isTrusted?: boolean;
}

/** A gesture that passed the gate. */
export interface SeenGesture {
  readonly kind: string;
  /** 0 to 1 */
  readonly confidence: number;
  /** Milliseconds on the clock of the page. */
  readonly from: number;
  readonly to: number;
}

export const textOf = (words: readonly HeardWord[]): string => words.map(({ word }) => word).join(' ');

/** An utterance as the record keeps it. */
export const heardAs = ({ words, spoken, sureness = 1, again = null }: Heeded): Heard => ({
  text: textOf(words),
  words: words.map(({ word, confidence }) => ({ word, confidence: Math.min(confidence, sureness).toFixed(2) })),
  ...(again === null ? {} : { again }),
  ...(spoken ? { spoken: { from: instantAt(spoken.from).utc, to: instantAt(spoken.to).utc } } : {}),
});

/** A gesture as the record keeps it: what was seen stands for what was said. */
export const seenAs = ({ kind, confidence, from, to }: SeenGesture): Heard => ({
  text: kind,
  words: [{ word: kind, confidence: confidence.toFixed(2) }],
  spoken: { from: instantAt(from).utc, to: instantAt(to).utc },
});
