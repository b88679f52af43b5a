/** What differs between two versions of a procedure. */
import { said } from './said.ts';

export const differences = said('differences', {
  /** Without a value where the place names the thing. */
  added: (value: string | null) => (value === null ? 'added' : `added: ${value}`),
  removed: (value: string | null) => (value === null ? 'removed' : `removed: ${value}`),
  changed: (from: string, to: string) => `changed from ${from} to ${to}`,
  moved: (from: number, to: number) => `moved from place ${from} to ${to}`,
  nothing: 'nothing',
  range: (min: string, max: string) => `${min} to ${max}`,
});
