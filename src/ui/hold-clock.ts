import { createEffect, createMemo, onCleanup, untrack, type Accessor } from 'solid-js';
import { sayHoldTime } from '../language/say-hold.ts';
import { dueWhileHeld, heldFor, heldStep } from '../session/hold.ts';
import type { SessionState } from '../session/state.ts';

interface Hands {
  readonly state: Accessor<SessionState>;
  /** Whether the program speaks. */
  readonly isSaying: Accessor<boolean>;
  /** Whether somebody speaks. */
  readonly isHearing: Accessor<boolean>;
  /** This moment (RFC 3339). */
  readonly now: () => string;
  /** The next call of the hold is due. */
  readonly onCall: () => void;
  /** The time is told. It is said and not written: it follows from when the hold began and the procedure's interval. */
  readonly onTime: (text: string) => void;
}

/** How often it is looked whether something is due, in milliseconds: nobody hears a quarter of a second. */
const TICK = 250;
/** Somebody who talks on, or a loud hall, holds back what is due for this long and no longer, in milliseconds. */
const HELD_BACK = 6000;

/** The clock of a hold: has the next call said when it was quiet for a while, and tells the time at the step's interval. */
export function createHoldClock(hands: Hands): void {
  const { state, now } = hands;
  const since = createMemo(() => (heldStep(state()) ? (state().hold?.since ?? null) : null));
  createEffect(() => {
    if (since() === null) return;
    const tick = untrack(() => createTicker(hands, performance.now()));
    const timer = setInterval(() => tick(performance.now(), now()), TICK);
    onCleanup(() => clearInterval(timer));
  });
}

/**
 * Looks, at each tick, whether something is due, and has it said.
 * @param began milliseconds on the clock of the ticks
 */
export function createTicker(
  { state, isSaying, isHearing, now, onCall, onTime }: Hands,
  began: number,
): (tick: number, utc: string) => void {
  let told = heldFor(state(), now());
  let [saidAt, quietSince] = [began, began];
  return (tick, utc) => {
    if (isSaying()) saidAt = tick;
    if (isSaying() || (isHearing() && tick - saidAt < HELD_BACK)) quietSince = tick;
    const step = heldStep(state());
    const due = dueWhileHeld(state(), utc, { quietFor: tick - quietSince, told });
    if (!step || !due) return;
    [saidAt, quietSince] = [tick, tick];
    if (due.kind === 'call') onCall();
    else {
      told = due.seconds;
      onTime(sayHoldTime(state(), step, due.seconds));
    }
  };
}
