/**
 * How sure the recogniser must be of the least sure word, 0 to 1. A person's own trial may ask for more sureness, and relax
 * that of readings a little: those are read back and confirmed before they count. Commands are acted on at once, so theirs
 * is never relaxed. What was asked for in the trial has no part in what is understood later, nor has any target.
 */
export interface Sureness {
  /** For a command: it is acted on at once. */
  readonly command: number;
  /** For what changes nothing that stands, such as "say again". */
  readonly harmless: number;
  /** For a reading, which is read back anyway. Below it, the value is asked for again. */
  readonly reading: number;
  /** For a value that sounds like another. Below it, that is asked about. */
  readonly sound: number;
}

/** For anybody. At 0.85, none of 39.5 minutes of other talk was taken for a command (report of the speech model). */
export const USUAL: Sureness = { command: 0.85, harmless: 0.5, reading: 0.7, sound: 0.95 };

/** Whatever a trial shows, the sureness for readings stays between these, and that for commands between the usual and this. */
export const READING_BOUNDS = { least: 0.6, most: 0.9 } as const;
export const COMMAND_MOST = 0.95;

/** Of one phrase of a trial: the least confidence of its words, and whether it was heard as it was asked for. */
export interface Trial {
  readonly confidence: number;
  readonly isRight: boolean;
}

/** Fewer say nothing about a person. */
const LEAST_TRIALS = 5;
/** How far from the surest wrong one, and below the least sure right one. */
const MARGIN = 0.05;

/**
 * What one person's trial asks for: above what was heard wrongly, where the bounds allow it; else down to what was heard
 * rightly. With less than five phrases, the usual.
 */
export function surenessFor(trials: readonly Trial[]): Sureness {
  if (trials.length < LEAST_TRIALS) return USUAL;
  const [right, wrong] = [true, false].map((isRight) =>
    trials.filter((trial) => trial.isRight === isRight).map(({ confidence }) => confidence),
  );
  if (wrong && wrong.length > 0) {
    const above = Math.max(...wrong) + MARGIN;
    return {
      ...USUAL,
      command: within(above, USUAL.command, COMMAND_MOST),
      reading: within(above, USUAL.reading, READING_BOUNDS.most),
    };
  }
  return { ...USUAL, reading: within(Math.min(...(right ?? [])) - MARGIN, READING_BOUNDS.least, USUAL.reading) };
}

/** Where it is not known who of several speaks: what satisfies all of them. */
export const strictest = (all: readonly Sureness[]): Sureness =>
  all.length === 0
    ? USUAL
    : {
        command: Math.max(...all.map(({ command }) => command)),
        harmless: Math.max(...all.map(({ harmless }) => harmless)),
        reading: Math.max(...all.map(({ reading }) => reading)),
        sound: Math.max(...all.map(({ sound }) => sound)),
      };

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
