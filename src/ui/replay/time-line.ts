/** What is drawn over the axis of time: lanes of marks and spans, joined where they would lie upon one another. */
import { heldWeights } from '../../record/holds.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { timeLine } from '../../words/time-line.ts';
import type { Axis } from './axis.ts';
import { kindsOf, type EventKind } from './event-kinds.ts';

/** The lanes from top to bottom. */
export const LANES = ['steps', 'readings', 'doubts', 'deviations', 'holds'] as const;
export type Lane = (typeof LANES)[number];

/** What a mark tells, by its shape; in a lane, the graver ones hide the others. */
export const SHAPES = [
  'step',
  'reading',
  'outside',
  'correction',
  'doubt',
  'refusal',
  'deviation',
  'hold',
  'interruption',
] as const satisfies readonly EventKind[];
export type Shape = (typeof SHAPES)[number];

/** Each shape is in one lane; the order is that of gravity within a lane. */
const LANE_OF: Readonly<Record<Shape, Lane>> = {
  step: 'steps',
  reading: 'readings',
  outside: 'readings',
  correction: 'doubts',
  doubt: 'doubts',
  refusal: 'deviations',
  deviation: 'deviations',
  hold: 'holds',
  interruption: 'holds',
};
const gravity = (shape: Shape): number => SHAPES.indexOf(shape);

/** One or more events at nearly the same place. */
export interface Mark {
  readonly lane: Lane;
  /** That of the gravest event in it. */
  readonly shape: Shape;
  /** Of the first event in it, as a share of the axis, 0 to 1. */
  readonly position: number;
  /** The first of the gravest events in it. */
  readonly seq: number;
  /** How many events are in it, and how many of them are of its shape. */
  readonly count: number;
  readonly ofShape: number;
}

/** A time that something took, as shares of the axis: a step, standing by, or a weight that was held. */
export interface Span {
  readonly what: 'step' | 'hold';
  readonly from: number;
  readonly to: number;
  readonly seq: number;
  readonly title: string;
}

export interface TimeLine {
  readonly marks: readonly Mark[];
  readonly spans: readonly Span[];
  /** How many events there are of each shape. */
  readonly counts: Readonly<Record<Shape, number>>;
}

/** Lays the entries of a record over its axis. At most `bins` marks stand in a lane: ten thousand drawn would be none seen. */
export function layTimeLine({ entries, procedure }: SessionRecord, axis: Axis, bins: number): TimeLine {
  const share = (index: number): number => (axis.length === 0 ? 0 : (axis.positions[index] ?? 0) / axis.length);
  const counts = Object.fromEntries(SHAPES.map((shape) => [shape, 0])) as Record<Shape, number>;
  const marks: Mark[] = [];
  /** Where the newest mark of a lane stands among them. */
  const newest = new Map<Lane, number>();
  for (const { seq, body } of entries) {
    const position = share(seq);
    const found = kindsOf(body, procedure).filter(isShape);
    for (const shape of found) counts[shape] += 1;
    for (const [lane, shape] of gravestByLane(found)) {
      const event: Mark = { lane, shape, position, seq, count: 1, ofShape: 1 };
      const at = newest.get(lane) ?? -1;
      const before = marks[at];
      if (before && position - before.position <= 1 / bins) marks[at] = withEvent(before, event);
      else newest.set(lane, marks.push(event) - 1);
    }
  }
  return {
    marks,
    spans: [
      ...stepSpans(entries, procedure, share),
      ...holdSpans(entries, share),
      ...heldSpans(entries, procedure, share),
    ],
    counts,
  };
}

const isShape = (kind: EventKind): kind is Shape => SHAPES.some((shape) => shape === kind);

/** An event of two shapes in a lane is one event there. */
const gravestByLane = (found: readonly Shape[]): ReadonlyMap<Lane, Shape> =>
  new Map([...found].sort((a, b) => gravity(a) - gravity(b)).map((shape) => [LANE_OF[shape], shape]));

/** It keeps its place, so that no two marks lie upon one another. */
function withEvent(mark: Mark, event: Mark): Mark {
  const graver = gravity(event.shape) - gravity(mark.shape);
  return {
    ...(graver > 0 ? event : mark),
    position: mark.position,
    count: mark.count + 1,
    ofShape: graver > 0 ? 1 : mark.ofShape + (graver === 0 ? 1 : 0),
  };
}

type Entries = SessionRecord['entries'];

/** Each step from when the one before it was over to when it was done. */
function* stepSpans(
  entries: Entries,
  { steps }: SessionRecord['procedure'],
  share: (index: number) => number,
): Generator<Span> {
  let from = 0;
  for (const { seq, body } of entries) {
    if (body.kind !== 'step done' && body.kind !== 'step skipped' && body.kind !== 'step taken back') continue;
    const number = steps.findIndex(({ id }) => id === body.step) + 1;
    const title = timeLine.step(number, steps[number - 1]?.title ?? body.step);
    if (body.kind === 'step done') yield { what: 'step', from, to: share(seq), seq, title };
    from = share(seq);
  }
}

/** From "stand by" or the beginning of a handover to when work went on; to the end where it never did. */
function* holdSpans(entries: Entries, share: (index: number) => number): Generator<Span> {
  let begun: { readonly from: number; readonly seq: number } | null = null;
  for (const { seq, body } of entries) {
    if ((body.kind === 'stood by' || body.kind === 'handover begun') && !begun) begun = { from: share(seq), seq };
    else if ((body.kind === 'continued' || body.kind === 'handed over') && begun) {
      yield { what: 'hold', ...begun, to: share(seq), title: timeLine.stoodBy };
      begun = null;
    }
  }
  if (begun) yield { what: 'hold', ...begun, to: 1, title: timeLine.stoodByToEnd };
}

/** Each weight from "held" to "set down". */
const heldSpans = (
  entries: Entries,
  { steps }: SessionRecord['procedure'],
  share: (index: number) => number,
): readonly Span[] =>
  heldWeights(entries).map(({ step, seq, end, seconds, helps }) => {
    const [name, helped] = [steps.find(({ id }) => id === step)?.title ?? step, helps > 0];
    return {
      what: 'hold',
      from: share(seq),
      to: end === null ? 1 : share(end),
      seq,
      title: seconds === null ? timeLine.heldToEnd(name, helped) : timeLine.held(name, seconds, helped),
    };
  });
