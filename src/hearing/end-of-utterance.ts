/**
 * When an utterance has ended: decided from what its words are, and how long it has been quiet. Pure, without a clock.
 *
 * The engine ends an utterance only after half a second of what it takes for silence, and knows that late; its partial
 * results come later still. But asked for its result, it gives at once the words up to there. So it is asked as soon as
 * the sound stops, and the words decide how long to wait: not at all after a command that cannot go on, as long as people
 * pause inside numbers after digits. Who speaks on meanwhile is heard as one utterance.
 */

/** How far the words have come, judged by whoever knows what may be said. */
export type Completeness =
  | 'complete and closed'
  /** More words could follow, but none that are likely. */
  | 'complete, likely whole'
  | 'complete, may go on'
  | 'unfinished'
  | 'nothing';

/** All times are milliseconds on one clock. */
export type Input =
  /** More audio, up to a moment: how much of it was sound, when sound last ended, and whether it stands out of a quiet room. */
  | {
      readonly kind: 'audio';
      readonly now: number;
      readonly sound: number;
      readonly soundUntil: number;
      readonly isClear: boolean;
    }
  /** The engine's view before the end. It comes late: only what it rules out is of use. */
  | { readonly kind: 'partial'; readonly of: Completeness; readonly isEmpty: boolean }
  /** The result that was asked for: all words of the utterance so far, and when the new ones end, null where there are none. */
  | { readonly kind: 'result'; readonly of: Completeness; readonly isSure: boolean; readonly end: number | null }
  /** The engine has ended an utterance by itself; its words end at this time. It decodes on. */
  | { readonly kind: 'final'; readonly of: Completeness; readonly end: number };

/** What is to be done now. */
export type Order =
  | { readonly kind: 'wait' }
  /** The words so far may be all: what they come to can be shown, and is taken back where they go on. Nothing else changes. */
  | { readonly kind: 'show' }
  /** Ask the engine for its result; what comes in meanwhile is kept and not decoded. */
  | { readonly kind: 'ask' }
  /** The words so far are an utterance. Where a result was in hand, decoding begins afresh with the audio from this time. */
  | { readonly kind: 'deliver'; readonly from: number | null }
  /** The pause was a short one within the utterance: decode that again as a whole, and go on. */
  | { readonly kind: 'decode again' }
  /** The pause was long for the engine but not for people: keep the words, and decode what came since as more of them. */
  | { readonly kind: 'continue'; readonly from: number };

export type State = Listening &
  (
    | { readonly phase: 'decoding' }
    /** The sound ended then; null where it does not, and the words themselves must show that they have ended. */
    | { readonly phase: 'asked'; readonly ended: number | null }
    | {
        readonly phase: 'in hand';
        readonly ended: number;
        readonly until: number;
        /** When what may go on is shown; null where it is not, or was. */
        readonly showsAt: number | null;
        readonly isEmpty: boolean;
      }
  );

interface Listening {
  readonly now: number;
  /** Since decoding began, or since the result was asked for. */
  readonly sound: number;
  readonly soundUntil: number;
  readonly isClear: boolean;
  /** How often the result was asked for and had to be decoded again. */
  readonly vain: number;
  /** Whatever follows, these words mean nothing: there is no hurry. A first result may only have cut a word in two. */
  readonly isHopeless: boolean;
  /** Until when words that the engine ended by itself wait for more; null where there are none. */
  readonly waitsUntil: number | null;
  readonly partialIsEmpty: boolean;
}

/** About as long as the closure before a "t" or "p" (50 to 120 ms). Asking in vain costs decoding, nothing else. */
export const ASK_AFTER_MS = 120;
/** Once that was in vain: who speaks with gaps is asked less hastily. */
export const ASK_AGAIN_AFTER_MS = 240;
/** In noise that never ends, the result is asked for after so much of it, to see whether words have ended under it. */
export const NOISE_MS = 1000;
/** What the engine takes for silence under noise is believed after so long. */
export const QUIET_IN_NOISE_MS = 250;
/** After a reading that the tool could not show with more figures. */
export const LIKELY_WHOLE_MS = 300;
/** After words that are complete and might go on: people pause up to about a second inside numbers, fluent before it or not. */
export const MAY_GO_ON_MS = 1000;
/** After words that cannot stand alone. */
export const UNFINISHED_MS = 1300;
/** After what means nothing. As the engine waits, so that other talk stays whole. */
export const NOTHING_MS = 500;
/** After a command that was not heard surely: what follows may show that it was none. */
export const UNSURE_MS = 350;
/** What paused for less, the engine decodes as one; from half a second on it ends an utterance by itself. */
export const ONE_BREATH_MS = 400;
/** Shorter sounds are no words. */
const SHORTEST_WORD_MS = 60;
/** Less is an echo or a click. */
const SPEAKS_ON_MS = 40;
/** The engine's partial result is this late at most. Words that wait are not held longer by mere noise. */
const PARTIAL_LAG_MS = 1500;
/** Decoding afresh begins with what came so long before, but not with the end of the last word. */
const LEAD_MS = 300;
const WORD_TAIL_MS = 100;
/**
 * Where no words were found, so much is decoded again: the first syllable of a word, cut off from its rest by a closure,
 * is none to the engine, and under noise nobody sees where a word begins.
 */
export const NO_WORDS_LEAD_MS = 1000;

/** How long to wait for more. */
const PATIENCE: Readonly<Record<Completeness, number>> = {
  'complete and closed': 0,
  'complete, likely whole': LIKELY_WHOLE_MS,
  'complete, may go on': MAY_GO_ON_MS,
  unfinished: UNFINISHED_MS,
  nothing: NOTHING_MS,
};

export const START: State = {
  phase: 'decoding',
  now: -Infinity,
  sound: 0,
  soundUntil: -Infinity,
  isClear: true,
  vain: 0,
  isHopeless: false,
  waitsUntil: null,
  partialIsEmpty: true,
};

export interface Step {
  readonly state: State;
  readonly order: Order;
}

/** What follows from an input. The order is to be carried out before the next input. */
export function next(state: State, input: Input): Step {
  switch (input.kind) {
    case 'audio': {
      const { now, sound, soundUntil, isClear } = input;
      return afterAudio({ ...state, now, sound: state.sound + sound, soundUntil, isClear });
    }
    case 'partial': {
      const isHopeless = state.isHopeless || (!input.isEmpty && input.of === 'nothing');
      return wait({ ...state, partialIsEmpty: input.isEmpty, isHopeless });
    }
    case 'result':
      return state.phase === 'asked' ? afterResult(state, input) : wait(state);
    case 'final': {
      const afresh: State = { ...state, isHopeless: false, partialIsEmpty: true, vain: 0 };
      const patience = PATIENCE[input.of];
      if (patience <= NOTHING_MS)
        return { state: { ...afresh, waitsUntil: null }, order: { kind: 'deliver', from: null } };
      const waiting: State = { ...afresh, waitsUntil: input.end + patience };
      return input.of === 'complete, may go on' ? { state: waiting, order: { kind: 'show' } } : wait(waiting);
    }
  }
}

/** What was not delivered is decoded again, under another list of phrases. */
export const again = ({ phase, now, sound, soundUntil, waitsUntil }: State): State => ({
  ...START,
  now,
  soundUntil,
  waitsUntil,
  sound: phase === 'decoding' ? sound : SHORTEST_WORD_MS,
});

const wait = (state: State): Step => ({ state, order: { kind: 'wait' } });

function afterResult(
  state: Extract<State, { phase: 'asked' }>,
  { of, isSure, end }: Extract<Input, { kind: 'result' }>,
): Step {
  const isEmpty = end === null;
  const isHopeless = !isEmpty && of === 'nothing';
  const isUnsure = of === 'complete and closed' && !isSure;
  const patience = isUnsure ? UNSURE_MS : PATIENCE[of];
  if (state.ended !== null) {
    const until = state.ended + patience;
    const showsAt = of === 'complete, may go on' ? state.ended + ONE_BREATH_MS : null;
    return afterAudio({
      ...state,
      phase: 'in hand',
      ended: state.ended,
      until: (isEmpty && state.waitsUntil) || until,
      showsAt,
      isHopeless,
      isEmpty,
    });
  }
  const { now, soundUntil, waitsUntil } = state;
  const isOver = !isEmpty && !isUnsure && patience < NOTHING_MS && now - end >= QUIET_IN_NOISE_MS + patience;
  if (isOver) return { state: { ...START, now, soundUntil }, order: { kind: 'deliver', from: end + WORD_TAIL_MS } };
  const vain = isEmpty ? 0 : state.vain + 1;
  const goesOn: State = { ...START, now, soundUntil, sound: SHORTEST_WORD_MS, vain, waitsUntil };
  return isEmpty
    ? { state: goesOn, order: { kind: 'continue', from: now - NO_WORDS_LEAD_MS } }
    : { state: goesOn, order: { kind: 'decode again' } };
}

function afterAudio(state: State): Step {
  const { now, sound, soundUntil, isHopeless } = state;
  const afresh = { ...START, now, soundUntil };
  switch (state.phase) {
    case 'asked':
      return wait(state);
    case 'decoding': {
      const isQuiet = now - soundUntil >= (state.vain === 0 ? ASK_AFTER_MS : ASK_AGAIN_AFTER_MS);
      // Each question makes the engine begin afresh. Under noise that costs the beginnings of words: it must know of some first.
      const mayAsk = !isHopeless && (state.isClear || !state.partialIsEmpty);
      if (isQuiet && sound >= SHORTEST_WORD_MS && mayAsk)
        return { state: { ...state, phase: 'asked', ended: soundUntil, sound: 0 }, order: { kind: 'ask' } };
      if (!isQuiet && sound >= NOISE_MS * 2 ** state.vain && mayAsk)
        return { state: { ...state, phase: 'asked', ended: null, sound: 0 }, order: { kind: 'ask' } };
      const waitsUntil = (state.waitsUntil ?? Infinity) + (sound > 0 ? PARTIAL_LAG_MS : 0);
      const isOver = now >= waitsUntil && state.partialIsEmpty;
      return isOver ? { state: afresh, order: { kind: 'deliver', from: null } } : wait(state);
    }
    case 'in hand': {
      const { ended, until, showsAt, isEmpty } = state;
      const from = Math.max(ended + WORD_TAIL_MS, now - sound - LEAD_MS);
      if (sound < SPEAKS_ON_MS) {
        if (now >= until) return { state: afresh, order: { kind: 'deliver', from } };
        const isShownNow = showsAt !== null && now >= showsAt;
        return isShownNow ? { state: { ...state, showsAt: null }, order: { kind: 'show' } } : wait(state);
      }
      // Sound enough to be asked about, once it ends.
      const speaksOn = { ...afresh, sound: SHORTEST_WORD_MS };
      if (isEmpty)
        return {
          state: { ...speaksOn, waitsUntil: state.waitsUntil },
          order: { kind: 'continue', from: ended - NO_WORDS_LEAD_MS },
        };
      const isOneBreath = isHopeless || now - sound - ended < ONE_BREATH_MS;
      return isOneBreath
        ? {
            state: {
              ...speaksOn,
              isHopeless: isHopeless && state.vain > 0,
              vain: state.vain + 1,
              waitsUntil: state.waitsUntil,
            },
            order: { kind: 'decode again' },
          }
        : { state: { ...speaksOn, waitsUntil: until }, order: { kind: 'continue', from } };
    }
  }
}
