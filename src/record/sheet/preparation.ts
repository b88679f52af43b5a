/** What was found and said before the first step, and what was fetched in the work: stated by whom, and when. */
import { factInWords, fetchedInWords } from '../../session/preparation/in-words.ts';
import type { EventBody } from '../../session/event.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import type { SessionRecord } from '../session-record.ts';
import { sheetTime, type SheetTime } from './times.ts';

export interface SheetFact {
  readonly what: string;
  /** Whether the work was begun in spite of it. */
  readonly isWarning: boolean;
  readonly by: string;
  readonly at: SheetTime;
}

/** Each fact as a line, in the order of the record. */
export const preparationOf = ({ entries, procedure }: SessionRecord, timeZone: string): readonly SheetFact[] =>
  entries.flatMap(({ body, person, at }) => {
    const what = wordsOf(body, procedure);
    if (what === null) return [];
    const isWarning = body.kind === 'prepared' && body.fact.of === 'warning';
    return [{ what, isWarning, by: person, at: sheetTime(at.utc, timeZone) }];
  });

function wordsOf(body: EventBody, procedure: Procedure): string | null {
  if (body.kind === 'consumable fetched') return fetchedInWords(body, procedure);
  return body.kind === 'prepared' ? factInWords(body.fact, procedure) : null;
}
