/** What an event is to an auditor. One event may be several things: a value in doubt that corrects another is three. */
import type { Procedure } from '../../procedure/procedure.ts';
import type { EventBody } from '../../session/event.ts';
import type { PreparedFact } from '../../session/preparation/fact.ts';

/** The kinds in which an auditor looks for events, in the order in which they are offered. */
export const EVENT_KINDS = [
  'preparation',
  'step',
  'warning',
  'reading',
  'outside',
  'confirmation',
  'doubt',
  'correction',
  'witness',
  'deviation',
  'refusal',
  'hold',
  'interruption',
  'people',
  'question',
  'sound',
] as const;

export type EventKind = (typeof EVENT_KINDS)[number];

/** What an event is, its first kind the plainest. */
export function kindsOf(body: EventBody, procedure: Procedure): readonly EventKind[] {
  switch (body.kind) {
    case 'opened':
    case 'closed':
    case 'condition answered':
    case 'step skipped':
    case 'answered':
    case 'fastener done':
      return ['step'];
    case 'point settled':
      return body.point.startsWith('held:') ? ['step', 'hold'] : ['step'];
    case 'step done':
      return stepKindOf(procedure, body.step) === 'hold' ? ['step', 'hold'] : ['step'];
    case 'consumable fetched':
      return ['preparation'];
    case 'prepared':
      return [...(ALSO[body.fact.of] ?? []), 'preparation'];
    case 'step taken back':
      return ['step', 'correction'];
    case 'help called':
      return ['hold', 'doubt'];
    case 'warning acknowledged':
      return ['warning'];
    case 'reading captured':
      return [
        'reading',
        ...(body.verdict === 'in' ? [] : (['outside'] as const)),
        ...(body.doubts ? (['doubt'] as const) : []),
        ...(body.corrects === null ? [] : (['correction'] as const)),
      ];
    case 'reading confirmed':
    case 'timed out':
      return ['confirmation'];
    case 'reading rejected':
    case 'reading disregarded':
      return ['confirmation', 'correction'];
    case 'witnessed':
    case 'witness asked':
      return ['witness'];
    case 'disputed':
      return ['witness', 'doubt'];
    case 'step witnessed':
      return body.agrees ? ['witness'] : ['witness', 'doubt'];
    case 'deviation reported':
    case 'reason given':
    case 'reason confirmed':
    case 'left open':
      return ['deviation'];
    case 'reason rejected':
    case 'deviation disregarded':
      return ['deviation', 'correction'];
    case 'second person joined':
    case 'second person left':
      return ['people'];
    case 'handover begun':
    case 'handed over':
      return ['people', 'interruption'];
    case 'wait begun':
    case 'signed':
      return ['step'];
    case 'value observed':
      return ['reading', ...(body.verdict === 'under' || body.verdict === 'over' ? (['outside'] as const) : [])];
    case 'value confirmed':
      return ['confirmation'];
    case 'value rejected':
    case 'value disregarded':
      return ['confirmation', 'correction'];
    case 'value left open':
    case 'disposed':
      return ['deviation'];
    case 'hold begun':
    case 'hold call':
    case 'hold ended':
    case 'stood by':
    case 'continued':
      return ['hold'];
    case 'reopened':
    case 'break noticed':
    case 'break accepted':
    case 'pass restarted':
      return ['interruption'];
    case 'refused':
      return body.reason.code === 'unclear' ? ['refusal', 'doubt'] : ['refusal'];
    case 'repeat asked':
    case 'asked':
      return ['question'];
    case 'sounds deleted':
      return ['sound'];
  }
}

/** What a fact of the preparation is besides. */
const ALSO: Readonly<Partial<Record<PreparedFact['of'], readonly EventKind[]>>> = {
  helper: ['people'],
  hazard: ['warning'],
};

const stepKindOf = ({ steps }: Procedure, id: string): string | undefined => steps.find((step) => step.id === id)?.kind;
