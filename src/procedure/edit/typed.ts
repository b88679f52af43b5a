/** What is typed into a field, as it stands in the file, and back. What does not fit is kept as it was typed. */
import type { Json } from './draft.ts';

/** How the words of a field become JSON. An empty field is no field: null. */
export interface Notation {
  /** The JSON for what was typed; null where nothing was. */
  read(typed: string): Json | null;
  /** What the field shows. */
  show(json: Json | undefined): string;
}

const trimmed = (typed: string): string | null => typed.trim() || null;

const shown = (json: Json | undefined): string =>
  json === undefined || json === null ? '' : typeof json === 'string' ? json : JSON.stringify(json);

/** Words, decimals and days: as typed, without the spaces around. */
export const words: Notation = { read: trimmed, show: shown };

/** More digits are a slip, and no number of a file. */
const WHOLE = /^\d{1,9}$/;

/** A whole number. */
export const whole: Notation = {
  read: (typed) => (WHOLE.test(typed.trim()) ? Number(typed.trim()) : trimmed(typed)),
  show: shown,
};

/** Whole numbers with commas or spaces between them: "1, 7, 4". */
export const wholeNumbers: Notation = {
  read(typed) {
    const parts = typed.split(/[\s,;]+/).filter((part) => part !== '');
    return parts.length > 0 && parts.every((part) => WHOLE.test(part)) ? parts.map(Number) : trimmed(typed);
  },
  show: (json) => (isListOf(json, 'number') ? json.join(', ') : shown(json)),
};

/** A list of words, a line each. */
export const lines: Notation = {
  read(typed) {
    const found = typed.split('\n').flatMap((line) => line.trim() || []);
    return found.length > 0 ? found : null;
  },
  show: (json) => (isListOf(json, 'string') ? json.join('\n') : shown(json)),
};

const isListOf = (json: Json | undefined, type: 'number' | 'string'): json is readonly (number | string)[] =>
  Array.isArray(json) && json.every((item) => typeof item === type);
