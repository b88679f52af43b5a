/** Who worked and who witnessed, and when work stood still. */
import { sheetFacts } from '../../words/sheet-facts.ts';
import { isOfWork, type SessionRecord } from '../session-record.ts';
import { sheetTime, type SheetTime } from './times.ts';

export interface SheetPerson {
  readonly name: string;
  readonly role: 'mechanic' | 'second person' | 'helper';
  readonly from: SheetTime;
  /** When somebody else took over, or they left; null where they stayed to the end. */
  readonly to: SheetTime | null;
}

/** Everybody who took part, in the order in which they came. */
export function peopleOf({ entries, people }: SessionRecord, timeZone: string): readonly SheetPerson[] {
  const [first] = entries;
  if (!first) return [];
  const time = (utc: string): SheetTime => sheetTime(utc, timeZone);
  const begun = { from: time(first.at.utc), to: null };
  const all: SheetPerson[] = [{ name: people.mechanic, role: 'mechanic', ...begun }];
  if (people.second !== null) all.push({ name: people.second, role: 'second person', ...begun });
  const ends = (role: SheetPerson['role'], utc: string): void => {
    const at = all.findLastIndex((each) => each.role === role && each.to === null);
    const who = all[at];
    if (who) all[at] = { ...who, to: time(utc) };
  };
  const begins = (name: string, role: SheetPerson['role'], utc: string): void =>
    void all.push({ name, role, from: time(utc), to: null });
  for (const { body, at } of entries)
    switch (body.kind) {
      case 'prepared':
        if (body.fact.of === 'helper') begins(body.fact.name, 'helper', at.utc);
        break;
      case 'handed over':
        ends('mechanic', at.utc);
        begins(body.to, 'mechanic', at.utc);
        break;
      case 'second person joined':
        ends('second person', at.utc);
        begins(body.name, 'second person', at.utc);
        break;
      case 'second person left':
        ends('second person', at.utc);
        break;
      default:
    }
  return all;
}

/** A time in which work stood by, was handed over, or was broken off and asked about. */
export interface Interruption {
  readonly what: string;
  readonly from: SheetTime;
  /** Null where the record ends before it went on. */
  readonly to: SheetTime | null;
}

export function interruptionsOf({ entries }: SessionRecord, timeZone: string): readonly Interruption[] {
  const all: Interruption[] = [];
  let begun: { readonly what: string; readonly from: SheetTime } | null = null;
  const work = entries.filter(isOfWork);
  for (const [i, { body, at }] of work.entries()) {
    const now = sheetTime(at.utc, timeZone);
    if (body.kind === 'stood by' || body.kind === 'handover begun')
      begun ??= { what: sheetFacts.interruptions[body.kind], from: now };
    else if ((body.kind === 'continued' || body.kind === 'handed over') && begun) {
      all.push({ ...begun, to: now });
      begun = null;
    } else if ((body.kind === 'reopened' || body.kind === 'break noticed') && !begun) {
      const before = work[i - 1];
      all.push({
        what: sheetFacts.interruptions[body.kind],
        from: before ? sheetTime(before.at.utc, timeZone) : now,
        to: now,
      });
    }
  }
  return begun ? [...all, { ...begun, to: null }] : all;
}
