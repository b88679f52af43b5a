/** Values that are read off something else than a torque tool: a level, a pressure, a leak check after its wait. */
import type { StepOf } from '../procedure/procedure.ts';
import { pauseBetween } from './break.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody, SessionEvent } from './event.ts';
import { isDecimalOfScale, type Instant, type Meaning } from './intent.ts';
import { currentStep, type SessionState } from './state.ts';
import { stepDone } from './steps.ts';

/** A value with what became of it. Every one stays in the state, in the order of the record. */
export interface ObservedValue extends Extract<EventBody, { kind: 'value observed' }> {
  readonly seq: number;
  readonly at: Instant;
  readonly person: string;
  readonly status: 'observed' | 'confirmed' | 'rejected' | 'disregarded' | 'replaced' | 'set aside';
  /** It is outside, and the work went on with it: someone decides about it. */
  readonly leftOpen: boolean;
  /** Why it was left open, as it was dictated or typed. */
  readonly reason: string | null;
  readonly isReasonStated: boolean;
}

type MeasureStep = StepOf<'measure'>;

/** The value that was read back and waits for its confirmation. */
export const pendingValue = ({ observed }: Pick<SessionState, 'observed'>): ObservedValue | null =>
  observed.findLast(({ status }) => status === 'observed') ?? null;

export const isOutside = ({ verdict }: Pick<ObservedValue, 'verdict'>): boolean =>
  verdict === 'under' || verdict === 'over';

/** The confirmed value of a step that is outside its window: it is read again, or left open. */
export const outsideValue = ({ observed }: Pick<SessionState, 'observed'>, step: string): ObservedValue | null =>
  observed.findLast((value) => value.step === step && value.status === 'confirmed' && isOutside(value)) ?? null;

/** Whether the scale that is read goes below zero. */
export const goesBelowZero = ({ belowZero, window }: MeasureStep): boolean =>
  belowZero ?? (window !== undefined && Number(window.min) < 0);

const SECONDS_A_MINUTE = 60;

/** The wait of a step: not begun yet, or so many whole seconds left (0 when it is over). Null where it has none. */
export function waitOf(state: SessionState, step: MeasureStep, now: string): 'not begun' | number | null {
  if (step.waitMinutes === undefined) return null;
  const since = state.waits.get(step.id);
  if (since === undefined) return 'not begun';
  return Math.max(0, step.waitMinutes * SECONDS_A_MINUTE - Math.floor(pauseBetween(since, now) / 1000));
}

/** "Next" at such a step: it begins the wait, and takes the place of no value. */
export function goOnMeasuring(state: SessionState, step: MeasureStep, at: Instant): Decision {
  const wait = waitOf(state, step, at.utc);
  if (wait === 'not begun') return accept({ kind: 'wait begun', step: step.id });
  return refuse(wait !== null && wait > 0 ? { code: 'wait not over', seconds: wait } : { code: 'value first' });
}

/** A value for the step, judged against its window. What was said stands in the record to the digit. */
export function observe(state: SessionState, step: MeasureStep, value: string, at: Instant): Decision {
  const wait = waitOf(state, step, at.utc);
  if (wait === 'not begun') return refuse({ code: 'wait first' });
  if (wait !== null && wait > 0) return refuse({ code: 'wait not over', seconds: wait });
  const isBelowZero = value.startsWith('-');
  if (!isDecimalOfScale(isBelowZero ? value.slice(1) : value))
    return refuse({ code: 'unclear', doubt: 'not sure', readings: [{ fastener: null, value }] });
  if (isBelowZero && !goesBelowZero(step)) return refuse({ code: 'scale ends at zero' });
  const since = state.waits.get(step.id);
  return accept({
    kind: 'value observed',
    step: step.id,
    value,
    unit: step.unit,
    window: step.window ?? null,
    verdict: verdictOn(step, value),
    waited: since === undefined ? null : Math.floor(pauseBetween(since, at.utc) / 1000),
    corrects: pendingValue(state)?.seq ?? outsideValue(state, step.id)?.seq ?? null,
  });
}

function verdictOn({ window }: MeasureStep, value: string): ObservedValue['verdict'] {
  if (!window) return 'no window';
  if (Number(value) < Number(window.min)) return 'under';
  return Number(value) > Number(window.max) ? 'over' : 'in';
}

/** A value was read back: it is confirmed, rejected, said anew or dropped before anything else happens. */
export function whileValuePending(
  state: SessionState,
  pending: ObservedValue,
  meaning: Meaning,
  at: Instant,
): Decision {
  const step = currentStep(state);
  if (step?.kind !== 'measure') return refuse({ code: 'value unconfirmed' });
  switch (meaning.kind) {
    case 'affirm':
      return accept({ kind: 'value confirmed', of: pending.seq }, ...(isOutside(pending) ? [] : stepDone(state, step)));
    case 'negative':
      return accept({ kind: 'value rejected', of: pending.seq });
    case 'disregard':
      return accept({ kind: 'value disregarded', of: pending.seq });
    case 'observed':
      return observe(state, step, meaning.value, at);
    default:
      return refuse({ code: 'value unconfirmed' });
  }
}

/**
 * Goes on with a value that is outside, once it is said why. It stays listed to the end, and is decided about before the
 * record is closed.
 */
export function leaveValueOpen(state: SessionState, step: MeasureStep): Decision {
  const outside = outsideValue(state, step.id);
  if (!outside) return refuse({ code: 'value first' });
  return accept({ kind: 'value left open', of: outside.seq });
}

type ValueEvent = Extract<
  EventBody,
  {
    kind:
      | ('wait begun' | 'value observed' | 'value confirmed' | 'value rejected')
      | ('value disregarded' | 'value left open');
  }
>;

/** The state after one more event about an observed value. */
export function afterValue(
  state: SessionState,
  body: ValueEvent,
  { seq, at, person }: Pick<SessionEvent, 'seq' | 'at' | 'person'>,
): SessionState {
  const { observed } = state;
  const change = (of: number | null, part: Partial<ObservedValue>): readonly ObservedValue[] =>
    observed.map((value) => (value.seq === of ? { ...value, ...part } : value));
  switch (body.kind) {
    case 'wait begun':
      return { ...state, waits: new Map([...state.waits, [body.step, at.utc]]) };
    case 'value observed': {
      // A value that waits gives way at once; a confirmed one stands until the new one is confirmed.
      const older = observed.map((value) => (value.status === 'observed' ? replaced(value) : value));
      return {
        ...state,
        silences: 0,
        observed: [...older, { ...body, seq, at, person, status: 'observed', leftOpen: false, ...NO_REASON }],
      };
    }
    case 'value confirmed': {
      const { step } = observed.find((value) => value.seq === body.of) ?? { step: null };
      return {
        ...state,
        observed: observed.map((value) => {
          if (value.seq === body.of) return { ...value, status: 'confirmed' };
          return value.step === step && value.status === 'confirmed' ? replaced(value) : value;
        }),
      };
    }
    case 'value rejected':
      return { ...state, observed: change(body.of, { status: 'rejected' }) };
    case 'value disregarded':
      // What the second person is to look at is no longer so.
      return { ...state, witnessAsked: null, observed: change(body.of, { status: 'disregarded', leftOpen: false }) };
    case 'value left open':
      return { ...state, observed: change(body.of, { leftOpen: true }) };
  }
}

const NO_REASON: Pick<ObservedValue, 'reason' | 'isReasonStated'> = { reason: null, isReasonStated: false };

const replaced = (value: ObservedValue): ObservedValue => ({ ...value, status: 'replaced', leftOpen: false });

/** The values once only the steps in `before` are behind: those of later steps are read again, their waits too. */
export const valuesBefore = (
  { observed, waits }: Pick<SessionState, 'observed' | 'waits'>,
  before: readonly string[],
): Pick<SessionState, 'observed' | 'waits'> => ({
  observed: observed.map((value) =>
    before.includes(value.step) || !STANDS.has(value.status)
      ? value
      : { ...value, status: 'set aside', leftOpen: false },
  ),
  waits: new Map([...waits].filter(([step]) => before.includes(step))),
});

const STANDS: ReadonlySet<ObservedValue['status']> = new Set(['observed', 'confirmed']);
