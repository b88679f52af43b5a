import type { Outcome } from '../tightening/verdict.ts';
import type { Written } from '../units/index.ts';
import type { Heard, Instant, Meaning, Source } from './intent.ts';
import type { Refusal } from './refusal.ts';

/** Who takes part. The second person reads back; null when the mechanic works alone. */
export interface People {
  readonly mechanic: string;
  readonly second: string | null;
}

/** How a value came about: read off an indicating tool, or the click of a setting tool at its set value. */
export type Evidence = 'read' | 'click';

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
      /** The procedure file as it was, so that the record replays without any other file. */
      readonly procedure: unknown;
    }
  | { readonly kind: 'reopened' }
  | { readonly kind: 'warning acknowledged'; readonly step: string; readonly index: number }
  | { readonly kind: 'step done'; readonly step: string }
  | { readonly kind: 'step taken back'; readonly step: string }
  | { readonly kind: 'answered'; readonly step: string; readonly outcome: string }
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
      readonly pass: number;
      readonly fastener: number;
      readonly evidence: Evidence;
      readonly reading: Written<'torque'>;
      readonly verdict: Outcome;
      /** The earlier reading this one stands in for, if any. */
      readonly corrects: number | null;
    }
  | { readonly kind: 'reading confirmed'; readonly of: number }
  | { readonly kind: 'reading rejected'; readonly of: number }
  | { readonly kind: 'reading disregarded'; readonly of: number }
  | { readonly kind: 'repeat asked' }
  | { readonly kind: 'stood by' }
  | { readonly kind: 'continued' }
  | { readonly kind: 'refused'; readonly meaning: Meaning; readonly reason: Refusal }
  | { readonly kind: 'closed' };

/** An event in its place: which one, when, by whom, through what. */
export interface SessionEvent {
  readonly seq: number;
  readonly at: Instant;
  readonly source: Source;
  readonly person: string;
  readonly heard: Heard | null;
  readonly body: EventBody;
}
