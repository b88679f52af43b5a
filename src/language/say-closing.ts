/** What is said after the last step: what is to be decided about, by whom it is signed. */
import { beforeClosing, undecided } from '../session/closing.ts';
import type { OpenPoint } from '../session/deviations.ts';
import type { SessionState } from '../session/state.ts';
import { count, digits, labelOf, sentence } from './say.ts';
import { sayUnit } from './say-observed.ts';

/** "Stud four, pass one, over torque, left open." */
export function sayPoint(state: SessionState, point: OpenPoint): string {
  const open = point.leftOpen ? ', left open' : '';
  if (point.of === 'value') {
    const { value, unit, verdict } = point.value;
    return `${sentence(titleOf(state, point.step))}: ${digits(value)} ${sayUnit(unit)}, ${verdict} the window${open}.`;
  }
  const round = point.pass === 0 ? 'running torque' : `pass ${count(point.pass)}`;
  return sentence(`${labelOf(state, point.step)} ${count(point.fastener)}, ${round}, ${point.what}${open}.`);
}

const titleOf = ({ procedure }: SessionState, id: string): string =>
  procedure.steps.find((step) => step.id === id)?.title ?? id;

/** What is to be decided about after the work, one sentence each. */
export function sayOpenPoints(state: SessionState): readonly string[] {
  const points = undecided(state);
  if (points.length === 0) return [];
  const many = points.length === 1 ? 'One deviation is' : `${sentence(count(points.length))} deviations are`;
  return [`${many} to be decided about.`, ...points.map((point) => sayPoint(state, point))];
}

/** What was put off: it is open after the closing as well. */
export const sayDeferred = ({ dispositions }: SessionState): readonly string[] => {
  const deferred = [...dispositions.values()].filter(({ what }) => what === 'deferred').length;
  if (deferred === 0) return [];
  return [`${sentence(count(deferred))} deferred: ${deferred === 1 ? 'it is' : 'they are'} still open.`];
};

/** What is wanted before the record is closed. Both are typed: no word stands for a decision or a signature. */
export function sayBeforeClosing(state: SessionState): readonly string[] {
  const wanted = beforeClosing(state);
  switch (wanted?.kind) {
    case 'disposition':
      return [
        'All steps are done.',
        ...sayOpenPoints(state),
        'For each, type who decides, and tap what becomes of it.',
      ];
    case 'signature': {
      const who = wanted.role === 'mechanic' ? state.people.mechanic : 'The inspector';
      return [`All steps are done. ${who} signs: type the name, then hold the button for two seconds.`];
    }
    default:
      return [];
  }
}
