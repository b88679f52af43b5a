/**
 * What the second person's window shows. A pure function of the record. Of the values that the mechanic read it tells one
 * only once it is confirmed, or once both have read it: who reads the same tool again must not know what was read before.
 */
import { labelOf, sentence } from '../language/say.ts';
import { planOf } from '../session/calls.ts';
import type { SessionEvent } from '../session/event.ts';
import { witnessIn } from '../session/people.ts';
import { currentCall, currentStep, pendingReading, type Reading, type SessionState } from '../session/state.ts';
import { workView, type WorkView } from './view.ts';

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
  const round = pass.kind === 'running torque' ? 'Running torque' : `Pass ${pass.index} of ${passes.length}`;
  return { label: sentence(label), fastener, round };
}

/** In the order in which the session itself asks: what comes first there is what is waited for here. */
function taskOf(state: SessionState, view: WorkView): Task {
  const wait = (why: string): Task => ({ kind: 'wait', why });
  const { phase, step, handingOver, breakOf, deviation, warning } = view;
  if (view.help !== null) return { kind: 'help', what: view.help };
  if (view.closing)
    return wait(
      view.closing.kind === 'signature'
        ? 'The record is signed in the other window.'
        : 'A deviation is decided about in the other window.',
    );
  if (phase === 'closed' || step === null) return wait('All steps are done. The record is closed.');
  if (handingOver) return wait('The work is being handed over.');
  if (phase === 'standing by') return wait('The work stands by.');
  if (breakOf !== null) return wait('Work was broken off. The mechanic says first whether all is as it was left.');
  if (deviation) return wait(`The mechanic gives the reason for a deviation. ${deviation.what}.`);
  if (view.held)
    return wait(`The mechanic holds the weight${view.held.call === null ? '' : `: ${view.held.call}`}. Be ready.`);
  if (warning) return wait(`The mechanic acknowledges a ${warning.signal} first: ${warning.text}`);
  const pending = pendingReading(state);
  if (pending && view.awaitsWitness !== null)
    return witnessIn(state) === null
      ? wait(`${placeOf(state, pending)} wants a witness. Join under your name.`)
      : { kind: 'read', of: pending.seq, fastener: pending.fastener, unit: pending.reading.unit };
  if (pending) return wait('The mechanic confirms the reading.');
  if (view.toWitness !== null)
    return witnessIn(state) === null
      ? wait(`To be witnessed: ${view.toWitness}. Join under your name.`)
      : {
          kind: 'look',
          what: sentence(view.toWitness),
          text: step.text,
          ...(view.wantsInspector ? { isInspection: true } : {}),
        };
  return wait(isDisputed(state) ? 'The mechanic reads again first.' : 'Nothing is wanted of you now.');
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
      headline: `The two agree: ${reading.value} and ${witnessed.reading.value} ${reading.unit}`,
      detail: `Read by ${state.people.mechanic} and by ${witnessed.person}, equal to one mark of the tool.`,
    };
  }
  const step = currentStep(state);
  if (isDisputed(state))
    return {
      kind: 'dispute',
      headline: 'Dispute: the pass stops here',
      detail: 'The two values differ, and neither counts. Both read again: the mechanic first, then you.',
    };
  const word = events.findLast(({ body }) => body.kind === 'step witnessed')?.body;
  if (word?.kind === 'step witnessed' && !word.agrees && word.step === step?.id)
    return {
      kind: 'dispute',
      headline: 'Not agreed: the step stops here',
      detail: `${word.person} does not agree to this step. When it is put right, it is looked at again.`,
    };
  return null;
}

/** "Stud 4, pass 1". */
const placeOf = (state: SessionState, { step, pass, fastener }: Reading): string =>
  sentence(`${labelOf(state, step)} ${fastener}, ${pass === 0 ? 'running torque' : `pass ${pass}`}`);

function lineOf(state: SessionState, reading: Reading): ReadingLine {
  const { witnessed, status } = reading;
  const isKnown = status === 'confirmed';
  const value = `${reading.reading.value} ${reading.reading.unit}`;
  const who = witnessed
    ? `${reading.person}; witness ${witnessed.person}${isKnown ? `: ${witnessed.reading.value}` : ''}`
    : reading.person;
  return {
    place: placeOf(state, reading),
    value: isKnown ? value : null,
    status: status === 'captured' ? 'not confirmed yet' : status,
    who,
  };
}
