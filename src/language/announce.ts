import { toDoAbout } from '../session/deviations.ts';
import type { EventBody } from '../session/event.ts';
import { MOST_ASKED_AGAIN } from '../session/silence.ts';
import { awaitsHold } from '../session/hold.ts';
import { currentStep, isDone, pendingReading, type Reading, type SessionState } from '../session/state.ts';
import { pointOf } from '../session/point.ts';
import { criterionOf, namePoint, nameOfSeal } from '../session/point-words.ts';
import { points } from '../words/points.ts';
import { inspectsOwnWork } from '../session/people.ts';
import { currentPoint } from '../session/points.ts';
import { asksValue, awaitsWitness } from '../session/witness.ts';
import { announcing } from '../words/announcing.ts';
import { place } from '../words/place.ts';
import { prompting } from '../words/prompting.ts';
import { answerTo } from './answer.ts';
import { explainLift } from './explain.ts';
import { IN_FULL, prompt } from './prompt.ts';
import { readBack, sayStands, sayVerdict } from './read-back.ts';
import { sayDeferred, sayOpenPoints, titleOf } from './say-closing.ts';
import { askPoint } from './say-point.ts';
import { sayHelp, sayHeldFor, sayOrientation } from './say-hold.ts';
import { readBackValue, sayOutside } from './say-observed.ts';
import { sayRefusal } from './say-refusal.ts';
import { count, labelOf, named, passInWords, sayPlain, sentence } from './say.ts';
import { sayStanding } from './standing.ts';

/**
 * What is spoken after events, in order. A pure function of the state after them, so that a replay says the same.
 * @param events the events of one decision, oldest first
 */
export function announce(state: SessionState, events: readonly EventBody[]): readonly string[] {
  const said = events.flatMap((event) => sayEvent(state, event));
  // A reading that was just read back is not asked for twice.
  // Nor is a torque the last word after "stop"; what the procedure has done about it is asked.
  const asks =
    !READ_BACK.has(events.at(-1)?.kind ?? 'closed') &&
    (currentPoint(state)?.kind === 'ordered' || !events.some((event) => isStop(state, event))) &&
    events.some(({ kind }) => MOVES_ON.has(kind));
  return [...said, ...(asks ? prompt(state, events) : [])];
}

/** These are read back, and with that asked about. */
const READ_BACK: ReadonlySet<EventBody['kind']> = new Set(['reading captured', 'value observed']);

/** After these, what is to be done next is said. */
const MOVES_ON: ReadonlySet<EventBody['kind']> = new Set([
  ...IN_FULL,
  'answered',
  'fastener done',
  'point settled',
  'consumable fetched',
  'reading confirmed',
  'reading rejected',
  'reading disregarded',
  'disputed',
  'witness asked',
  'step witnessed',
  'deviation reported',
  'reason rejected',
  'deviation disregarded',
  'left open',
  'second person joined',
  'handover begun',
  'break noticed',
  'pass restarted',
  'value rejected',
  'value left open',
  'value disregarded',
  'disposed',
  'signed',
]);

/** A value over its window was confirmed: the manual decides what follows, not the next call. */
const isStop = (state: SessionState, event: EventBody): boolean =>
  event.kind === 'reading confirmed' &&
  state.readings.some(({ seq, verdict }) => seq === event.of && verdict === 'over');

function sayEvent(state: SessionState, event: EventBody): readonly string[] {
  switch (event.kind) {
    case 'opened': {
      const { title, source, invented } = state.procedure;
      return [
        announcing.opened(title, source.document, source.revision),
        ...(invented ? [announcing.invented] : []),
        ...sayBeforeWork(state),
      ];
    }
    case 'reopened':
      return [announcing.goingOn, ...(state.breakOf === null ? sayStanding(state) : [])];
    case 'reading captured':
      return [readBack(state, event)];
    case 'witnessed': {
      const pending = pendingReading(state);
      return pending?.seq === event.of ? [readBack(state, pending)] : [];
    }
    case 'disputed': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      const stands = sayStands(state, event.of);
      return [
        ...(reading ? [announcing.disputed(...named(state, reading))] : []),
        ...(stands.length > 0 ? [...stands, announcing.correctAgain] : [announcing.bothReadAgain]),
      ];
    }
    case 'reading confirmed': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      return [announcing.logged, ...(reading && reading.verdict !== 'in' ? [sayVerdict(state, reading)] : [])];
    }
    case 'reading rejected':
      return [announcing.notLogged, ...sayStands(state, event.of)];
    case 'reason rejected':
    case 'value rejected':
      return [announcing.notLogged];
    case 'reading disregarded': {
      const reading = state.readings.find(({ seq }) => seq === event.of);
      return [
        reading ? announcing.readingDisregarded(sayPlace(state, reading)) : announcing.disregarded,
        ...sayStands(state, event.of),
      ];
    }
    case 'timed out':
      return [...prompt(state), ...(state.silences < MOST_ASKED_AGAIN ? [] : [sayNoAnswer(state)])];
    case 'asked':
      return event.question.about === 'slowly'
        ? prompt(state, SAY_ALL).flatMap(inPieces)
        : answerTo(state, event.question);
    case 'witness asked':
      return [];
    case 'step witnessed':
      if (event.independent && event.agrees) return [announcing.stepInspected(event.person)];
      if (event.independent) return [announcing.stepNotPassed(event.person)];
      return [event.agrees ? announcing.stepWitnessed : announcing.stepNotAgreed];
    case 'deviation reported':
      return [
        sentence(announcing.deviation(...named(state, event), event.what)),
        ...(event.again === undefined ? [] : [announcing.notedAlready]),
      ];
    case 'reason given':
      return [prompting.isReasonCorrect(event.text)];
    case 'reason confirmed':
      return [announcing.logged, ...sayWhatToDo(state, event.of)];
    case 'deviation disregarded': {
      const deviation = state.deviations.find(({ seq }) => seq === event.of);
      return [
        deviation
          ? announcing.deviationDisregarded(sayPlace(state, deviation), deviation.what)
          : announcing.disregarded,
      ];
    }
    case 'hold begun': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      return [[announcing.held, ...(step?.kind === 'hold' ? sayOrientation(step) : [])].join(' ')];
    }
    case 'hold call': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      const call = step?.kind === 'hold' ? step.calls[event.index] : undefined;
      return call === undefined ? [] : [sentence(`${call}.`)];
    }
    case 'wait begun': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      const minutes = step?.kind === 'measure' ? step.waitMinutes : undefined;
      return [minutes === undefined ? announcing.waitBegins : announcing.waitOfBegins(sayHeldFor(minutes * 60))];
    }
    case 'value observed':
      return [readBackValue(state, event)];
    case 'value confirmed': {
      const value = state.observed.find(({ seq }) => seq === event.of);
      return [announcing.logged, ...(value ? sayOutside(value) : [])];
    }
    case 'value disregarded':
      return [announcing.disregarded];
    case 'value left open':
      return [announcing.valueLeftOpen];
    case 'disposed':
      return [announcing.disposed(event.what, event.by)];
    case 'signed':
      return [
        announcing.signed(event.person),
        ...(inspectsOwnWork(state, event) ? [announcing.notIndependent(event.person)] : []),
      ];
    case 'hold ended':
      return [
        announcing.setDown(sayHeldFor(event.seconds)),
        ...(isSetDownEarly(state, event.step) ? [announcing.setDownEarly] : []),
      ];
    case 'help called':
      return [sayHelp(state)];
    case 'left open': {
      const deviation = state.deviations.find(({ seq }) => seq === event.of);
      return deviation ? [sentence(announcing.fastenerLeftOpen(...named(state, deviation)))] : [];
    }
    case 'second person joined':
      return [announcing.secondJoined(event.name)];
    case 'second person left':
      return [announcing.secondLeft(event.name)];
    case 'handover begun':
      return [announcing.handingOver];
    case 'handed over':
      return [announcing.handedOver(event.to, event.from), ...(state.breakOf === null ? sayStanding(state) : [])];
    case 'pass restarted':
      return [announcing.passRestarted(count(event.pass))];
    case 'continued':
      return state.breakOf === null ? sayStanding(state) : [];
    case 'stood by':
      return [announcing.standingBy];
    case 'refused':
      return [sayRefusal(state, event.reason)];
    case 'answered': {
      const step = state.procedure.steps.find(({ id }) => id === event.step);
      const outcome = step?.kind === 'check' ? step.outcomes.find(({ id }) => id === event.outcome) : undefined;
      return outcome ? [outcome.text] : [];
    }
    case 'point settled':
      return sayPointAnswer(state, event);
    case 'consumable fetched':
      return [announcing.logged, sayPlain(sayFetched(state, event))];
    case 'fastener done':
      // The end of a round in which one turned opens the round again, this fastener with it.
      return isDone(state, event) ? [] : [announcing.turned(labelOf(state, event.step))];
    case 'step skipped':
      return [announcing.skipped(titleOf(state, event.step))];
    case 'step taken back':
      return [sayTakenBack(state, event)];
    case 'closed':
      return [announcing.closed, ...sayOpenPoints(state), ...sayDeferred(state), announcing.saveIt];
    case 'prepared':
    case 'warning acknowledged':
    case 'condition answered':
    case 'step done':
    case 'repeat asked':
    case 'break noticed':
    case 'break accepted':
    case 'sounds deleted':
      return [];
  }
}

export const sayTakenBack = (state: SessionState, { step }: { readonly step: string }): string =>
  announcing.takenBack(titleOf(state, step));

/** What the procedure has for such a fastener, and how the work can go on. */
function sayWhatToDo(state: SessionState, seq: number): readonly string[] {
  const deviation = state.deviations.find((each) => each.seq === seq);
  const step = state.procedure.steps.find(({ id }) => id === deviation?.step);
  if (!deviation) return [];
  const point = currentPoint(state);
  if (point?.kind === 'ordered') return [sayPlain(askPoint(state, point))];
  return [
    ...(toDoAbout(step, deviation.what) === null ? [announcing.decideByManual] : []),
    announcing.workAgainOrLeave(...named(state, deviation)),
  ];
}

/** "New round seal, good until 2027-01-31." */
function sayFetched(
  { procedure }: SessionState,
  { consumable, expires }: Extract<EventBody, { kind: 'consumable fetched' }>,
): string {
  const name = procedure.consumables.find(({ id }) => id === consumable)?.name ?? consumable;
  return sentence(announcing.fetched(name, expires));
}

/** A bad answer is said back at once; a good one is heard by what is asked next. */
function sayPointAnswer(
  { procedure }: SessionState,
  { point: key, answer, part }: Extract<EventBody, { kind: 'point settled' }>,
): readonly string[] {
  const point = pointOf(key);
  if (point === null || answer !== 'negative') return [];
  switch (point.kind) {
    case 'criterion': {
      const seal = nameOfSeal(procedure, point.seal);
      const name = points.name.criterion(part === 'new' ? points.newSeal(seal) : seal, criterionOf(procedure, point));
      return [sayPlain(announcing.criterionFailed(name))];
    }
    case 'tool':
    case 'closure':
    case 'consumable':
      return [sayPlain(announcing.findFirst(namePoint(procedure, point)))];
    default:
      return [announcing.seeToIt];
  }
}

/** Whether a weight was set down before the last call of its step: the step is still to be done. */
const isSetDownEarly = (state: SessionState, step: string): boolean =>
  currentStep(state)?.id === step && awaitsHold(state) && currentPoint(state) === null;

/** "stud one, pass one". */
const sayPlace = (state: SessionState, { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>): string =>
  place.inPass(...named(state, { step, fastener }), passInWords(pass));

function sayNoAnswer(state: SessionState): string {
  const pending = pendingReading(state);
  if (pending && awaitsWitness(state, pending)) return announcing.noAnswerOfWitness;
  return pending && asksValue(state, pending) ? announcing.noValue : announcing.noAnswer;
}

const SAY_ALL: readonly EventBody[] = [{ kind: 'repeat asked' }];

/** A sentence in pieces that are spoken one by one, with a pause after each. */
const inPieces = (text: string): readonly string[] => text.split(/(?<=[.,:;?!])\s+/u).map(sentence);

/** The weight. The lift, its limits and the container stand on the screen: while they were read out, no ear is open. */
const sayBeforeWork = ({ procedure }: SessionState): readonly string[] =>
  explainLift(procedure).facts.slice(0, 1).map(sayPlain);
