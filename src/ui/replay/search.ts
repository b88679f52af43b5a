/** Finding events: by what was said, by what is written, by fastener, by person, by kind. */
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import { events } from '../../words/events.ts';
import { describe } from '../describe.ts';
import { kindsOf, type EventKind } from './event-kinds.ts';

/** An event as it is looked for. */
export interface EventLine {
  readonly seq: number;
  readonly person: string;
  readonly kinds: readonly EventKind[];
}

/** What is looked for. Nothing asked lets everything through. */
export interface Wanted {
  readonly query: string;
  /** Any of these; of every kind where there is none. */
  readonly kinds: ReadonlySet<EventKind>;
  readonly person: string | null;
}

/** All events that can be trusted. */
export const eventLines = ({ entries, procedure }: SessionRecord): readonly EventLine[] =>
  entries.map(({ seq, person, body }) => ({ seq, person, kinds: kindsOf(body, procedure) }));

/** The words of each event, said and written. A long record takes a moment: they are put together when first looked for. */
export function eventWords(record: SessionRecord): readonly string[] {
  const known = words.get(record);
  if (known) return known;
  const made = record.entries.map((entry) => {
    const what = describe(entry, stateAfter(record, entry.seq + 1));
    return inWords(
      `${events.entry} ${entry.seq} ${what} ${entry.heard?.text ?? ''} ${entry.person} ${events.sources[entry.source]}`,
    );
  });
  words.set(record, made);
  return made;
}

const words = new WeakMap<SessionRecord, readonly string[]>();

/** The numbers of the events that are wanted, in the order of the record. */
export function found(
  record: SessionRecord,
  lines: readonly EventLine[],
  { query, kinds, person }: Wanted,
): readonly number[] {
  const terms = termsOf(query);
  const said = terms.length === 0 ? [] : eventWords(record);
  return lines
    .filter(
      (line) =>
        (person === null || line.person === person) &&
        (kinds.size === 0 || line.kinds.some((kind) => kinds.has(kind))) &&
        terms.every((term) => term.test(said[line.seq] ?? '')),
    )
    .map(({ seq }) => seq);
}

/**
 * What a query asks of the words of an event, all of it: a word may go on ("conf" finds "confirmed"), a number is whole
 * ("4" is not 14 and not 4.5), and one that follows "stud", "pass" and the like belongs to it ("stud 4" is not "stud 1,
 * pass 4").
 */
function termsOf(query: string): readonly RegExp[] {
  const terms: string[] = [];
  for (const word of inWords(query).split(' ').filter(Boolean)) {
    const before = terms.at(-1);
    const whole = ` ${escaped(word)}(?= )`;
    if (!NUMBER.test(word)) terms.push(` ${escaped(word)}`);
    else if (before !== undefined && events.numbered.includes(before.trim())) terms.splice(-1, 1, before + whole);
    // The number of an entry is no value: it is only found by its name.
    else terms.push(`(?<! ${escaped(events.entry)})${whole}`);
  }
  return terms.map((term) => new RegExp(term, 'u'));
}

const NUMBER = /^\d+(\.\d+)?$/;
const escaped = (word: string): string => word.replaceAll('.', '\\.');

/** In small letters, one space between words and around them: letters, figures and the points inside numbers; the rest only parts words. */
const inWords = (text: string): string =>
  ` ${(text.toLowerCase().match(/\d+(?:\.\d+)*|[\p{L}\p{M}\d]+/gu) ?? []).join(' ')} `;

/** The next event of a kind after one, or the one before it; null where there is none. */
export function neighbour(
  lines: readonly EventLine[],
  from: number,
  kind: EventKind,
  direction: 1 | -1,
): number | null {
  for (let at = from + direction; at >= 0 && at < lines.length; at += direction)
    if (lines[at]?.kinds.includes(kind)) return at;
  return null;
}
