/**
 * What a gloved finger, a knuckle or an elbow on the screen means. Wide, slow and sliding contacts are one press; a palm, a
 * resting hand and two contacts at once are none. Pure: times and places come in, in milliseconds and millimetres.
 */
import { margin } from './gesture.ts';
import type { TouchThresholds } from './touch-thresholds.ts';

export type TouchInput =
  | {
      readonly kind: 'down' | 'move';
      readonly id: number;
      readonly at: number;
      readonly x: number;
      readonly y: number;
      /** How wide the contact is, the larger of its two extents. Many screens give none: then it is small. */
      readonly width: number;
    }
  /** `cancel`: the system took the contact for itself. */
  | { readonly kind: 'up' | 'cancel'; readonly id: number; readonly at: number }
  /** Nothing but time has passed. */
  | { readonly kind: 'time'; readonly at: number };

export type TouchKind = 'tap' | 'long press' | 'swipe left' | 'swipe right';
export type Rejection = 'palm' | 'resting' | 'two at once' | 'slid too far' | 'taken by the system';

/** A touch, once it is over: what it was, or why it was none. */
export type Touched = {
  readonly from: number;
  readonly to: number;
  /** Where it began, in millimetres. */
  readonly x: number;
  readonly y: number;
} & (
  | {
      readonly kind: TouchKind;
      /** 0 to 1: how far it is inside the bounds of its kind. Not a probability. */
      readonly sureness: number;
    }
  | { readonly kind: 'rejected'; readonly why: Rejection }
);

interface Point {
  readonly x: number;
  readonly y: number;
}

/** One touch under way: one contact, or several that are one. */
interface Group {
  readonly from: number;
  readonly began: Point;
  /** The contacts that are down: where each came down, and where it is now. */
  readonly down: ReadonlyMap<number, { readonly origin: Point; readonly now: Point }>;
  readonly last: Point;
  /** How far it has slid by now: contacts that come down beside one another are no sliding. */
  readonly slid: Point;
  /** The same as the last of its contacts went up: one that follows slides on from there. */
  readonly carried: Point;
  /** The furthest it slid. */
  readonly reach: number;
  readonly width: number;
  readonly spoiled: Rejection | null;
  /** When the last contact went up; null while one is down. */
  readonly upAt: number | null;
}

export type Touch = Group | null;

export interface AfterTouch {
  readonly touch: Touch;
  readonly done: readonly Touched[];
  /** When time alone will end the touch; null where it will not. */
  readonly wakeAt: number | null;
}

/** Takes one input in. */
export function afterTouch(touch: Touch, input: TouchInput, bounds: TouchThresholds): AfterTouch {
  const isOver = touch !== null && touch.upAt !== null && input.at > touch.upAt + bounds.together;
  if (isOver) return after(takeIn(null, input, bounds), [ended(touch, bounds)], bounds);
  // A new contact far from where the last one was is a touch of its own, however soon.
  const isElsewhere =
    touch !== null && touch.upAt !== null && input.kind === 'down' && distance(touch.last, input) > bounds.near;
  if (isElsewhere) return after(takeIn(null, input, bounds), [ended(touch, bounds)], bounds);
  return after(takeIn(touch, input, bounds), [], bounds);
}

const after = (touch: Touch, done: readonly Touched[], { together }: TouchThresholds): AfterTouch => ({
  touch,
  done,
  // Just past the bound: at it a contact may still follow.
  wakeAt: touch !== null && touch.upAt !== null ? touch.upAt + together + 1 : null,
});

function takeIn(touch: Touch, input: TouchInput, bounds: TouchThresholds): Touch {
  switch (input.kind) {
    case 'time':
      return touch;
    case 'down':
      return touch === null ? begun(input, bounds) : joined(touch, input, bounds);
    case 'move':
      return touch?.down.has(input.id) ? moved(touch, input, bounds) : touch;
    case 'up':
    case 'cancel':
      return touch?.down.has(input.id) ? lifted(touch, input) : touch;
  }
}

const NOWHERE: Point = { x: 0, y: 0 };

type Placed = Extract<TouchInput, { kind: 'down' | 'move' }>;

const begun = ({ id, at, x, y, width }: Placed, { palm }: TouchThresholds): Group => ({
  from: at,
  began: { x, y },
  down: new Map([[id, { origin: { x, y }, now: { x, y } }]]),
  last: { x, y },
  slid: NOWHERE,
  carried: NOWHERE,
  reach: 0,
  width,
  spoiled: width > palm ? 'palm' : null,
  upAt: null,
});

function joined(touch: Group, input: Placed, bounds: TouchThresholds): Group {
  const isFar = [...touch.down.values()].some(({ now }) => distance(now, input) > bounds.near);
  const point = { x: input.x, y: input.y };
  const down = new Map(touch.down).set(input.id, { origin: point, now: point });
  const carried = touch.down.size === 0 ? touch.slid : touch.carried;
  const group = widened({ ...touch, down, carried, last: point, upAt: null }, input, bounds);
  return isFar ? { ...group, spoiled: group.spoiled ?? 'two at once' } : group;
}

function moved(touch: Group, input: Placed, bounds: TouchThresholds): Group {
  const now = { x: input.x, y: input.y };
  const origin = touch.down.get(input.id)?.origin ?? now;
  const { carried } = touch;
  const slid = { x: carried.x + now.x - origin.x, y: carried.y + now.y - origin.y };
  const down = new Map(touch.down).set(input.id, { origin, now });
  return widened(
    { ...touch, down, last: now, slid, reach: Math.max(touch.reach, Math.hypot(slid.x, slid.y)) },
    input,
    bounds,
  );
}

/** Several contacts of one elbow are as wide as they lie apart. */
function widened(touch: Group, input: Placed, { palm }: TouchThresholds): Group {
  const apart = Math.max(...[...touch.down.values()].map(({ now }) => distance(now, input)));
  const width = Math.max(touch.width, input.width, apart);
  return { ...touch, width, spoiled: touch.spoiled ?? (width > palm ? 'palm' : null) };
}

function lifted(touch: Group, { id, at, kind }: Extract<TouchInput, { kind: 'up' | 'cancel' }>): Group {
  const down = new Map(touch.down);
  down.delete(id);
  const spoiled = touch.spoiled ?? (kind === 'cancel' ? 'taken by the system' : null);
  return { ...touch, down, spoiled, upAt: down.size === 0 ? at : null };
}

/** What a touch was, now that all of it is up. */
function ended(touch: Group, bounds: TouchThresholds): Touched {
  const to = touch.upAt ?? touch.from;
  const whole = { from: touch.from, to, x: touch.began.x, y: touch.began.y };
  const lasted = to - touch.from;
  if (touch.spoiled !== null) return { ...whole, kind: 'rejected', why: touch.spoiled };
  if (lasted > bounds.resting) return { ...whole, kind: 'rejected', why: 'resting' };
  const narrow = margin(touch.width, bounds.palm, bounds.palm * 0.7);
  const across = touch.slid.x;
  const along = Math.abs(touch.slid.y);
  if (Math.abs(across) >= bounds.swipe && Math.abs(across) >= STRAIGHT * along) {
    const far = margin(Math.abs(across), bounds.swipe, bounds.swipe * 1.5);
    const straight = margin(Math.abs(across), STRAIGHT * along, 2 * STRAIGHT * along);
    return { ...whole, kind: across < 0 ? 'swipe left' : 'swipe right', sureness: least(far, straight, narrow) };
  }
  if (touch.reach > bounds.travel) return { ...whole, kind: 'rejected', why: 'slid too far' };
  const still = margin(touch.reach, bounds.travel, bounds.travel / 2);
  return lasted < bounds.longPress
    ? { ...whole, kind: 'tap', sureness: least(margin(lasted, bounds.longPress, bounds.longPress / 2), still, narrow) }
    : {
        ...whole,
        kind: 'long press',
        sureness: least(
          margin(lasted, bounds.longPress, bounds.longPress * 1.25),
          margin(lasted, bounds.resting, (bounds.resting + bounds.longPress) / 2),
          still,
          narrow,
        ),
      };
}

/** A swipe goes at least so many times as far across as up or down. */
const STRAIGHT = 1.5;

/** Where a bound and its good value fall together, the margin is no number: then nothing speaks against it. */
const least = (...margins: readonly number[]): number => Math.min(1, ...margins.filter((each) => !Number.isNaN(each)));

const distance = (one: Point, other: Point): number => Math.hypot(one.x - other.x, one.y - other.y);
