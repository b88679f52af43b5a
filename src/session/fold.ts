/** The session as a fold over its events: live work, a reopened page and replay all go this way. */
import type { Procedure } from '../procedure/procedure.ts';
import { askedAfter, pauseBetween } from './break.ts';
import { deviationsAfter } from './deviation.ts';
import type { EventBody, People, SessionEvent } from './event.ts';
import { afterClosing } from './closing.ts';
import { afterHold, NOT_HELD } from './hold.ts';
import { dayOf } from './intent.ts';
import { afterValue, valuesBefore } from './observed.ts';
import { peopleAfter } from './people.ts';
import { procedureAfter } from './preparation/recorded.ts';
import { withPoint, withToolUsed } from './account.ts';
import { afterReading } from './after-reading.ts';
import { valuesWithReason } from './reasons.ts';
import { restarted, withFastenerDone, withRoundOver } from './rounds.ts';
import { currentStep, onItsDay, warningKey, type SessionState } from './state.ts';
import { withFetched } from './stock.ts';

/** The state before anything was done. */
export function begin(procedure: Procedure, people: People): SessionState {
  return {
    procedure,
    people,
    prepared: [],
    doers: [people.mechanic],
    helped: people.second === null ? [] : [people.second],
    day: null,
    phase: 'working',
    at: 0,
    doneSteps: new Set(),
    skippedSteps: new Set(),
    conditions: new Map(),
    acknowledged: new Set(),
    answers: new Map(),
    points: new Map(),
    opened: new Map(),
    taken: new Map(),
    fetched: new Map(),
    usedSince: new Set(),
    doneFasteners: new Set(),
    turned: new Set(),
    readings: [],
    deviations: [],
    observed: [],
    waits: new Map(),
    dispositions: new Map(),
    signatures: [],
    witnessAsked: null,
    objected: null,
    ...NOT_HELD,
    handingOver: false,
    breakOf: null,
    lastAt: null,
    silences: 0,
  };
}

/** The state after one more event. The one code path for live work, for a reopened page and for replay. */
export function fold(state: SessionState, event: SessionEvent): SessionState {
  const changed = after(onItsDay(state, event.at), event);
  // A question or a refusal changes nothing.
  if (changed === state || NO_WORK.has(event.body.kind)) return changed;
  // A record from before breaks were asked about goes on without the answer.
  const breakOf = goesOn(state, event.body) ? null : changed.breakOf;
  return { ...changed, breakOf, lastAt: event.at.utc };
}

/** A weight is set down without an answer to the question after a break: that stays open. */
const goesOn = ({ procedure }: SessionState, body: EventBody): boolean =>
  GOES_ON.has(body.kind) &&
  !(body.kind === 'step done' && procedure.steps.some(({ id, kind }) => id === body.step && kind === 'hold'));

/** What changes the state and is nobody's work on the unit: a break goes on over it. */
const NO_WORK: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'prepared',
  'timed out',
  'reopened',
  'break noticed',
  'second person joined',
  'second person left',
  'sounds deleted',
  'help called',
]);

/** What only happens when work goes on. */
const GOES_ON: ReadonlySet<EventBody['kind']> = new Set([
  'warning acknowledged',
  'condition answered',
  'reading captured',
  'reading confirmed',
  'fastener done',
  'point settled',
  'answered',
  'hold begun',
  'wait begun',
  'value observed',
  'value confirmed',
  'step done',
]);

function after(state: SessionState, event: SessionEvent): SessionState {
  const { body } = event;
  switch (body.kind) {
    case 'opened':
      return { ...state, day: dayOf(event.at) };
    case 'prepared': {
      const { procedure, prepared } = state;
      const after = { ...state, procedure: procedureAfter(procedure, body.fact), prepared: [...prepared, body.fact] };
      return body.fact.of === 'helper' ? withHelper(after, body.fact.name) : after;
    }
    case 'reopened':
    case 'break noticed':
      return broken({ ...state, day: dayOf(event.at) }, event);
    case 'repeat asked':
    case 'asked':
    case 'refused':
    case 'sounds deleted':
      return state;
    case 'warning acknowledged':
      return { ...state, acknowledged: new Set([...state.acknowledged, warningKey(body.step, body.index)]) };
    case 'witness asked':
      return { ...state, witnessAsked: body.step };
    case 'step witnessed':
      return { ...state, witnessAsked: null, objected: body.agrees ? null : body.step };
    case 'step done': {
      const at = indexOf(state, body.step) + 1;
      return {
        ...state,
        doneSteps: new Set([...state.doneSteps, body.step]),
        at,
        witnessAsked: null,
        objected: null,
        ...NOT_HELD,
      };
    }
    case 'step taken back':
      return takenBack(state, indexOf(state, body.step));
    case 'condition answered':
      return { ...state, conditions: new Map([...state.conditions, [body.condition, body.is]]) };
    case 'step skipped':
      return { ...state, skippedSteps: new Set([...state.skippedSteps, body.step]), at: indexOf(state, body.step) + 1 };
    case 'answered':
      return { ...state, answers: new Map([...state.answers, [body.step, body.outcome]]) };
    case 'wait begun':
    case 'value observed':
    case 'value confirmed':
    case 'value rejected':
    case 'value disregarded':
    case 'value left open':
      return afterValue(state, body, event);
    case 'disposed':
    case 'signed':
      return afterClosing(state, body, event);
    case 'hold begun':
    case 'hold call':
    case 'hold ended':
    case 'help called':
      return afterHold(state, body, event);
    case 'point settled':
      return withPoint(state, body);
    case 'consumable fetched':
      return withFetched(state, body);
    case 'fastener done': {
      const step = state.procedure.steps.find(({ id }) => id === body.step);
      const done = withFastenerDone(state, body);
      return step?.kind === 'tighten' ? withToolUsed(done, step.tool) : done;
    }
    case 'timed out':
      return { ...state, silences: state.silences + 1 };
    case 'reading captured':
    case 'witnessed':
    case 'disputed':
    case 'reading confirmed':
    case 'reading rejected':
    case 'reading disregarded':
      return afterReading(state, body, event);
    case 'deviation reported':
      return { ...state, deviations: deviationsAfter(state.deviations, body, event) };
    case 'reason given':
    case 'reason confirmed':
    case 'reason rejected':
      return {
        ...state,
        deviations: deviationsAfter(state.deviations, body, event),
        observed: valuesWithReason(state.observed, body),
      };
    case 'deviation disregarded':
      // Its fastener may be open again, and then the step is not done that the second person was to look at.
      return { ...state, witnessAsked: null, deviations: deviationsAfter(state.deviations, body, event) };
    case 'left open': {
      const left = { ...state, deviations: deviationsAfter(state.deviations, body, event) };
      const deviation = left.deviations.find(({ seq }) => seq === body.of);
      return deviation ? withRoundOver(left, deviation) : left;
    }
    case 'second person joined':
      return { ...withHelper(state, body.name), people: peopleAfter(state.people, body) };
    case 'second person left':
      return { ...state, people: peopleAfter(state.people, body) };
    case 'handover begun':
      return { ...state, phase: 'standing by', handingOver: true };
    case 'handed over':
      return handedOver(broken({ ...state, day: dayOf(event.at) }, event), body);
    case 'stood by':
      return { ...state, phase: 'standing by' };
    case 'continued':
      return broken({ ...state, phase: 'working', handingOver: false, day: dayOf(event.at) }, event);
    case 'break accepted':
      return { ...state, breakOf: null };
    case 'pass restarted':
      return restarted(state, body);
    case 'closed':
      return { ...state, phase: 'closed' };
  }
}

/** Work goes on after a pause. A long one is asked about; one that was not asked about yet is not forgotten for a short one. */
function broken(state: SessionState, { at }: SessionEvent): SessionState {
  const pause = pauseBetween(state.lastAt, at.utc);
  if (pause < askedAfter(currentStep(state))) return state;
  return { ...state, breakOf: Math.max(pause, state.breakOf ?? 0) };
}

const withHelper = (state: SessionState, name: string): SessionState => ({ ...state, helped: [...state.helped, name] });

/** The one who takes over has seen nothing yet: the warnings of the step are told once more. */
function handedOver(state: SessionState, body: Extract<EventBody, { kind: 'handed over' }>): SessionState {
  const step = currentStep(state);
  const isOfStep = (key: string): boolean => step !== null && key.startsWith(`${step.id}/`);
  return {
    ...state,
    phase: 'working',
    handingOver: false,
    people: peopleAfter(state.people, body),
    doers: [...state.doers, body.to],
    acknowledged: new Set([...state.acknowledged].filter((key) => !isOfStep(key))),
  };
}

/** The steps after one that is taken back are worked again, with their warnings, points and answers; fasteners done by hand stay done. */
function takenBack(state: SessionState, at: number): SessionState {
  const { steps } = state.procedure;
  const before = steps.slice(0, at).map(({ id }) => id);
  const asked = steps.slice(0, at + 1).map(({ applies }) => applies?.condition);
  return {
    ...state,
    at,
    witnessAsked: null,
    objected: null,
    ...NOT_HELD,
    ...valuesBefore(state, before),
    doneSteps: new Set(before.filter((id) => !state.skippedSteps.has(id))),
    skippedSteps: new Set(before.filter((id) => state.skippedSteps.has(id))),
    conditions: new Map([...state.conditions].filter(([condition]) => asked.includes(condition))),
    acknowledged: new Set([...state.acknowledged].filter((key) => before.some((id) => key.startsWith(`${id}/`)))),
    answers: new Map([...state.answers].filter(([id]) => before.includes(id))),
    points: new Map([...state.points].filter(([key]) => before.some((id) => key.startsWith(`${id}/`)))),
  };
}

const indexOf = (state: SessionState, step: string): number => state.procedure.steps.findIndex(({ id }) => id === step);
