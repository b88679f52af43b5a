/** What an import could not take over, so that a person can look it up in the source. */
import { leftOut } from '../../words/left-out.ts';

export interface LeftOut {
  /** "line 41, step 2.1" */
  readonly place: string;
  /** What is missing in the procedure, or what must be settled by a person, in one sentence. */
  readonly what: string;
}

/** Collects what is left out, in the order of the file. */
export class LeftOutList {
  readonly #found: (LeftOut & { readonly line: number })[] = [];
  /** The step that is being read, as the module numbers it; null outside of steps. */
  step: string | null = null;

  note(line: number, what: string): void {
    this.#found.push({ line, place: leftOut.place(line, this.step), what });
  }

  all(): readonly LeftOut[] {
    return this.#found.toSorted((one, other) => one.line - other.line).map(({ place, what }) => ({ place, what }));
  }
}
