import type { Outcome } from '../tightening/verdict.ts';
import type { Written } from '../units/index.ts';
import type {
  DeviationKind,
  DispositionKind,
  Heard,
  Instant,
  Meaning,
  Question,
  ReadingDoubt,
  Source,
} from './intent.ts';
import type { PreparedFact } from './preparation/fact.ts';
import type { PointAnswer } from './point.ts';
import type { Refusal } from './refusal.ts';

/** Who takes part. The second person reads back; null when the mechanic works alone. */
export interface People {
  readonly mechanic: string;
  readonly second: string | null;
}

/** How a value came about: read off an indicating tool, or the click of a setting tool at its set value. */
export type Evidence = 'read' | 'click';

/** What was found: the verdict on a torque, or that a used self-locking nut turns too freely to be used again. */
export type Finding = Outcome | 'nut worn';

/** A rule of judging with all its numbers, as decimal text. */
export type WrittenRule =
  | { readonly rule: 'simple' }
  | { readonly rule: 'guard band'; readonly uncertainty: Written<'torque'>; readonly factor: string }
  | { readonly rule: 'relative tool error'; readonly errorPercent: string };

/** What a value was judged by, in full, so that it can be understood later without working anything out again. */
export type Basis =
  | {
      readonly of: 'torque';
      readonly tool: string;
      /** The manual's value, at the fastener. */
      readonly target: Written<'torque'>;
      /** Of this nut, measured before; it was added to the target and to its window. */
      readonly runningTorque: Written<'torque'> | null;
      readonly adapter: {
        readonly lever: Written<'length'>;
        readonly length: Written<'length'>;
        readonly angle: Written<'angle'>;
      } | null;
      /** What was called out, at the wrench. */
      readonly setting: Written<'torque'>;
      /** The manual's window with running torque and adapter, at the wrench, in full precision. */
      readonly window: { readonly min: Written<'torque'>; readonly max: Written<'torque'> };
      /** What the rule accepts of it; null where it accepts nothing. */
      readonly accepted: { readonly min: Written<'torque'>; readonly max: Written<'torque'> } | null;
      readonly judging: WrittenRule;
    }
  | {
      readonly of: 'running torque';
      readonly tool: string;
      /** What a nut must turn with; null where the procedure states none. */
      readonly minimum: Written<'torque'> | null;
    };

/**
 * What happened, as a fact. Nothing is erased: a correction, a rejection or a disregard names the event it is about
 * by its sequence number.
 */
export type EventBody =
  | {
      readonly kind: 'opened';
      readonly format: 1;
      readonly app: string;
      readonly people: People;
      /** SHA-256 of the canonical JSON of `procedure`. */
      readonly procedureHash: string;
      /** The procedure file as it was, so that the record replays without any other file; its tools with their calibration. */
      readonly procedure: unknown;
      /** Whether everybody agreed that the sound around readings is kept; absent where it was not asked yet. */
      readonly sound?: 'agreed' | 'not agreed';
      /** The speech model that listened at the start; null where none was loaded. */
      readonly model?: { readonly name: string; readonly sha256: string } | null;
    }
  /** Found and said before the first step. */
  | { readonly kind: 'prepared'; readonly fact: PreparedFact }
  | { readonly kind: 'reopened' }
  | { readonly kind: 'warning acknowledged'; readonly step: string; readonly index: number }
  | { readonly kind: 'step done'; readonly step: string }
  | { readonly kind: 'step taken back'; readonly step: string }
  /** A question about the unit was answered, on which it depends whether steps apply. */
  | { readonly kind: 'condition answered'; readonly condition: string; readonly is: boolean }
  /** The step does not apply, because the condition has this answer. */
  | { readonly kind: 'step skipped'; readonly step: string; readonly condition: string; readonly is: boolean }
  | { readonly kind: 'answered'; readonly step: string; readonly outcome: string }
  /** The mechanic has the weight in both hands. */
  | { readonly kind: 'hold begun'; readonly step: string }
  /** One of the step's calls was said to those who carry. */
  | { readonly kind: 'hold call'; readonly step: string; readonly index: number }
  /** The weight is set down. `seconds` is how long it was held, by the wall clock. */
  | { readonly kind: 'hold ended'; readonly step: string; readonly seconds: number }
  /** What is observed after a wait: the wait begins. */
  | { readonly kind: 'wait begun'; readonly step: string }
  /** A value was read off something else than a torque tool. */
  | {
      readonly kind: 'value observed';
      readonly step: string;
      /** Exact decimal text, as it was said. */
      readonly value: string;
      readonly unit: string;
      readonly window: { readonly min: string; readonly max: string } | null;
      readonly verdict: 'in' | 'under' | 'over' | 'no window';
      /** Whole seconds of the wait before it; null where the step has none. */
      readonly waited: number | null;
      /** The earlier value this one stands in for, if any. */
      readonly corrects: number | null;
    }
  | { readonly kind: 'value confirmed'; readonly of: number }
  | { readonly kind: 'value rejected'; readonly of: number }
  | { readonly kind: 'value disregarded'; readonly of: number }
  /** The work goes on with a value outside its window: someone else decides about it. */
  | { readonly kind: 'value left open'; readonly of: number }
  /** What becomes of a deviation, a value over its window, or a value left open, named by its event. */
  | {
      readonly kind: 'disposed';
      readonly of: number;
      readonly what: DispositionKind;
      readonly by: string;
      readonly note: string | null;
    }
  /** Somebody signed the record by typing their name and a press that is held. */
  | { readonly kind: 'signed'; readonly role: 'mechanic' | 'inspector'; readonly person: string }
  /** The second person was called to help; null where all steps are done. */
  | { readonly kind: 'help called'; readonly step: string | null }
  /** A point of a step was answered, named by its key. Only "negative" leaves it open, and not where it is a criterion. */
  | {
      readonly kind: 'point settled';
      readonly step: string;
      readonly point: string;
      readonly answer: PointAnswer;
      /**
       * With a new seal: what this step looks for in a seal is asked anew, of the new one. With an answer to that: it is about
       * the new one. Absent in records from before that was asked.
       */
      readonly part?: 'new';
      /** Of a new seal: why it was taken, the criterion that the old one failed, and its part number, where there are any. */
      readonly replaced?: {
        readonly because: 'never used again' | 'failed' | 'chosen';
        readonly failed: string | null;
        readonly partNumber: string | null;
      };
    }
  /** A fresh packing of a consumable was fetched in the work, because what there was is past its day or used up. */
  | {
      readonly kind: 'consumable fetched';
      readonly consumable: string;
      readonly batch: string | null;
      /** 'YYYY-MM-DD'; null where it does not expire. */
      readonly expires: string | null;
      readonly quantity: number | null;
    }
  | {
      readonly kind: 'fastener done';
      readonly step: string;
      readonly pass: number;
      readonly fastener: number;
      /** In a check for turning: the nut turned, so the round is made once more. */
      readonly turned?: true;
    }
  | {
      readonly kind: 'reading captured';
      readonly step: string;
      /** From 1; 0 is the round before the first pass, in which running torque is measured. */
      readonly pass: number;
      readonly fastener: number;
      readonly evidence: Evidence;
      readonly reading: Written<'torque'>;
      readonly verdict: Finding;
      readonly basis: Basis;
      /** The earlier reading this one stands in for, if any. */
      readonly corrects: number | null;
      /** Why it was asked about with more than the usual question, the gravest first; absent where nothing was doubted. */
      readonly doubts?: readonly ReadingDoubt[];
    }
  /** The second person read the tool as well, before the mechanic's value was shown or spoken. */
  | {
      readonly kind: 'witnessed';
      readonly of: number;
      readonly reading: Written<'torque'>;
      readonly person: string;
    }
  /** The two values differ by more than one mark of the tool: neither counts, and both read again. */
  | { readonly kind: 'disputed'; readonly of: number }
  | { readonly kind: 'reading confirmed'; readonly of: number }
  | { readonly kind: 'reading rejected'; readonly of: number }
  | { readonly kind: 'reading disregarded'; readonly of: number }
  /** Nobody confirmed or rejected a reading for a while: it is asked about again, and waits on. */
  | { readonly kind: 'timed out'; readonly of: number }
  /** What a step asks for is done, and its second person is to look at it. */
  | { readonly kind: 'witness asked'; readonly step: string }
  /** The second person looked at what a step asks for, and agrees or does not. */
  | {
      readonly kind: 'step witnessed';
      readonly step: string;
      readonly person: string;
      readonly agrees: boolean;
      /** An inspection: they gave their name for it, and were never the mechanic. */
      readonly independent?: true;
    }
  | {
      readonly kind: 'deviation reported';
      readonly step: string;
      readonly pass: number;
      readonly fastener: number;
      readonly what: DeviationKind;
      /** The standing reading of that fastener in that pass, if there is one. */
      readonly reading: number | null;
      /** Damage of a part of which it is reported already at this step, in that event, and not decided about: one decision is for both. */
      readonly again?: number;
    }
  /** Why, as it was dictated or typed. It counts when it was read back and confirmed. */
  | { readonly kind: 'reason given'; readonly of: number; readonly text: string }
  | { readonly kind: 'reason confirmed'; readonly of: number }
  | { readonly kind: 'reason rejected'; readonly of: number }
  | { readonly kind: 'deviation disregarded'; readonly of: number }
  /** The fastener of a deviation is passed over in this pass: someone else decides about it. */
  | { readonly kind: 'left open'; readonly of: number }
  | { readonly kind: 'second person joined'; readonly name: string }
  | { readonly kind: 'second person left'; readonly name: string }
  | { readonly kind: 'handover begun' }
  | { readonly kind: 'handed over'; readonly from: string; readonly to: string }
  /** Somebody came back to a fastener after long, with the page open all the while. */
  | { readonly kind: 'break noticed' }
  /** After a long break: all is as it was left. */
  | { readonly kind: 'break accepted' }
  /** The procedure has a pass that was broken off begun again: its readings are set aside, none is erased. */
  | { readonly kind: 'pass restarted'; readonly step: string; readonly pass: number }
  | { readonly kind: 'repeat asked' }
  | { readonly kind: 'asked'; readonly question: Question }
  | { readonly kind: 'stood by' }
  | { readonly kind: 'continued' }
  | { readonly kind: 'refused'; readonly meaning: Meaning; readonly reason: Refusal }
  | { readonly kind: 'closed' }
  /** Sounds that were kept are kept no longer, by their hashes. The only event that may follow the closing. */
  | { readonly kind: 'sounds deleted'; readonly sounds: readonly string[] };

/** An event in its place: which one, when, by whom, through what. */
export interface SessionEvent {
  readonly seq: number;
  readonly at: Instant;
  readonly source: Source;
  readonly person: string;
  /** Thumbprint (RFC 7638) of the key of the device that wrote it; absent where the device keeps no key. */
  readonly device?: string;
  readonly heard: Heard | null;
  readonly body: EventBody;
}
