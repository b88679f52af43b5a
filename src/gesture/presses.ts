/** From keys that go down and up to presses, long presses and double presses. Pure: time comes in with each input. */
import { switchOf, type Bindings, type PressKind } from './bindings.ts';
import { margin } from './gesture.ts';

/** Times are milliseconds on one clock, and never go back. */
export type KeyInput =
  | { readonly kind: 'down' | 'up'; readonly key: string; readonly at: number }
  /** Nothing but time has passed. */
  | { readonly kind: 'time'; readonly at: number }
  /** The page lost its keys: whatever is down now will not be seen to go up. */
  | { readonly kind: 'lost'; readonly at: number };

/** A press of one switch, as it was recognised. */
export interface Pressed {
  /** Its place among the switches. */
  readonly of: number;
  readonly kind: PressKind;
  /** When it began: a foot that went down before the screen changed meant what stood there before. */
  readonly from: number;
  /** When it was certain. */
  readonly at: number;
  /** 0 to 1: how far it is inside the bounds of its kind. Not a probability. */
  readonly sureness: number;
}

type Phase =
  /** Down, and not yet certain what it becomes. */
  | { readonly kind: 'down'; readonly since: number }
  /** Down, and answered: it only has to come up again. */
  | { readonly kind: 'spent' }
  /** Open again so soon after it closed that the contact may only be bouncing. */
  | { readonly kind: 'may bounce'; readonly downAt: number; readonly upAt: number }
  /** Up after a short press, which a second one may join. */
  | { readonly kind: 'may double'; readonly downAt: number; readonly upAt: number }
  | { readonly kind: 'up'; readonly upAt: number };

/** What is known of each switch, by its place. */
export type Presses = ReadonlyMap<number, Phase>;

export const NO_PRESSES: Presses = new Map();

export interface AfterKey {
  readonly presses: Presses;
  readonly done: readonly Pressed[];
  /** When time alone will decide something next; null where it will not. */
  readonly wakeAt: number | null;
}

/**
 * Takes one input in. Where only a plain press is bound to a switch, it counts as it goes down; where a long one is, as it
 * comes up; where a double one is, once no second one can come any more.
 */
export function afterKey(presses: Presses, input: KeyInput, bindings: Bindings): AfterKey {
  const timed = afterTime(presses, input.at, bindings);
  if (input.kind === 'time') return { ...timed, wakeAt: wakeAt(timed.presses, bindings) };
  if (input.kind === 'lost') {
    const isComplete = ({ kind }: Phase): boolean => kind === 'may double' || kind === 'may bounce';
    const kept = new Map([...timed.presses].filter(([, phase]) => isComplete(phase)));
    return { presses: kept, done: timed.done, wakeAt: wakeAt(kept, bindings) };
  }
  const of = switchOf(bindings, input.key);
  if (of === null) return { ...timed, wakeAt: wakeAt(timed.presses, bindings) };
  const before = timed.presses.get(of);
  const { phase, done } =
    input.kind === 'down' ? goneDown(before, of, input.at, bindings) : goneUp(before, of, input.at, bindings);
  const after = new Map(timed.presses);
  if (phase) after.set(of, phase);
  return { presses: after, done: [...timed.done, ...done], wakeAt: wakeAt(after, bindings) };
}

interface Step {
  readonly phase: Phase | undefined;
  readonly done: readonly Pressed[];
}

function goneDown(before: Phase | undefined, of: number, at: number, bindings: Bindings): Step {
  const { timing } = bindings;
  // Time alone would have decided by now, had it not come in time.
  if (before?.kind === 'may bounce') return { phase: { kind: 'down', since: before.downAt }, done: [] };
  if (before?.kind === 'may double') {
    const gap = at - before.upAt;
    if (gap < timing.bounce) return { phase: { kind: 'down', since: before.downAt }, done: [] };
    const sureness = margin(gap, timing.doublePress, timing.doublePress / 2);
    return { phase: { kind: 'spent' }, done: [{ of, kind: 'double press', from: before.downAt, at, sureness }] };
  }
  if (before?.kind === 'up' && at - before.upAt < timing.bounce) return { phase: { kind: 'spent' }, done: [] };
  // One that is still down was not seen to come up: it is a press of its own.
  const pressed = bindings.switches[of];
  if (pressed?.long !== undefined || pressed?.double !== undefined)
    return { phase: { kind: 'down', since: at }, done: [] };
  return { phase: { kind: 'spent' }, done: [{ of, kind: 'press', from: at, at, sureness: 1 }] };
}

function goneUp(before: Phase | undefined, of: number, at: number, bindings: Bindings): Step {
  if (before?.kind === 'spent') return { phase: { kind: 'up', upAt: at }, done: [] };
  // It went down elsewhere.
  if (before?.kind !== 'down') return { phase: before, done: [] };
  if (bindings.switches[of]?.double !== undefined)
    return { phase: { kind: 'may double', downAt: before.since, upAt: at }, done: [] };
  if (at - before.since < bindings.timing.bounce)
    return { phase: { kind: 'may bounce', downAt: before.since, upAt: at }, done: [] };
  const sureness = surenessOfShort(at - before.since, of, bindings);
  return { phase: { kind: 'up', upAt: at }, done: [{ of, kind: 'press', from: before.since, at, sureness }] };
}

/** What time alone has decided by `at`, in the order in which it did. */
function afterTime(presses: Presses, at: number, bindings: Bindings): Omit<AfterKey, 'wakeAt'> {
  const after = new Map(presses);
  const done: Pressed[] = [];
  for (const [of, phase] of presses) {
    const due = deadline(of, phase, bindings);
    if (due === null || due > at) continue;
    if (phase.kind === 'down') {
      after.set(of, { kind: 'spent' });
      done.push({ of, kind: 'long press', from: phase.since, at: due, sureness: 1 });
    } else if (phase.kind === 'may double' || phase.kind === 'may bounce') {
      after.set(of, { kind: 'up', upAt: phase.upAt });
      const sureness = surenessOfShort(phase.upAt - phase.downAt, of, bindings);
      done.push({ of, kind: 'press', from: phase.downAt, at: due, sureness });
    }
  }
  return { presses: after, done: done.sort((one, other) => one.at - other.at || one.of - other.of) };
}

function deadline(of: number, phase: Phase, { switches, timing }: Bindings): number | null {
  if (phase.kind === 'down' && switches[of]?.long !== undefined) return phase.since + timing.longPress;
  if (phase.kind === 'may bounce') return phase.upAt + timing.bounce;
  return phase.kind === 'may double' ? phase.upAt + timing.doublePress : null;
}

function wakeAt(presses: Presses, bindings: Bindings): number | null {
  const due = [...presses].flatMap(([of, phase]) => deadline(of, phase, bindings) ?? []);
  return due.length > 0 ? Math.min(...due) : null;
}

/** A press that was nearly a long one is less sure than a short one. */
const surenessOfShort = (lasted: number, of: number, { switches, timing }: Bindings): number =>
  switches[of]?.long === undefined ? 1 : margin(lasted, timing.longPress, timing.longPress / 2);
