/** What was out of the ordinary: reported of a fastener, with a reason, and passed over or worked again. */
import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { openDeviation, type Deviation } from './deviation.ts';
import type { DeviationKind } from './intent.ts';
import type { ObservedValue } from './observed.ts';
import { answerGiven } from './openings.ts';
import type { Reading } from './reading.ts';
import { currentCall, pendingReading, standingReading, type SessionState } from './state.ts';

/** The stated deviations of the fastener that is called, in this pass, oldest first. */
export function statedOnCall(state: SessionState, step: Step): readonly Deviation[] {
  const call = currentCall(state);
  return state.deviations.filter(
    (each) =>
      each.status === 'stated' &&
      each.step === step.id &&
      each.pass === call?.pass.index &&
      each.fastener === call.fastener,
  );
}

/** What the procedure has done about a deviation of that kind; null where it says nothing. */
export const toDoAbout = (step: Step | undefined, what: DeviationKind): string | null =>
  step?.kind === 'tighten' || step?.kind === 'loosen'
    ? (step.onDeviation.find((each) => each.what === what)?.text ?? null)
    : null;

interface Order {
  /** The number of the event that it is about. */
  readonly of: number;
  /** What the procedure has done about it; null where it says nothing. */
  readonly text: string | null;
}

/**
 * What is to be done about the fastener that is called, before it is worked again: its reading was over, or a deviation was
 * stated. Its reading first, without what was answered already.
 */
export function ordersOnCall(state: SessionState, step: Step): readonly Order[] {
  const call = currentCall(state);
  const standing = call && standingReading(state, step.id, call.pass.index, call.fastener);
  const isOver = standing?.verdict === 'over' && standing.basis.of === 'torque';
  const over = isOver ? [{ seq: standing.seq, what: 'over torque' as const }] : [];
  // That it is over is reported of the same reading: one thing, ordered once. Damage that is reported once more is ordered
  // with its newest report: what was done before that was not about it.
  const reported = statedOnCall(state, step);
  const stated = reported.filter(
    ({ seq, what, again }) =>
      (!isOver || what !== 'over torque') && !reported.some((each) => each.seq > seq && each.again === (again ?? seq)),
  );
  return [...over, ...stated]
    .map(({ seq, what }) => ({ of: seq, text: toDoAbout(step, what) }))
    .filter(({ of }) => answerGiven(state, step.id, { kind: 'ordered', of }) !== 'affirm');
}

/** The order that is asked about; null where the procedure says nothing, or something else is asked first. */
export const orderOnCall = (state: SessionState, step: Step): (Order & { readonly text: string }) | null =>
  pendingReading(state) || openDeviation(state) ? null : (ordersOnCall(state, step).find(hasText) ?? null);

const hasText = (order: Order): order is Order & { readonly text: string } => order.text !== null;

/** What may be reported at a step: a nut that is only freed has no torque. */
export const reportable = ({ kind }: Step): readonly DeviationKind[] =>
  kind === 'tighten'
    ? ['over torque', 'under torque', 'takes no torque', 'damage']
    : kind === 'loosen'
      ? ['damage']
      : [];

/** A deviation of the fastener that is called. */
export function report(state: SessionState, step: Step, what: DeviationKind): Decision {
  const call = currentCall(state);
  if (!call || !reportable(step).includes(what)) return refuse({ code: 'nothing to report on' });
  const place = { step: step.id, pass: call.pass.index, fastener: call.fastener };
  const reading = standingReading(state, place.step, place.pass, place.fastener)?.seq ?? null;
  const first = what === 'damage' ? damageOf(state, step, call.fastener) : undefined;
  return accept({
    kind: 'deviation reported',
    ...place,
    what,
    reading,
    ...(first ? { again: first.seq } : {}),
  });
}

/**
 * The first report of damage to a part that nobody has decided about, of the same step: a decision may take the work back
 * to its step, so there is one for each.
 */
const damageOf = ({ deviations, dispositions }: SessionState, step: Step, fastener: number) =>
  deviations.find((each) => {
    const isSame = each.what === 'damage' && each.fastener === fastener && each.step === step.id;
    return isSame && each.again === undefined && each.status !== 'disregarded' && !dispositions.has(each.seq);
  });

/**
 * What someone has to decide about after the work: reported deviations, values over their window that were confirmed, and
 * observed values that were left open.
 */
export type OpenPoint = FastenerPoint | ValuePoint;

interface Point {
  /** The number of the event that it is. */
  readonly seq: number;
  readonly step: string;
  readonly leftOpen: boolean;
}

export interface FastenerPoint extends Point {
  readonly of: 'fastener';
  readonly pass: number;
  readonly fastener: number;
  readonly what: DeviationKind;
  readonly reason: string | null;
}

export interface ValuePoint extends Point {
  readonly of: 'value';
  readonly value: ObservedValue;
}

/** All of them, in the order of the record. A nut that was backed out and tightened again was over all the same. */
export function openPoints({ deviations, readings, observed }: SessionState): readonly OpenPoint[] {
  const reported = deviations.filter(({ status }) => status !== 'disregarded');
  const isOver = ({ seq, status, verdict, basis }: Reading): boolean =>
    (status === 'confirmed' || status === 'set aside') &&
    verdict === 'over' &&
    basis.of === 'torque' &&
    !reported.some(({ reading }) => reading === seq);
  const over = readings
    .filter(isOver)
    .map((reading) => ({ ...reading, what: 'over torque' as const, reason: null, leftOpen: false }));
  // What was reported once more is decided about with its first report, where that stands.
  const isNoted = ({ again }: Deviation): boolean => reported.some(({ seq }) => seq === again);
  const noted = reported.filter(isNoted);
  const fasteners = [...reported.filter((each) => !isNoted(each)), ...over].map(
    ({ seq, what, reason, ...first }): FastenerPoint => {
      const more = noted.filter(({ again }) => again === seq);
      // Where it is left open, it may be worked again.
      const { step, pass, fastener, leftOpen } = more.findLast((each) => each.leftOpen) ?? first;
      return {
        of: 'fastener',
        seq,
        step,
        pass,
        fastener,
        what,
        reason: [reason, ...more.map((each) => each.reason)].filter((each) => each !== null).join('; ') || null,
        leftOpen,
      };
    },
  );
  const values = observed
    .filter(({ leftOpen }) => leftOpen)
    .map((value): ValuePoint => ({ of: 'value', seq: value.seq, step: value.step, leftOpen: true, value }));
  return [...fasteners, ...values].sort((a, b) => a.seq - b.seq);
}
