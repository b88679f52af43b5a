/** What was answered to the points of steps, with what became of it, and what was measured: a line each. */
import { pointFact } from '../../session/point-words.ts';
import { pointIn, pointOf } from '../../session/point.ts';
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
  const settled = entries.flatMap(({ seq, body }) => (body.kind === 'point settled' ? [{ ...body, seq }] : []));
  const keys = keysOf(settled);
  const newest = new Map([...keys].map(([seq, key]) => [key, seq]));
  return entries.flatMap(({ seq, body, person, at }): readonly SheetPoint[] => {
    const line = { by: person, at: sheetTime(at.utc, timeZone) };
    if (body.kind === 'point settled') {
      const isStanding = end.points.has(pointIn(body.step, body.point)) && !isOfPartTakenOut({ ...body, seq }, settled);
      const fate = newest.get(keys.get(seq) ?? '') !== seq ? 'anew' : isStanding ? 'stands' : 'taken back';
      return [{ ...line, step: numberOf(body.step), what: sheetWork.answeredSo[fate](pointFact(end, body)) }];
    }
    const value = end.observed.find((each) => each.seq === seq && each.status === 'confirmed');
    if (!value) return [];
    const step = procedure.steps.find(({ id }) => id === value.step);
    const name = step?.kind === 'measure' ? step.what : value.step;
    return [{ ...line, step: numberOf(value.step), what: sheetWork.valueOf(name, shownValue(value)) }];
  });
}

type Settled = Extract<EventBody, { kind: 'point settled' }> & { readonly seq: number };

/** The seal that an answer judges, in its step; null where it judges none. */
function sealJudged({ step, point: key }: Settled): string | null {
  const point = pointOf(key);
  return point?.kind === 'criterion' || point?.kind === 'seal' ? `${step}/${point.seal}` : null;
}

/** What each answer is about, by its entry: what is answered of a new seal stands beside what was answered of the one before. */
function keysOf(settled: readonly Settled[]): ReadonlyMap<number, string> {
  const partsOf = new Map<string, number>();
  return new Map(
    settled.map((each) => {
      const seal = each.part === 'new' ? sealJudged(each) : null;
      if (seal !== null && each.answer === 'replace') partsOf.set(seal, (partsOf.get(seal) ?? 0) + 1);
      const part = seal === null ? 0 : (partsOf.get(seal) ?? 0);
      return [each.seq, `${pointIn(each.step, each.point)}/${part}`];
    }),
  );
}

/** Whether an answer is about a new seal, and the old one was judged again after that: then the new one did not stay. */
const isOfPartTakenOut = (one: Settled, settled: readonly Settled[]): boolean =>
  one.part === 'new' &&
  settled.some(
    (later) =>
      later.seq > one.seq &&
      later.part === undefined &&
      sealJudged(later) !== null &&
      sealJudged(later) === sealJudged(one),
  );
