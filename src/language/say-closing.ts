/** What is said after the last step: what is to be decided about, by whom it is signed. */
import { beforeClosing, undecided } from '../session/closing.ts';
import type { OpenPoint } from '../session/deviations.ts';
import type { SessionState } from '../session/state.ts';
import { closing } from '../words/closing.ts';
import { count, digits, named, passInWords, sentence } from './say.ts';
import { sayUnit } from './say-observed.ts';

/** "Stud four, pass one, over torque, left open." */
export function sayPoint(state: SessionState, point: OpenPoint): string {
  const { leftOpen } = point;
  if (point.of === 'value') {
    const { value, unit, verdict } = point.value;
    return sentence(closing.sayValue(titleOf(state, point.step), digits(value), sayUnit(unit), verdict, leftOpen));
  }
  return sentence(closing.sayFastener(...named(state, point), passInWords(point.pass), point.what, leftOpen));
}

export const titleOf = ({ procedure }: SessionState, id: string): string =>
  procedure.steps.find((step) => step.id === id)?.title ?? id;

/** What is to be decided about after the work, one sentence each. */
export function sayOpenPoints(state: SessionState): readonly string[] {
  const points = undecided(state);
  if (points.length === 0) return [];
  return [
    sentence(closing.toDecide(points.length, count(points.length))),
    ...points.map((point) => sayPoint(state, point)),
  ];
}

/** What was put off: it is open after the closing as well. */
export const sayDeferred = ({ dispositions }: SessionState): readonly string[] => {
  const deferred = [...dispositions.values()].filter(({ what }) => what === 'deferred').length;
  return deferred === 0 ? [] : [sentence(closing.deferred(deferred, count(deferred)))];
};

/** What is wanted before the record is closed. Both are typed: no word stands for a decision or a signature. */
export function sayBeforeClosing(state: SessionState): readonly string[] {
  const wanted = beforeClosing(state);
  switch (wanted?.kind) {
    case 'disposition':
      return [closing.allDone, ...sayOpenPoints(state), closing.decideEach];
    case 'signature':
      return [wanted.role === 'mechanic' ? closing.mechanicSigns(state.people.mechanic) : closing.inspectorSigns];
    default:
      return [];
  }
}
