/**
 * What the second person's window shows. A pure function of the record. Of the values that the mechanic read it tells one
 * only once it is confirmed, or once both have read it: who reads the same tool again must not know what was read before.
 */
import { sentence } from '../language/say.ts';
import { planOf } from '../session/calls.ts';
import type { SessionEvent } from '../session/event.ts';
import { witnessIn } from '../session/people.ts';
import { currentCall, currentStep, pendingReading, type Reading, type SessionState } from '../session/state.ts';
import { secondView as words } from '../words/second-view.ts';
import { workView, type WorkView } from './view.ts';
import { placeOf } from './view/place.ts';

/** What is wanted of the second person now. */
export type Task =
  /** To come and help, at once. */
  | { readonly kind: 'help'; readonly what: string }
  /** The value on the tool. `of` tells one reading from the next. */
  | { readonly kind: 'read'; readonly of: number; readonly fastener: number; readonly unit: string }
  /** Their word for the step. */
  | { readonly kind: 'look'; readonly what: string; readonly text: string; readonly isInspection?: true }
  | { readonly kind: 'wait'; readonly why: string };

/** What the two said of one thing, as long as it is not settled. */
export interface Finding {
  readonly kind: 'agree' | 'dispute';
  readonly headline: string;
  readonly detail: string;
}

export interface ReadingLine {
  readonly place: string;
  /** Null where it is kept from sight. */
  readonly value: string | null;
  readonly status: string;
  readonly who: string;
}

export interface SecondView {
  readonly mechanic: string;
  /** Who may witness; null where nobody does. */
  readonly second: string | null;
  readonly step: { readonly title: string; readonly number: number; readonly count: number } | null;
  /** The fastener and the pass that the work is at. */
  readonly at: { readonly label: string; readonly fastener: number; readonly round: string } | null;
  readonly task: Task;
  readonly finding: Finding | null;
  /** The last readings, the newest first. */
  readonly readings: readonly ReadingLine[];
  readonly openPoints: readonly string[];
}

/** As many readings as are taken in at a glance. */
const LAST_READINGS = 6;

/** @param events all events that led to the state, oldest first */
export function secondView(state: SessionState, events: readonly Pick<SessionEvent, 'body'>[]): SecondView {
  const view = workView(state);
  const { step } = view;
  return {
    mechanic: state.people.mechanic,
    second: witnessIn(state),
    step: step && { title: step.title, number: view.stepNumber, count: view.stepCount },
    at: callOf(state),
    task: taskOf(state, view),
    finding: findingOf(state, view, events),
    readings: state.readings
      .slice(-LAST_READINGS)
      .reverse()
      .map((reading) => lineOf(state, reading)),
    openPoints: view.openPoints,
  };
}

/** Without the name of the pass: that may be its target, and who reads a tool is not told what it should show. */
function callOf(state: SessionState): SecondView['at'] {
  const step = currentStep(state);
  const call = currentCall(state);
  if (!step || !call) return null;
  const { passes } = planOf(state.procedure, step);
  const { label, fastener, pass } = call;
  const round = pass.kind === 'running torque' ? words.runningTorque : words.passOf(pass.index, passes.length);
  return { label: sentence(label), fastener, round };
}

/** In the order in which the session itself asks: what comes first there is what is waited for here. */
function taskOf(state: SessionState, view: WorkView): Task {
  const wait = (why: string): Task => ({ kind: 'wait', why });
  const { phase, step, handingOver, breakOf, deviation, warning } = view;
  if (view.help !== null) return { kind: 'help', what: view.help };
  if (view.closing) return wait(view.closing.kind === 'signature' ? words.wait.signing : words.wait.deciding);
  if (phase === 'closed' || step === null) return wait(words.wait.closed);
  if (handingOver) return wait(words.wait.handingOver);
  if (phase === 'standing by') return wait(words.wait.standingBy);
  if (breakOf !== null) return wait(words.wait.brokenOff);
  if (deviation) return wait(words.wait.reason(deviation.what));
  if (view.held) return wait(view.held.call === null ? words.wait.held : words.wait.heldAt(view.held.call));
  if (warning) return wait(words.wait.hazard(warning.signal, warning.text));
  const pending = pendingReading(state);
  if (pending && view.awaitsWitness !== null && view.doubt !== null) return wait(words.wait.readingAgain);
  if (pending && view.awaitsWitness !== null)
    return witnessIn(state) === null
      ? wait(sentence(words.wait.joinToRead(placeOf(state, pending))))
      : { kind: 'read', of: pending.seq, fastener: pending.fastener, unit: pending.reading.unit };
  if (pending) return wait(words.wait.confirming);
  if (view.toWitness !== null)
    return witnessIn(state) === null
      ? wait(words.wait.joinToLook(view.toWitness))
      : {
          kind: 'look',
          what: sentence(view.toWitness),
          text: step.text,
          ...(view.wantsInspector ? { isInspection: true } : {}),
        };
  return wait(isDisputed(state) ? words.wait.readingAgain : words.wait.nothing);
}

/** Whether the newest reading is in dispute, and nobody has read again since. */
function isDisputed(state: SessionState): boolean {
  const newest = state.readings.at(-1);
  return newest?.status === 'disputed' && newest.step === currentStep(state)?.id;
}

function findingOf(
  state: SessionState,
  { pending }: WorkView,
  events: readonly Pick<SessionEvent, 'body'>[],
): Finding | null {
  if (pending?.witnessed) {
    const { reading, witnessed } = pending;
    return {
      kind: 'agree',
      headline: words.agree(reading.value, witnessed.reading.value, reading.unit),
      detail: words.readBy(state.people.mechanic, witnessed.person),
    };
  }
  const step = currentStep(state);
  if (isDisputed(state))
    return {
      kind: 'dispute',
      headline: words.dispute,
      detail: words.bothReadAgain,
    };
  const word = events.findLast(({ body }) => body.kind === 'step witnessed')?.body;
  if (word?.kind === 'step witnessed' && !word.agrees && word.step === step?.id)
    return {
      kind: 'dispute',
      headline: words.notAgreed,
      detail: words.lookedAtAgain(word.person),
    };
  return null;
}

function lineOf(state: SessionState, reading: Reading): ReadingLine {
  const { person, witnessed, status } = reading;
  const isKnown = status === 'confirmed';
  const value = `${reading.reading.value} ${reading.reading.unit}`;
  return {
    place: sentence(placeOf(state, reading)),
    value: isKnown ? value : null,
    status: words.status[status],
    who: !witnessed
      ? person
      : isKnown
        ? words.withWitnessed(person, witnessed.person, witnessed.reading.value)
        : words.withWitness(person, witnessed.person),
  };
}
