import { createSignal, type Accessor } from 'solid-js';
import type { Unheard } from '../language/unheard.ts';

/** What came in last, and whether it was taken: as no phrase of its moment, unsure or too early it does nothing. */
export interface HeardLine {
  readonly text: string;
  readonly taken:
    'taken' | 'not for us' | 'not sure' | 'too early' | 'not said yet' | 'not read yet' | 'counted already';
  /** What was said to it, where that leaves no entry. */
  readonly answered?: string;
  /** What warns here, where that was not heard to its end yet: then nothing goes past it. */
  readonly unheard?: Unheard;
}

/** The line that tells what came in last, and how much came in that was for nobody here. */
export interface HeardNow {
  readonly line: Accessor<HeardLine | null>;
  /** How many utterances were no phrase of their moment. */
  readonly ignored: Accessor<number>;
  /** Shows what came in instead of what came in before. */
  show(line: HeardLine): void;
  /** Shows that it came in and was not taken. What was for nobody here is counted. */
  showNotTaken(text: string, why: Exclude<HeardLine['taken'], 'taken'>): void;
  /** Something has happened: what was said to the last input asks for nothing any more. */
  forgetAnswer(): void;
  /** An input was taken: what was too early is what came in last no longer. */
  forgetPremature(text: string): void;
}

export function createHeardNow(): HeardNow {
  const [line, show] = createSignal<HeardLine | null>(null);
  const [ignored, setIgnored] = createSignal(0);
  return {
    line,
    ignored,
    show,
    showNotTaken(text, why) {
      show({ text, taken: why });
      if (why === 'not for us') setIgnored(ignored() + 1);
    },
    forgetAnswer() {
      const shown = line();
      if (shown?.answered !== undefined || shown?.unheard) show({ text: shown.text, taken: shown.taken });
    },
    forgetPremature(text) {
      if (isPremature(line())) show({ text, taken: 'taken' });
    },
  };
}

/** What came in before what it would answer. */
const isPremature = (line: HeardLine | null): boolean =>
  line?.taken === 'too early' || line?.taken === 'not said yet' || line?.taken === 'not read yet';
