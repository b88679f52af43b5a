/** Deviations and what became of each. */
import type { Round } from './calls.ts';
import type { EventBody } from './event.ts';

/** A deviation with what became of it. */
export interface Deviation extends Extract<EventBody, { kind: 'deviation reported' }> {
  readonly seq: number;
  readonly person: string;
  readonly reason: string | null;
  readonly status: 'reason wanted' | 'reason given' | 'stated' | 'disregarded';
  /** Its fastener was passed over in this pass. */
  readonly leftOpen: boolean;
}

/** The deviation whose reason is not confirmed yet. Nothing else is worked before it is. */
export const openDeviation = ({ deviations }: { readonly deviations: readonly Deviation[] }): Deviation | null =>
  deviations.find(({ status }) => status === 'reason wanted' || status === 'reason given') ?? null;

/**
 * Whether a fastener was left open in a round, or in one before it: nobody tightens it further until somebody has decided
 * about it (common practice). One that could not be freed is called again in each stage.
 */
export const isLeftOpen = (
  { deviations }: { readonly deviations: readonly Deviation[] },
  step: string,
  { kind, index }: Pick<Round, 'kind' | 'index'>,
  fastener: number,
): boolean =>
  deviations.some(
    (each) =>
      each.leftOpen &&
      each.step === step &&
      each.fastener === fastener &&
      (kind === 'loosen' ? each.pass === index : each.pass <= index),
  );

type DeviationEvent = Extract<
  EventBody,
  {
    kind:
      | ('deviation reported' | 'reason given' | 'reason confirmed' | 'reason rejected')
      | ('deviation disregarded' | 'left open');
  }
>;

/** The deviations after one more event about them. */
export function deviationsAfter(
  deviations: readonly Deviation[],
  body: DeviationEvent,
  { seq, person }: { readonly seq: number; readonly person: string },
): readonly Deviation[] {
  if (body.kind === 'deviation reported')
    return [...deviations, { ...body, seq, person, reason: null, status: 'reason wanted', leftOpen: false }];
  const change = changeBy(body);
  return deviations.map((each) => (each.seq === body.of ? { ...each, ...change } : each));
}

function changeBy(body: Exclude<DeviationEvent, { kind: 'deviation reported' }>): Partial<Deviation> {
  switch (body.kind) {
    case 'reason given':
      return { reason: body.text, status: 'reason given' };
    case 'reason confirmed':
      return { status: 'stated' };
    case 'reason rejected':
      return { reason: null, status: 'reason wanted' };
    case 'deviation disregarded':
      return { status: 'disregarded', leftOpen: false };
    case 'left open':
      return { leftOpen: true };
  }
}
