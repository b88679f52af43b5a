/** The bounds between what counts as a touch and what does not, as each person sets them. */
import * as v from 'valibot';
import { habits } from '../words/habits.ts';

const between = (least: number, most: number, words: () => string) =>
  v.pipe(v.number(words), v.minValue(least, words), v.maxValue(most, words));
const time = (least: number, most: number) => between(least, most, () => habits.giveMilliseconds(least, most));
const length = (least: number, most: number) => between(least, most, () => habits.giveMillimetres(least, most));

const Thresholds = v.pipe(
  v.strictObject({
    /** A press that lasts at least so long is a long one. */
    longPress: time(300, 3000),
    /** What lasts longer leans on the screen. */
    resting: time(1000, 10_000),
    /** What is wider is a palm or a forearm. */
    palm: length(20, 150),
    /** How far a press may slide: an elbow is never still. */
    travel: length(3, 60),
    /** How far a swipe goes at least. */
    swipe: length(10, 150),
    /** Contacts that follow one another within this time, no further apart than `near`, are one. */
    together: time(0, 400),
    near: length(5, 80),
  }),
  v.forward(
    v.check(
      ({ longPress, resting }) => longPress < resting,
      () => habits.longBeforeResting,
    ),
    ['longPress'],
  ),
  v.forward(
    v.check(
      ({ travel, swipe }) => travel < swipe,
      () => habits.pressBeforeSwipe,
    ),
    ['travel'],
  ),
);

/** The bounds of one person's touch. */
export type TouchThresholds = v.InferOutput<typeof Thresholds>;

/** Bounds for a work glove on a tablet, by judgement: each person tries them and sets their own. */
export const TOUCH_THRESHOLDS: TouchThresholds = {
  longPress: 800,
  resting: 4000,
  palm: 60,
  travel: 20,
  swipe: 40,
  together: 120,
  near: 40,
};

/** Reads bounds from anywhere outside. It never throws. */
export function readThresholds(
  raw: unknown,
):
  | { readonly kind: 'valid'; readonly thresholds: TouchThresholds }
  | { readonly kind: 'faulty'; readonly faults: readonly { readonly path: string; readonly message: string }[] } {
  const parsed = v.safeParse(Thresholds, raw);
  return parsed.success
    ? { kind: 'valid', thresholds: parsed.output }
    : {
        kind: 'faulty',
        faults: parsed.issues.map((issue) => ({ path: v.getDotPath(issue) ?? '', message: issue.message })),
      };
}
