import { recordFindings } from '../words/record-findings.ts';
import type { Entry } from './entry.ts';

/** What a head that was noted earlier says about a record. */
export type HeadFinding =
  /** It is the hash of the last entry: the record is the one that was noted, whole. */
  | { readonly kind: 'same' }
  /** It is the hash of entry `at`: the record was noted then, and `since` entries came after it. */
  | { readonly kind: 'grown'; readonly at: number; readonly since: number }
  /** No entry has it: the record was written anew or cut since, or the head is of another session. */
  | { readonly kind: 'another' }
  | { readonly kind: 'no head'; readonly why: string };

const DIGITS = 64;

/** Compares a head noted elsewhere, on paper or by another person, with a record. Spaces and capitals do not matter. */
export function compareHead(noted: string, entries: readonly Pick<Entry, 'hash'>[]): HeadFinding {
  const digits = noted.replace(/\s/g, '').toLowerCase();
  const wrong = /[^0-9a-f]/.exec(digits);
  if (wrong) return { kind: 'no head', why: recordFindings.head.noDigit(wrong[0]) };
  if (digits.length !== DIGITS) return { kind: 'no head', why: recordFindings.head.length(DIGITS, digits.length) };
  const at = entries.findIndex(({ hash }) => hash === digits);
  if (at < 0) return { kind: 'another' };
  const since = entries.length - 1 - at;
  return since === 0 ? { kind: 'same' } : { kind: 'grown', at, since };
}

const GROUP = 8;

/** A head in groups of eight digits, as it can be read aloud, written down and compared. */
export const headGroups = (head: string): readonly string[] => head.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? [];
