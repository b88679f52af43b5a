/** The points of a step: small questions that are worked one by one before it can be done. */
import { closedIn, openedIn, type Procedure, type Step } from '../procedure/procedure.ts';
import { startParts } from '../procedure/release.ts';

/** What is asked. */
export type Point =
  /** It came open, and its cap or plug is fitted. */
  | { readonly kind: 'capped'; readonly opening: string }
  /** Its cap or plug is taken out, and the connection is made. */
  | { readonly kind: 'connected'; readonly opening: string }
  /** One thing to look for in a seal, by its place among the criteria. */
  | { readonly kind: 'criterion'; readonly seal: string; readonly index: number }
  /** The seal is used again, or a new one is taken. */
  | { readonly kind: 'seal'; readonly seal: string }
  | { readonly kind: 'coated'; readonly seal: string }
  | { readonly kind: 'seated'; readonly seal: string }
  /** Fasteners are started by hand: all of a pattern (null), or the part of that place in the order of refit. */
  | { readonly kind: 'started'; readonly pattern: string; readonly part: number | null }
  /** Somebody holds the weight before the last fasteners are freed. */
  | { readonly kind: 'held'; readonly pattern: string }
  /** A counted tool, the cap or plug of an opening, a consumable or its wrapper is where it belongs. */
  | { readonly kind: 'tool' | 'closure' | 'consumable'; readonly id: string }
  /** What the procedure has done about a reading over its window, or a deviation, before its fastener is worked again. */
  | { readonly kind: 'ordered'; readonly of: number };

/** What may be answered. Only "affirm" settles what is asked with it; "negative" leaves it open, but for a criterion. */
export type PointAnswer = 'affirm' | 'negative' | 'held' | 'reuse' | 'replace';

/** How a point stands in the record: "capped:oil-inlet", "criterion:flange-seal:2" (criteria and parts count from 1). */
export function pointKey(point: Point): string {
  switch (point.kind) {
    case 'capped':
    case 'connected':
      return `${point.kind}:${point.opening}`;
    case 'criterion':
      return `${point.kind}:${point.seal}:${point.index + 1}`;
    case 'seal':
    case 'coated':
    case 'seated':
      return `${point.kind}:${point.seal}`;
    case 'started':
      return `${point.kind}:${point.pattern}${point.part === null ? '' : `:${point.part + 1}`}`;
    case 'held':
      return `${point.kind}:${point.pattern}`;
    case 'tool':
    case 'closure':
    case 'consumable':
      return `${point.kind}:${point.id}`;
    case 'ordered':
      return `${point.kind}:${point.of}`;
  }
}

/** They follow from the procedure alone, which never changes once it is loaded, and are asked for again and again. */
const known = new WeakMap<Step, readonly Point[]>();

/** The points of a step in the order in which they are asked, without what is accounted for at the end. */
export function pointsOf(procedure: Procedure, step: Step): readonly Point[] {
  const before = known.get(step);
  if (before) return before;
  const found = makePoints(procedure, step);
  known.set(step, found);
  return found;
}

function makePoints(procedure: Procedure, step: Step): readonly Point[] {
  switch (step.kind) {
    case 'do':
      return [
        ...sealPoints(procedure, step),
        ...openingPoints(step),
        ...step.handStart.flatMap((pattern) => startPoints(procedure, step, pattern)),
      ];
    case 'check':
      return sealPoints(procedure, step);
    case 'open':
    case 'close':
      return openingPoints(step);
    case 'loosen':
      return step.heldBefore ? [{ kind: 'held', pattern: step.pattern }] : [];
    case 'tighten':
    case 'hold':
    case 'measure':
    case 'witness':
    case 'note':
      return [];
  }
}

const openingPoints = (step: Step): readonly Point[] => [
  ...openedIn(step).map((opening): Point => ({ kind: 'capped', opening })),
  ...closedIn(step).map((opening): Point => ({ kind: 'connected', opening })),
];

function sealPoints({ seals }: Procedure, step: Extract<Step, { kind: 'do' | 'check' }>): readonly Point[] {
  return step.seals.flatMap(({ seal: id, is }): readonly Point[] => {
    const seal = seals.find((each) => each.id === id);
    switch (is) {
      case 'inspected':
        // What is never used again is not worth a look.
        return [
          ...(seal?.reuse === 'never' ? [] : (seal?.criteria ?? [])).map((_, index): Point => ({
            kind: 'criterion',
            seal: id,
            index,
          })),
          { kind: 'seal', seal: id },
        ];
      case 'discarded':
        return [{ kind: 'seal', seal: id }];
      case 'lubricated':
        return [{ kind: 'coated', seal: id }];
      case 'seated':
        return [{ kind: 'seated', seal: id }];
    }
  });
}

function startPoints(procedure: Procedure, { id }: Step, pattern: string): readonly Point[] {
  const parts = startParts(procedure, id, pattern);
  return parts.length < 2
    ? [{ kind: 'started', pattern, part: null }]
    : parts.map((_, part): Point => ({ kind: 'started', pattern, part }));
}

/** Whether an answer leaves nothing more to ask about a point. */
export const settles = ({ kind }: Point, answer: PointAnswer | undefined): boolean =>
  answer !== undefined && (answer !== 'negative' || kind === 'criterion');

/** The key of a point within a session: of which step, and which. */
export const pointIn = (step: string, key: string): string => `${step}/${key}`;

/** The point that a key stands for; null where it is the key of none. */
export function pointOf(key: string): Point | null {
  const [kind, id = '', place] = key.split(':');
  switch (kind) {
    case 'capped':
    case 'connected':
      return { kind, opening: id };
    case 'criterion':
      return { kind, seal: id, index: Number(place) - 1 };
    case 'seal':
    case 'coated':
    case 'seated':
      return { kind, seal: id };
    case 'started':
      return { kind, pattern: id, part: place === undefined ? null : Number(place) - 1 };
    case 'held':
      return { kind, pattern: id };
    case 'tool':
    case 'closure':
    case 'consumable':
      return { kind, id };
    case 'ordered':
      return { kind, of: Number(id) };
    default:
      return null;
  }
}
