/** What opens and ends a round of fasteners. */
import { planOf } from './calls.ts';
import type { EventBody } from './event.ts';
import { callKey } from './reading.ts';
import { isSettled, type SessionState } from './state.ts';

/** Marks a fastener as done. */
export function withFastenerDone(
  state: SessionState,
  body: Extract<EventBody, { kind: 'fastener done' }>,
): SessionState {
  const key = callKey(body.step, body.pass, body.fastener);
  const doneFasteners = new Set([...state.doneFasteners, key]);
  const turned = body.turned ? new Set([...state.turned, key]) : state.turned;
  return withRoundOver({ ...state, doneFasteners, turned }, body);
}

/** Where a nut turned in a check for turning, the end of its round opens the whole round again. */
export function withRoundOver(
  state: SessionState,
  { step: id, pass: index }: { readonly step: string; readonly pass: number },
): SessionState {
  const step = state.procedure.steps.find((each) => each.id === id);
  const pass = step && planOf(state.procedure, step).passes.find((each) => each.index === index);
  if (!pass) return state;
  const round = new Set(pass.order.map((fastener) => callKey(id, index, fastener)));
  const isOver = pass.order.every((fastener) => isSettled(state, id, pass, fastener));
  if (!isOver || ![...round].some((each) => state.turned.has(each))) return state;
  const outside = (keys: ReadonlySet<string>): ReadonlySet<string> =>
    new Set([...keys].filter((each) => !round.has(each)));
  return { ...state, doneFasteners: outside(state.doneFasteners), turned: outside(state.turned) };
}

/** Everything of a pass is open again. Its readings stay in the record, set aside. */
export function restarted(
  state: SessionState,
  { step, pass }: Extract<EventBody, { kind: 'pass restarted' }>,
): SessionState {
  const isOfPass = (each: { readonly step: string; readonly pass: number }): boolean =>
    each.step === step && each.pass === pass;
  const outside = (keys: ReadonlySet<string>): ReadonlySet<string> =>
    new Set([...keys].filter((key) => !key.startsWith(`${step}/${pass}/`)));
  return {
    ...state,
    readings: state.readings.map((each) =>
      isOfPass(each) && (each.status === 'confirmed' || each.status === 'captured')
        ? { ...each, status: 'set aside' }
        : each,
    ),
    deviations: state.deviations.map((each) => (isOfPass(each) ? { ...each, leftOpen: false } : each)),
    doneFasteners: outside(state.doneFasteners),
    turned: outside(state.turned),
  };
}
