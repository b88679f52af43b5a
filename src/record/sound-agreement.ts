/** Whether it was agreed that the sound around readings is kept, in words: by whom, and when. */
import { sheetFacts } from '../words/sheet-facts.ts';
import type { SessionRecord } from './session-record.ts';
import { sheetTime } from './sheet/times.ts';

/** A sentence for whoever reads the record; null where nobody was asked. Who came later has agreed to nothing. */
export function soundAgreement({ entries }: Pick<SessionRecord, 'entries'>): string | null {
  const [first] = entries;
  if (first?.body.kind !== 'opened' || first.body.sound === undefined) return null;
  const { sound, people } = first.body;
  const who = [people.mechanic, ...(people.second === null ? [] : [people.second])];
  return sound === 'agreed'
    ? sheetFacts.soundAgreed(who, sheetTime(first.at.utc, 'UTC').utc)
    : sheetFacts.soundNotAgreed;
}
