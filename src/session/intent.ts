import { DECIMAL } from '../units/index.ts';

/** Where an input came from. `gesture` is one before the camera; `program` is Bothhands itself (a reopened page, a time-out). */
export type Source = 'voice' | 'gesture' | 'pedal' | 'touch' | 'key' | 'program';

/** A moment on two clocks: `utc` (RFC 3339) may jump when a clock is set; `monotonic` (whole ms since the page began) never goes back. */
export interface Instant {
  readonly utc: string;
  readonly monotonic: number;
  /** The calendar day where the device stands, 'YYYY-MM-DD'; absent in entries from before it was kept. */
  readonly day?: string;
}

/** The calendar day of a moment: by it a calibration or a consumable runs out. Where it was not kept, the one of UTC. */
export const dayOf = ({ day, utc }: Instant): string => day ?? utc.slice(0, 10);

/**
 * The sound around what was heard, as the record names it: by its hash, so that the sound itself may be deleted later and
 * the record stays whole. Or, where it was agreed on and could not be kept, why.
 */
export type SoundOfReading =
  | {
      readonly kept: true;
      /** SHA-256 of the WAV file. */
      readonly sha256: string;
      /** Length of the WAV file. */
      readonly bytes: number;
      /** From when to when it was taken (RFC 3339). */
      readonly from: string;
      readonly to: string;
    }
  | { readonly kept: false; readonly why: string };

/**
 * What was heard, typed or seen, as it goes into the record: confidences as decimal text. A gesture stands as one word,
 * by its name.
 */
export interface Heard {
  readonly text: string;
  readonly words: readonly { readonly word: string; readonly confidence: string }[];
  /** The same sound heard without the phrases of the moment, where it was heard a second time; '' for no words. */
  readonly again?: string;
  /** When it was spoken, first word to last, or shown (RFC 3339); absent for typed words. */
  readonly spoken?: { readonly from: string; readonly to: string };
  /** About a reading, where everybody agreed that its sound is kept. */
  readonly sound?: SoundOfReading;
}

/** A reading as it was said: `value` is the exact decimal text, zeros after the point kept, in the unit of the tool. */
export interface SaidReading {
  readonly fastener: number | null;
  readonly value: string;
}

/** Longer than any scale can show: more is a slip of the keyboard or of the recogniser. */
const LONGEST_VALUE = 12;

/** Whether text is an unsigned decimal that a scale can show. */
export const isDecimalOfScale = (value: string): boolean =>
  DECIMAL.test(value) && !value.startsWith('-') && value.length <= LONGEST_VALUE;

/** Whether a reading can be one at all: an unsigned decimal that a scale can show, and a whole fastener number. */
export const isWellFormed = ({ fastener, value }: SaidReading): boolean =>
  isDecimalOfScale(value) && (fastener === null || Number.isSafeInteger(fastener));

/**
 * Why a reading that was understood is asked about with more than the usual question. It is captured as it was said all
 * the same: a doubt never changes a value.
 */
export type ReadingDoubt =
  | 'not sure'
  | 'off the scale'
  /** More places than the scale shows. */
  | 'between marks'
  /** Another number that the scale can show sounds like it. */
  | 'sounds like another'
  /** Outside the window, and inside it with its point moved by one place. */
  | 'out by ten'
  /** Outside the window, and inside it with two neighbouring digits changed over. */
  | 'digits swapped'
  /** Outside the window, and with more or fewer whole digits than any value in it. */
  | 'digit count'
  /** Said sooner after its fastener was called than a wrench can be moved there and pulled. */
  | 'too soon';

/** A reading as it was understood, with the doubts about it, the gravest first; absent where there is none. */
export interface UnderstoodReading {
  readonly reading: SaidReading;
  readonly doubts?: readonly ReadingDoubt[];
}

/** Text without halves of letters: canonical JSON has no place for them. */
export const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '\uFFFD');

/** Why something that was said is asked about instead of taken. */
export type Doubt = 'several readings' | 'not sure' | 'other unit';

/** What is asked about the work. The answer changes nothing. */
export type Question =
  | { readonly about: 'place' | 'left' | 'last readings' | 'why' | 'slowly' }
  | { readonly about: 'logged'; readonly fastener: number };

/** What is out of the ordinary about a fastener, as the mechanic reports it. */
export const DEVIATION_KINDS = ['over torque', 'under torque', 'takes no torque', 'damage'] as const;
export type DeviationKind = (typeof DEVIATION_KINDS)[number];

/** What may become of a deviation. "Worked again" leads back to its step. */
export const DISPOSITION_KINDS = ['accepted as is', 'repaired', 'part replaced', 'deferred', 'worked again'] as const;
export type DispositionKind = (typeof DISPOSITION_KINDS)[number];

/** What an input asks for, whatever the device. Radiotelephony words keep their standard meaning. */
export type Meaning =
  /** The page was opened again on a session under way. */
  | { readonly kind: 'reopen' }
  | { readonly kind: 'next' }
  /** The nut turned in a check for turning. */
  | { readonly kind: 'turned' }
  | { readonly kind: 'back' }
  | { readonly kind: 'say again' }
  | { readonly kind: 'question'; readonly question: Question }
  | { readonly kind: 'stand by' }
  | { readonly kind: 'continue' }
  | { readonly kind: 'affirm' }
  | { readonly kind: 'negative' }
  | { readonly kind: 'disregard' }
  /** Nobody answered for a while. Only the program itself means this. */
  | { readonly kind: 'silence' }
  /** A while has passed in which a weight is held. Only the program itself means this. */
  | { readonly kind: 'time passed' }
  /** The mechanic, or somebody asked for, holds the weight. */
  | { readonly kind: 'held' }
  | { readonly kind: 'set down' }
  /** The second person is wanted at once. */
  | { readonly kind: 'help' }
  | { readonly kind: 'answer'; readonly outcome: string }
  | ({ readonly kind: 'reading' } & UnderstoodReading)
  | ({ readonly kind: 'correction' } & UnderstoodReading)
  /** What the second person reads off the tool, led by the word "witness". */
  | { readonly kind: 'witness'; readonly reading: SaidReading }
  /** What is read off something else than a torque tool, as exact decimal text. */
  | { readonly kind: 'observed'; readonly value: string }
  /** Somebody who gives their name has inspected what a step asks them to look at. */
  | { readonly kind: 'inspects'; readonly name: string; readonly agrees: boolean }
  /** What becomes of a deviation, decided by a person with a name. */
  | {
      readonly kind: 'dispose';
      readonly of: number;
      readonly what: DispositionKind;
      readonly by: string;
      readonly note: string;
    }
  /** A fresh packing of a consumable is here: text as it was typed off it. */
  | {
      readonly kind: 'fresh consumable';
      readonly consumable: string;
      readonly batch: string;
      readonly expires: string;
      readonly quantity: string;
    }
  /** A name typed, and a button held or pressed twice: no word can mean it. */
  | { readonly kind: 'sign'; readonly role: 'mechanic' | 'inspector'; readonly name: string }
  /** The second person agrees, or does not, with what a step asks them to look at. */
  | { readonly kind: 'witness says'; readonly agrees: boolean }
  | { readonly kind: 'click'; readonly fastener: number | null }
  /** Something is out of the ordinary about the fastener that is called. */
  | { readonly kind: 'report'; readonly what: DeviationKind }
  /** The fastener of a reported deviation is passed over in this pass. */
  | { readonly kind: 'leave open' }
  /** Why, in the reporter's own words: dictated or typed, kept as text. */
  | { readonly kind: 'reason'; readonly text: string }
  /** The mechanic leaves the work to another one. */
  | { readonly kind: 'hand over' }
  /** The one who comes in says who they are. Names are typed or tapped: no recogniser knows them. */
  | { readonly kind: 'take over'; readonly name: string }
  /** A second person joins under a name, or leaves (null). */
  | { readonly kind: 'second person'; readonly name: string | null }
  /** Something was said, but not surely enough, or in a way that allows more than one reading: it is asked, never guessed. */
  | { readonly kind: 'unclear'; readonly doubt: Doubt; readonly readings: readonly SaidReading[] };

/** What may be meant once the words that hold always are dealt with. */
export type WorkingMeaning = Exclude<
  Meaning,
  {
    kind:
      | ('say again' | 'question' | 'stand by' | 'continue' | 'unclear' | 'reopen' | 'silence' | 'help' | 'time passed')
      | ('dispose' | 'sign' | 'inspects' | 'fresh consumable')
      | ('reason' | 'hand over' | 'take over' | 'second person');
  }
>;

/** One input, ready to be decided on. Time and identity come in with it: deciding has no clock and no random. */
export interface Intent {
  readonly at: Instant;
  readonly source: Source;
  readonly person: string;
  readonly heard: Heard | null;
  readonly meaning: Meaning;
}
