/** What is to be said about the preparation of a job, and where. */

/** The field of the page that a finding is about. */
export type Field =
  | 'people'
  | 'approved data'
  | 'container'
  | 'lift'
  | 'hazards'
  | `tool/${string}`
  | `adapter/${string}`
  | `consumable/${string}`
  | `microphone/${string}`;

export interface Finding {
  readonly field: Field;
  /** What is wrong, and what to do. */
  readonly sentence: string;
  /** Whether the work cannot begin like this. The others warn: the mechanic decides, and the record says so. */
  readonly stops: boolean;
}

export const stop = (field: Field, sentence: string): Finding => ({ field, sentence, stops: true });
export const warn = (field: Field, sentence: string): Finding => ({ field, sentence, stops: false });
