import type { Basis, SessionEvent } from '../session/event.ts';
import { displayWindow, fromWritten } from '../units/index.ts';

/** One event as a line of the record that a person reads. */
export function describe({ body, heard }: Pick<SessionEvent, 'body' | 'heard'>): string {
  switch (body.kind) {
    case 'opened':
      return `Session opened by ${body.people.mechanic}${body.people.second ? ` with ${body.people.second}` : ''}`;
    case 'reopened':
      return 'Page opened again';
    case 'warning acknowledged':
      return 'Warning acknowledged';
    case 'step done':
      return `Step done: ${body.step}`;
    case 'step taken back':
      return `Step taken back: ${body.step}`;
    case 'condition answered':
      return `Condition ${body.condition}: ${yesOrNo(body.is)}`;
    case 'step skipped':
      return `Step skipped: ${body.step}, because ${body.condition} is ${yesOrNo(body.is)}`;
    case 'answered':
      return `Answered: ${body.outcome}`;
    case 'fastener done':
      return `Number ${body.fastener}, pass ${body.pass}: ${body.turned ? 'turned' : 'done'}`;
    case 'reading captured': {
      const value = `${body.reading.value} ${body.reading.unit}`;
      const how = body.evidence === 'click' ? ' by click' : '';
      const correction = body.corrects === null ? '' : `, instead of entry ${body.corrects}`;
      const round = body.basis.of === 'running torque' ? 'running torque' : `pass ${body.pass}`;
      return `Number ${body.fastener}, ${round}: ${value}${how}, ${body.verdict}${judgedBy(body.basis)}${correction}`;
    }
    case 'reading confirmed':
      return `Confirmed: entry ${body.of}`;
    case 'reading rejected':
      return `Rejected: entry ${body.of}`;
    case 'reading disregarded':
      return `Disregarded: entry ${body.of}`;
    case 'repeat asked':
      return 'Say again';
    case 'stood by':
      return 'Stood by';
    case 'continued':
      return 'Continued';
    case 'refused':
      return `Refused (${body.reason.code})${heard ? `: “${heard.text}”` : ''}`;
    case 'closed':
      return 'Record closed';
  }
}

const yesOrNo = (is: boolean): string => (is ? 'yes' : 'no');

/** Places of a window in the record list: as fine as any torque tool shows. */
const PLACES = 1;

/** What a value was judged by, short; the entry itself has it in full. */
function judgedBy(basis: Basis): string {
  if (basis.of === 'running torque')
    return basis.minimum ? ` (minimum ${basis.minimum.value} ${basis.minimum.unit})` : '';
  const { min, max } = basis.window;
  const window = { min: fromWritten('torque', min), max: fromWritten('torque', max) };
  return ` (window ${displayWindow(window, max.unit, PLACES)})`;
}
