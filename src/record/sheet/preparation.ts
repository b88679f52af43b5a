/** What was found and said before the first step: stated by whom, and when. */
import { factInWords } from '../../session/preparation/in-words.ts';
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
  entries.flatMap(({ body, person, at }) =>
    body.kind === 'prepared'
      ? [
          {
            what: factInWords(body.fact, procedure),
            isWarning: body.fact.of === 'warning',
            by: person,
            at: sheetTime(at.utc, timeZone),
          },
        ]
      : [],
  );
