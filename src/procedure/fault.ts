/** Faults: what is wrong with a procedure file, where, and what was expected there. */
import type * as v from 'valibot';
import { Refused } from '../units/index.ts';

/** One thing wrong with a procedure file. */
export interface Fault {
  /** Path in the file, such as `steps.3.passes.0.target.unit`; empty for the file as a whole. */
  readonly path: string;
  /** What was found and what was expected, in one plain sentence. */
  readonly message: string;
}

/** A fault of the schema, with what was found put before what was expected. */
export function faultOfIssue(issue: v.BaseIssue<unknown>): Fault {
  const path = (issue.path ?? []).map(({ key }) => String(key)).join('.');
  const isAboutField = issue.type === 'strict_object' && issue.path?.at(-1)?.origin === 'key';
  return { path, message: isAboutField ? issue.message : `found ${shown(issue.input)}, ${issue.message}` };
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

const MOST_SHOWN = 60;

/** A value from a file as it appears in a message: short, in the file's own notation. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object' && value !== null)
    return isMeasure(value) ? `${value.value} ${value.unit}` : 'an object';
  const text = JSON.stringify(value);
  return text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text;
}

const isMeasure = (value: object): value is { value: number; unit: string } =>
  'value' in value && 'unit' in value && typeof value.value === 'number' && typeof value.unit === 'string';
