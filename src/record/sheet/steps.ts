/** What was done, step by step, and what became of openings: as the record says it, and no more. */
import { closedIn, openedIn, type Procedure, type Step } from '../../procedure/procedure.ts';
import { isBetweenSteps } from '../../session/people.ts';
import type { EventBody } from '../../session/event.ts';
import type { SessionState } from '../../session/state.ts';
import { openPoints, type OpenPoint } from '../../session/deviations.ts';
import { planOf, RUNNING_ROUND } from '../../session/calls.ts';
import { entries as entryWords } from '../../words/entries.ts';
import { sheetWork } from '../../words/sheet-work.ts';
import type { Entry } from '../entry.ts';
import type { SessionRecord } from '../session-record.ts';
import { sheetTime, type SheetTime } from './times.ts';

export interface SheetStep {
  readonly number: number;
  readonly title: string;
  readonly standing: 'done' | 'does not apply' | 'begun' | 'not done';
  /**
   * Its standing; what was answered, and what the second person said, each time. Where it was taken back, when it was done
   * and when not any more, in their order: then its standing comes last.
   */
  readonly state: readonly string[];
  readonly by: string;
  readonly at: SheetTime | null;
}

/** Every step of the procedure, as it stands at the end of the record. */
export function stepsOf(record: SessionRecord, end: SessionState, timeZone: string): readonly SheetStep[] {
  const done = doneIn(record.entries);
  return record.procedure.steps.map((step, i) => {
    const isDone = end.doneSteps.has(step.id);
    const entry = isDone ? done.get(step.id) : undefined;
    return {
      number: i + 1,
      title: step.title,
      standing: standingOf(step, i, end),
      state: stateOf(step, standingOf(step, i, end), record),
      by: entry?.person ?? '',
      at: entry ? sheetTime(entry.at.utc, timeZone) : null,
    };
  });
}

function standingOf({ id }: Step, index: number, end: SessionState): SheetStep['standing'] {
  if (end.skippedSteps.has(id)) return 'does not apply';
  if (end.doneSteps.has(id)) return 'done';
  return index === end.at && !isBetweenSteps(end) ? 'begun' : 'not done';
}

/** How a step went and stands. An auditor sees also the “no” that came before the “yes”, and what was done twice. */
function stateOf(
  step: Step,
  standing: SheetStep['standing'],
  { entries, procedure: { steps } }: SessionRecord,
): readonly string[] {
  const upToIt = new Set(steps.slice(0, steps.indexOf(step) + 1).map(({ id }) => id));
  // What was said and done of a step goes with every step before it that is taken back.
  const isBack = ({ body }: Entry): boolean => body.kind === 'step taken back' && upToIt.has(body.step);
  const back = entries.findLast(isBack);
  const about = entries.filter(({ body }) => 'step' in body && body.step === step.id);
  const remarks = (entry: Entry): readonly string[] => {
    const remark = remarkOf(step, entry.body);
    const newest = about.findLast(({ body: { kind } }) => kind === entry.body.kind);
    const fate = newest?.seq !== entry.seq ? 'anew' : back && back.seq > entry.seq ? 'taken back' : 'stands';
    return remark === null ? [] : [sheetWork.answeredSo[fate](remark)];
  };
  const isDone = ({ body }: Entry): boolean => body.kind === 'step done' || body.kind === 'step skipped';
  const first = about.find(isDone);
  const wasTakenBack = first && entries.some((entry) => entry.seq > first.seq && isBack(entry));
  if (!wasTakenBack) return [sheetWork.standings[standing], ...about.flatMap(remarks)];
  let stands = false;
  const course = entries.flatMap((entry): readonly string[] => {
    const { utc } = sheetTime(entry.at.utc, 'UTC');
    const isOfIt = 'step' in entry.body && entry.body.step === step.id;
    if (isOfIt && isDone(entry)) {
      stands = true;
      return [sheetWork.doneAt[entry.body.kind === 'step done' ? 'done' : 'does not apply'](utc)];
    }
    if (!isBack(entry)) return isOfIt ? remarks(entry) : [];
    const wasDone = stands;
    stands = false;
    return wasDone ? [sheetWork.takenBack(utc)] : [];
  });
  return stands ? course : [...course, sheetWork.standings[standing]];
}

function remarkOf(step: Step, body: EventBody): string | null {
  switch (body.kind) {
    case 'answered': {
      const outcome = step.kind === 'check' ? step.outcomes.find(({ id }) => id === body.outcome) : undefined;
      return sheetWork.answered(outcome?.text ?? body.outcome);
    }
    case 'step witnessed':
      return sheetWork.looked(body.person, body.agrees, body.independent === true);
    default:
      return null;
  }
}

/** When each step was done, and by whom: the last time, where it was done more than once. */
const doneIn = (entries: readonly Entry[]): ReadonlyMap<string, Entry> =>
  new Map(entries.flatMap((entry) => (entry.body.kind === 'step done' ? [[entry.body.step, entry]] : [])));

/** The questions about the unit that were answered. */
export const conditionsOf = ({ procedure, conditions }: SessionState): readonly string[] =>
  procedure.conditions.flatMap(({ id, question }) => {
    const is = conditions.get(id);
    return is === undefined ? [] : [entryWords.condition(question, is)];
  });

export interface SheetOpening {
  readonly name: string;
  readonly closure: string;
  /** The step in which it came open and was capped or plugged, with its standing. */
  readonly opened: string;
  /** The step in which the cap or plug was taken out, with its standing. */
  readonly closed: string;
}

/** Each opening of the procedure with the steps that open and close it. */
export function openingsOf({ openings, steps }: Procedure, sheet: readonly SheetStep[]): readonly SheetOpening[] {
  const where = (id: string, within: (step: Step) => readonly string[]): string => {
    const found = steps.flatMap((step, i) => {
      const line = sheet[i];
      return line && within(step).includes(id)
        ? [sheetWork.inStep(line.number, line.standing, line.at?.utc ?? null)]
        : [];
    });
    return found.length > 0 ? found.join('; ') : sheetWork.inNoStep;
  };
  return openings.map(({ id, name, closure }) => ({
    name,
    closure: sheetWork.closures[closure],
    opened: where(id, openedIn),
    closed: where(id, closedIn),
  }));
}

/** What others have to decide about: deviations, values over their window, what was left open or is not done. */
export function openPointsOf(end: SessionState, sheet: readonly SheetStep[]): readonly string[] {
  const points = openPoints(end).map((point) => {
    const decided = end.dispositions.get(point.seq);
    const text = pointText(end, point);
    return decided
      ? sheetWork.point.decided(text, decided.what, decided.by, decided.note)
      : sheetWork.point.notDecided(text);
  });
  const undone = sheet.flatMap(({ number, title, standing }) =>
    standing === 'not done' || standing === 'begun' ? [sheetWork.point.undone(number, title, standing)] : [],
  );
  return [...points, ...undone];
}

/** "Tighten the ring, stud 4, pass 2: over torque, reason given: “…”. LEFT OPEN". */
function pointText({ procedure }: SessionState, point: OpenPoint): string {
  const step = procedure.steps.find((each) => each.id === point.step);
  const title = step?.title ?? point.step;
  if (point.of === 'value') {
    const { value, unit, verdict, reason } = point.value;
    return sheetWork.point.value(title, value, unit, verdict, { reason, isOpen: point.leftOpen });
  }
  const { pass, fastener, what, reason, leftOpen } = point;
  const label = step && planOf(procedure, step).calls[0]?.label;
  const round = pass === RUNNING_ROUND ? null : pass;
  return sheetWork.point.fastener(title, label, fastener, round, what, { reason, isOpen: leftOpen });
}
