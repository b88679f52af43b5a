/** What was answered to the points of steps, with what became of it, and what was measured: a line each. */
import { pointFact } from '../../session/point-words.ts';
import { pointIn } from '../../session/point.ts';
import type { EventBody } from '../../session/event.ts';
import type { SessionState } from '../../session/state.ts';
import { sheetWork } from '../../words/sheet-work.ts';
import type { SessionRecord } from '../session-record.ts';
import { shownValue } from './observed.ts';
import { sheetTime, type SheetTime } from './times.ts';

export interface SheetPoint {
  /** The number of its step. */
  readonly step: number;
  readonly what: string;
  readonly by: string;
  readonly at: SheetTime;
}

/**
 * Openings, caps, seals with their criteria, what was counted, and confirmed values, in the order of the record. An answer
 * that no longer stands is said to be one.
 */
export function pointsOnSheet(
  { entries, procedure }: SessionRecord,
  end: SessionState,
  timeZone: string,
): readonly SheetPoint[] {
  const numberOf = (id: string): number => procedure.steps.findIndex((step) => step.id === id) + 1;
  const newest = new Map(
    entries.flatMap(({ seq, body }) => (body.kind === 'point settled' ? [[keyOf(body), seq]] : [])),
  );
  return entries.flatMap(({ seq, body, person, at }): readonly SheetPoint[] => {
    const line = { by: person, at: sheetTime(at.utc, timeZone) };
    if (body.kind === 'point settled') {
      const key = pointIn(body.step, body.point);
      const fate = newest.get(keyOf(body)) !== seq ? 'anew' : end.points.has(key) ? 'stands' : 'taken back';
      return [{ ...line, step: numberOf(body.step), what: sheetWork.answeredSo[fate](pointFact(end, body)) }];
    }
    const value = end.observed.find((each) => each.seq === seq && each.status === 'confirmed');
    if (!value) return [];
    const step = procedure.steps.find(({ id }) => id === value.step);
    const name = step?.kind === 'measure' ? step.what : value.step;
    return [{ ...line, step: numberOf(value.step), what: sheetWork.valueOf(name, shownValue(value)) }];
  });
}

/** What is answered of a new seal stands beside what was answered of the old one. */
const keyOf = ({ step, point, part }: Extract<EventBody, { kind: 'point settled' }>): string =>
  `${pointIn(step, point)}/${part ?? ''}`;
