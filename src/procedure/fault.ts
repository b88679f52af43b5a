/** Faults: what is wrong with a procedure file, where, and what was expected there. */
import type * as v from 'valibot';
import { Refused } from '../units/index.ts';
import { procedureFile } from '../words/procedure-file.ts';

/** One thing wrong with a procedure file. */
export interface Fault {
  /** Path in the file, such as `steps.3.passes.0.target.unit`; empty for the file as a whole. */
  readonly path: string;
  /** What was found and what was expected, in one plain sentence. */
  readonly message: string;
}

/** A fault of the schema, with what was found put before what was expected. */
export function faultOfIssue(issue: v.BaseIssue<unknown>): Fault {
  const path = pathOf((issue.path ?? []).map(({ key }) => String(key)));
  const isAboutField = issue.type === 'strict_object' && issue.path?.at(-1)?.origin === 'key';
  return { path, message: isAboutField ? issue.message : procedureFile.found(shown(issue.input), issue.message) };
}

/**
 * Does a piece of work that a pure room may refuse, and turns the refusal into a fault. Any other error is a slip in the
 * program and is not hidden.
 * @param at the path, or the path for a code of refusal
 * @returns null after a refusal
 */
export function attempt<T>(faults: Fault[], at: string | ((code: string) => string), work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (!isRefused(error)) throw error;
    faults.push({ path: typeof at === 'string' ? at : at(error.code), message: error.message });
    return null;
  }
}

/** A refusal of a pure room, and not a slip in the program. */
export const isRefused = (error: unknown): error is Refused => error instanceof Refused;

/** A path of names in a file, as one plain word: "steps.3.title". */
export const pathOf = (names: readonly (string | number)[]): string => names.map((name) => named(`${name}`)).join('.');

/** A name as it stands where it is plain, else quoted, so that no name breaks a line or steers a terminal. */
export const named = (name: string): string => (/^[\p{L}\p{N}_$-]+$/u.test(name) ? name : quoted(name));

/** JSON text without any character that steers a terminal: JSON itself lets DEL and the C1 controls stand. */
export const quoted = (text: string): string =>
  JSON.stringify(text).replace(
    /[\u007f-\u009f\u2028\u2029]/g,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

const MOST_SHOWN = 60;

/** A value from a file as it appears in a message: short, in the file's own notation. */
export function shown(value: unknown): string {
  if (value === undefined) return procedureFile.nothing;
  if (Array.isArray(value)) return value.length === 0 ? procedureFile.emptyList : procedureFile.list;
  if (typeof value === 'object' && value !== null)
    return isMeasure(value)
      ? `${value.value} ${value.unit}`
      : isWindow(value)
        ? windowText(value)
        : procedureFile.object;
  const text = typeof value === 'string' ? quoted(value) : JSON.stringify(value);
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text;
}

/** A window, so that a crossed one is told with both its values. */
const isWindow = (value: object): value is { min: unknown; max: unknown } => 'min' in value && 'max' in value;
const windowText = ({ min, max }: { min: unknown; max: unknown }): string =>
  procedureFile.window(shown(min), shown(max));

const isMeasure = (value: object): value is { value: number; unit: string } =>
  'value' in value && 'unit' in value && typeof value.value === 'number' && typeof value.unit === 'string';
