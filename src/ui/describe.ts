import type { SessionEvent } from '../session/event.ts';

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
    case 'answered':
      return `Answered: ${body.outcome}`;
    case 'fastener done':
      return `Number ${body.fastener}, pass ${body.pass}: ${body.turned ? 'turned' : 'done'}`;
    case 'reading captured': {
      const value = `${body.reading.value} ${body.reading.unit}`;
      const how = body.evidence === 'click' ? ' by click' : '';
      const correction = body.corrects === null ? '' : `, instead of entry ${body.corrects}`;
      return `Number ${body.fastener}, pass ${body.pass}: ${value}${how}, ${body.verdict}${correction}`;
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
