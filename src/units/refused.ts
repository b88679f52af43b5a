/**
 * The one error of the pure rooms. Bad input is refused by name: `code` is for programs and tests, `message` is one plain
 * sentence that says what is wrong and, where there is one, the mend. It is a `RangeError`, so a caller that only knows
 * the language's own errors still understands it.
 *
 * Each room lists its codes in a union type of its own (`UnitsRefusal`, `TighteningRefusal`, `LiftingRefusal`).
 */
export class Refused<Code extends string = string> extends RangeError {
  override readonly name = 'Refused';
  readonly code: Code;

  constructor(code: Code, sentence: string) {
    super(sentence);
    this.code = code;
  }
}

export type UnitsRefusal =
  | 'not-finite'
  | 'unknown-unit'
  | 'ambiguous-unit'
  | 'kinds-differ'
  | 'not-a-decimal'
  | 'not-a-number-of-places'
  | 'limits-crossed';

export function refuse(code: UnitsRefusal, sentence: string): never {
  throw new Refused(code, sentence);
}
