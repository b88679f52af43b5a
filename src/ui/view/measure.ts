/** A value that is read off something else than a torque tool. */
import { sentence } from '../../language/say.ts';
import type { StepOf } from '../../procedure/procedure.ts';
import { isOutside, outsideValue, pendingValue } from '../../session/observed.ts';
import type { SessionState } from '../../session/state.ts';
import { workView as words } from '../../words/work-view.ts';

export interface MeasureView {
  readonly what: string;
  readonly unit: string;
  /** "40 to 60"; null where the procedure has none. */
  readonly window: string | null;
  readonly wait: {
    readonly minutes: number;
    /** When it is over, in milliseconds since 1970; null before it has begun. */
    readonly over: number | null;
  } | null;
  /** The value that was read back, with its verdict in words. */
  readonly pending: { readonly value: string; readonly unit: string; readonly verdict: string } | null;
  readonly isOutside: boolean;
  /** "70 mm", where that was confirmed and is outside. */
  readonly outside: string | null;
}

export function measureView(state: SessionState, step: StepOf<'measure'>): MeasureView {
  const { what, unit, window, waitMinutes } = step;
  const since = state.waits.get(step.id);
  const value = pendingValue(state);
  const outside = outsideValue(state, step.id);
  return {
    what: sentence(what),
    unit,
    window: window ? words.range(window.min, window.max) : null,
    wait:
      waitMinutes === undefined
        ? null
        : { minutes: waitMinutes, over: since === undefined ? null : Date.parse(since) + waitMinutes * 60_000 },
    pending: value && { value: value.value, unit: value.unit, verdict: words.verdict[value.verdict] },
    isOutside: value !== null && isOutside(value),
    outside: outside && `${outside.value} ${outside.unit}`,
  };
}
