/** What may be said to the loop, as far as it matters to it. */

interface Value {
  readonly stud: number | null;
  readonly text: string;
}
interface Doubted {
  readonly isDoubted: boolean;
  /** What is asked about it is whether it was another that sounds like it. */
  readonly isAlike: boolean;
}
interface Valued {
  readonly value: Value & Doubted;
  readonly correction: Value & Doubted;
  /** What the second person reads. */
  readonly witness: Value;
  readonly click: Pick<Value, 'stud'>;
}
type Bare = 'affirm' | 'negative' | 'disregard' | 'next' | 'back' | 'stand by' | 'continue';
/** These take nothing, confirm nothing and drop nothing. */
type Idle = 'long pause' | 'silence' | 'say again' | 'reload' | 'question' | 'not understood';
export type Kind = keyof Valued | Bare | Idle;
export type Said<K extends Kind> = { readonly word: K } & (K extends keyof Valued ? Valued[K] : unknown);
export type Word = { [K in Kind]: Said<K> }[Kind];
