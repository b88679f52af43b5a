/** What warns of danger or damage is heard to its end, or could be read, before a word of habit goes past it. */
import type { Hazard } from '../procedure/procedure.ts';
import { heldStep } from '../session/hold.ts';
import type { Meaning } from '../session/intent.ts';
import { pendingValue } from '../session/observed.ts';
import { openReason } from '../session/reasons.ts';
import {
  currentStep,
  doesNotApply,
  openCondition,
  openWarning,
  pendingReading,
  warningKey,
  type SessionState,
} from '../session/state.ts';
import { sayHazards, sayWarning } from './say-hazards.ts';

/** What warns where the work stands: the warning that is open, or the cautions of the step. */
export interface Warns {
  /** Of which step, and which of its warnings. */
  readonly key: string;
  readonly signal: Hazard['signal'];
  /** As they are said. */
  readonly sentences: readonly string[];
}

/** What warns where the work stands; null where nothing does, and while the work rests: it is said anew after that. */
export function warnsNow(state: SessionState): Warns | null {
  const step = currentStep(state);
  if (step === null || rests(state) || openCondition(state) || doesNotApply(state, step)) return null;
  const open = openWarning(state);
  if (open) {
    return { key: warningKey(step.id, open.index), signal: open.signal, sentences: [sayWarning(open)] };
  }
  const sentences = sayHazards(step, 'caution');
  return sentences.length > 0 ? { key: step.id, signal: 'caution', sentences } : null;
}

const rests = ({ phase, handingOver, breakOf }: SessionState): boolean =>
  phase !== 'working' || handingOver || breakOf !== null;

/** Whether what warned before still will: nobody has gone past it, and the work has not rested. */
export const isStillAhead = (state: SessionState, { key }: Warns): boolean =>
  !rests(state) &&
  !state.acknowledged.has(key) &&
  state.procedure.steps.slice(state.at).some(({ id }) => key.split('/')[0] === id);

/** How something that warns came to the mechanic. Times are in milliseconds on one clock. */
export interface Telling {
  readonly warns: Warns;
  readonly shownAt: number;
  /** How long it can have been read when it was in sight before. */
  readonly read: number;
  readonly isBeingSaid: boolean;
  /** When it was said to its end; null as long as it was not. */
  readonly saidAt: number | null;
}

/** As subtitles are made to be read, a word of which is 375 ms; and eyes must come to the screen first. From memory: common practice, no source. */
const A_WORD = 60_000 / 160;
const A_LOOK = 1_000;

/** No voice that hangs keeps the work from going on for longer. More than any announcement takes. */
export const LONGEST = 60_000;

/** As long as it needs to be read. */
export const toRead = ({ sentences }: Warns): number => {
  const words = sentences.flatMap((each) => each.split(/\s+/)).length;
  return Math.min(LONGEST, A_LOOK + A_WORD * words);
};

/** As it comes into sight, for the first time or again. */
export const inSight = (warns: Warns, at: number, before?: Telling): Telling => ({
  warns,
  read: 0,
  saidAt: null,
  ...before,
  shownAt: at,
  isBeingSaid: false,
});

/**
 * As it goes out of sight. Whoever steps to and fro reads on where they were, so all times in sight count together; but
 * eyes must come to it each time, so that glimpses come to nothing.
 */
export const outOfSight = (telling: Telling, at: number): Telling => ({
  ...telling,
  read: telling.read + Math.max(0, at - telling.shownAt - A_LOOK),
});

/** Texts were said to their end. */
export const afterSaid = (telling: Telling, texts: readonly string[], at: number): Telling =>
  tells(telling.warns, texts) ? { ...telling, saidAt: telling.saidAt ?? at } : telling;

/**
 * From when on the work may go past it: said to its end, or, where nothing says it or whoever goes on has their eyes on the
 * screen, as long in sight as it needs to be read.
 */
export function opensAt({ warns, shownAt, read, isBeingSaid, saidAt }: Telling, isAtScreen: boolean): number {
  const isRead = isAtScreen || (!isBeingSaid && saidAt === null);
  return Math.min(saidAt ?? Infinity, shownAt - read + (isRead ? toRead(warns) : LONGEST));
}

/** What a pedal pressed by habit may mean. All other words are an answer of their own, or stop, or take back. */
const HABIT: ReadonlySet<Meaning['kind']> = new Set(['next', 'affirm', 'held']);

/**
 * Whether a word goes past what warns by habit: where it answers a read-back, or brings the next word under a weight, it
 * does not.
 */
const goesPast = (state: SessionState, { kind }: Meaning): boolean =>
  HABIT.has(kind) && !(pendingReading(state) ?? pendingValue(state) ?? openReason(state) ?? heldStep(state));

/** What is to be heard first, and how; null where an input of that time may go on. */
export function unheard(
  state: SessionState,
  telling: Telling | null,
  meaning: Meaning,
  at: number,
  isAtScreen: boolean,
): Unheard | null {
  if (telling === null || !goesPast(state, meaning) || at >= opensAt(telling, isAtScreen)) return null;
  return { signal: telling.warns.signal, how: telling.isBeingSaid ? 'being said' : 'to be read' };
}

export interface Unheard {
  readonly signal: Hazard['signal'];
  readonly how: 'being said' | 'to be read';
}

/** Whether texts that are spoken hold all that warns. */
export function tells({ sentences }: Warns, texts: readonly string[]): boolean {
  const all = texts.join(' ');
  return sentences.every((each) => all.includes(each));
}
