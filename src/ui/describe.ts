/** The record in a mechanic's words: short sentences that an auditor reads as well, with figures and names. */
import { sentence } from '../language/say.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { windowText } from '../record/reading-window.ts';
import { checksForTurning, planOf } from '../session/calls.ts';
import type { Basis, EventBody, SessionEvent } from '../session/event.ts';
import type { Question } from '../session/intent.ts';
import { inspectsOwnWork } from '../session/people.ts';
import { callKey } from '../session/reading.ts';
import { pointFact } from '../session/point-words.ts';
import { factInWords, fetchedInWords } from '../session/preparation/in-words.ts';
import { pendingReading, type Reading, type SessionState } from '../session/state.ts';
import { isKept } from '../session/witness.ts';
import type { Kind, Written } from '../units/index.ts';
import { entries } from '../words/entries.ts';
import { readingEntries } from '../words/reading-entries.ts';
import { describeRefusal } from './describe-refusal.ts';
import { placeOf } from './view/place.ts';

type BodyOf<K extends EventBody['kind']> = Extract<EventBody, { kind: K }>;

/**
 * One event as a line of the record.
 * @param after the state after the event: titles, labels and the readings it is about are looked up there
 */
export function describe({ body }: Pick<SessionEvent, 'body'>, after: SessionState): string {
  const { procedure } = after;
  switch (body.kind) {
    case 'opened':
      return opened(body, procedure);
    case 'prepared':
      return factInWords(body.fact, procedure);
    case 'reopened':
      return entries.reopened;
    case 'warning acknowledged':
      return warningAcknowledged(body, procedure);
    case 'step done':
      return entries.stepDone(titleOf(procedure, body.step));
    case 'step taken back':
      return entries.stepTakenBack(titleOf(procedure, body.step));
    case 'condition answered':
      return questionAndAnswer(body, procedure);
    case 'step skipped':
      return entries.stepSkipped(titleOf(procedure, body.step), questionAndAnswer(body, procedure));
    case 'answered':
      return answered(body, procedure);
    case 'wait begun':
      return entries.waitBegun(titleOf(procedure, body.step));
    case 'value observed':
      return valueObserved(body, procedure);
    case 'value confirmed':
      return entries.confirmed(valueOf(after, body.of));
    case 'value rejected':
      return entries.rejected(valueOf(after, body.of));
    case 'value disregarded':
      return entries.disregarded(valueOf(after, body.of));
    case 'value left open':
      return entries.leftOpen(valueOf(after, body.of));
    case 'disposed':
      return entries.disposed(body.of, body.what, body.by, body.note);
    case 'signed':
      return entries.signed(body.person, body.role, inspectsOwnWork(after, body));
    case 'hold begun':
      return entries.held(titleOf(procedure, body.step));
    case 'hold call':
      return entries.holdCall(callOf(body, procedure));
    case 'hold ended':
      return entries.setDown(body.seconds, titleOf(procedure, body.step));
    case 'help called':
      return entries.helpCalled(body.step === null ? null : titleOf(procedure, body.step));
    case 'point settled':
      return pointFact(after, body);
    case 'consumable fetched':
      return fetchedInWords(body, procedure);
    case 'fastener done':
      return workDone(body, after);
    case 'reading captured':
      return captured(body, after);
    case 'witnessed':
      return witnessed(body, after);
    case 'disputed':
      return entries.disputed(readingOf(after, body.of));
    case 'reading confirmed':
      return entries.confirmed(readingOf(after, body.of));
    case 'reading rejected':
      return entries.rejected(readingOf(after, body.of));
    case 'reading disregarded':
      return entries.disregarded(readingOf(after, body.of));
    case 'timed out':
      return entries.noAnswer(readingOf(after, body.of));
    case 'witness asked':
      return entries.witnessAsked(titleOf(procedure, body.step));
    case 'step witnessed':
      return (body.independent ? entries.stepInspected : entries.stepWitnessed)(
        body.person,
        titleOf(procedure, body.step),
        body.agrees,
      );
    case 'deviation reported':
    case 'reason given':
    case 'reason confirmed':
    case 'reason rejected':
    case 'deviation disregarded':
    case 'left open':
      return describeDeviation(body, after);
    case 'second person joined':
      return entries.secondJoined(body.name);
    case 'second person left':
      return entries.secondLeft(body.name);
    case 'handover begun':
      return entries.handoverBegun;
    case 'handed over':
      return entries.handedOver(body.from, body.to);
    case 'break noticed':
      return entries.breakNoticed;
    case 'break accepted':
      return entries.breakAccepted;
    case 'pass restarted':
      return entries.passRestarted(body.pass, titleOf(procedure, body.step));
    case 'repeat asked':
      return entries.repeatAsked;
    case 'asked':
      return asked(body.question);
    case 'stood by':
      return entries.stoodBy;
    case 'continued':
      return entries.continued;
    case 'refused':
      return describeRefusal(body, after);
    case 'closed':
      return entries.closed;
    case 'sounds deleted':
      return entries.soundsDeleted(body.sounds.length);
  }
}

const asked = (question: Question): string =>
  question.about === 'logged' ? entries.askedLogged(question.fastener) : entries.asked[question.about];

function opened({ people }: BodyOf<'opened'>, { title, source, invented }: Procedure): string {
  return entries.opened({ title, ...source, invented }, people.mechanic, people.second);
}

/** A record from elsewhere may name what its procedure does not have: then the name itself is shown. */
const titleOf = ({ steps }: Procedure, id: string): string => steps.find((step) => step.id === id)?.title ?? id;

function valueObserved(body: BodyOf<'value observed'>, procedure: Procedure): string {
  const { value, unit, window, verdict, waited } = body;
  const title = titleOf(procedure, body.step);
  return window === null
    ? entries.value(title, value, unit, waited)
    : entries.valueJudged(title, value, unit, verdict, window, waited);
}

function valueOf({ observed, procedure }: SessionState, seq: number): string {
  const found = observed.find((each) => each.seq === seq);
  return found ? entries.valueNamed(titleOf(procedure, found.step), found.value, found.unit) : entries.noValue(seq);
}

function callOf({ step: id, index }: BodyOf<'hold call'>, { steps }: Procedure): string {
  const step = steps.find((each) => each.id === id);
  return (step?.kind === 'hold' ? step.calls[index] : undefined) ?? entries.unknownCall(index + 1, id);
}

function warningAcknowledged({ step, index }: BodyOf<'warning acknowledged'>, { steps }: Procedure): string {
  const hazard = steps.find(({ id }) => id === step)?.hazards[index];
  return hazard ? sentence(entries.hazard(hazard.signal, hazard.text)) : entries.unknownHazard(index + 1, step);
}

function questionAndAnswer(
  { condition, is }: Pick<BodyOf<'condition answered'>, 'condition' | 'is'>,
  { conditions }: Procedure,
): string {
  return entries.condition(conditions.find(({ id }) => id === condition)?.question ?? condition, is);
}

function answered({ step: id, outcome: answer }: BodyOf<'answered'>, procedure: Procedure): string {
  const step = procedure.steps.find((each) => each.id === id);
  const outcome = step?.kind === 'check' ? step.outcomes.find((each) => each.id === answer) : undefined;
  const title = titleOf(procedure, id);
  return outcome
    ? entries.answeredWith(title, outcome.say?.[0] ?? outcome.id, outcome.text)
    : entries.answered(title, answer);
}

type DeviationBody = BodyOf<
  | ('deviation reported' | 'reason given' | 'reason confirmed' | 'reason rejected')
  | ('deviation disregarded' | 'left open')
>;

function describeDeviation(body: DeviationBody, after: SessionState): string {
  if (body.kind === 'deviation reported') {
    const { what, reading, again } = body;
    return entries.deviation(
      placeOf(after, body),
      what,
      reading === null ? null : readingOf(after, reading),
      again ?? null,
    );
  }
  const deviation = after.deviations.find(({ seq }) => seq === body.of);
  const value = after.observed.find(({ seq }) => seq === body.of);
  const place = deviation ? placeOf(after, deviation) : value ? valueOf(after, body.of) : entries.noDeviation(body.of);
  switch (body.kind) {
    case 'reason given':
      return entries.reasonGiven(place, body.text);
    case 'reason confirmed':
      return entries.reasonConfirmed(place, deviation?.reason ?? value?.reason ?? '');
    case 'reason rejected':
      return entries.reasonRejected(place);
    case 'deviation disregarded':
      return entries.deviationDisregarded(place);
    case 'left open':
      return entries.leftOpen(place);
  }
}

function workDone(body: BodyOf<'fastener done'>, state: SessionState): string {
  const step = state.procedure.steps.find(({ id }) => id === body.step);
  const pass = step && planOf(state.procedure, step).passes.find(({ index }) => index === body.pass);
  const isCheck = pass !== undefined && checksForTurning(pass);
  const what = body.turned ? 'turned' : isCheck ? 'did not turn' : 'done';
  return sentence(entries.fastenerDone(placeOf(state, body), pass?.name ?? null, what));
}

/** The reading whose value nothing may tell now. */
function keptNow(state: SessionState): Reading | null {
  const waiting = pendingReading(state);
  return waiting && isKept(state, waiting) ? waiting : null;
}

function witnessed({ of, person, reading }: BodyOf<'witnessed'>, state: SessionState): string {
  const kept = keptNow(state);
  if (kept?.seq === of) return sentence(readingEntries.hidden(placeOf(state, kept)));
  return entries.witnessed(person, shown(reading), readingOf(state, of));
}

function captured(body: BodyOf<'reading captured'>, state: SessionState): string {
  const kept = keptNow(state);
  if (kept && callKeyOf(kept) === callKeyOf(body)) return sentence(readingEntries.hidden(placeOf(state, body)));
  const { reading, evidence, basis, corrects, doubts = [] } = body;
  const found = verdictOn(body.verdict, basis, state.procedure);
  const more = {
    byClick: evidence === 'click',
    instead: corrects === null ? null : readingOf(state, corrects),
    doubts,
  };
  return sentence(readingEntries.captured(placeOf(state, body), shown(reading), found, more));
}

const callKeyOf = ({ step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>): string =>
  callKey(step, pass, fastener);

/** The reading that an event is about: "stud 4, pass 1, 24.5 N·m". */
function readingOf(state: SessionState, seq: number): string {
  const reading = state.readings.find((each) => each.seq === seq);
  if (reading && keptNow(state)?.seq === seq) return placeOf(state, reading);
  return reading
    ? readingEntries.named(placeOf(state, reading), shown(reading.reading))
    : readingEntries.noReading(seq);
}

/** The limits are at the wrench where that is not the value of the manual. */
const verdictOn = (verdict: Reading['verdict'], basis: Basis, procedure: Procedure): string =>
  basis.of === 'torque'
    ? readingEntries.torque[verdict](windowText(basis, procedure), Boolean(basis.adapter ?? basis.runningTorque))
    : readingEntries.runningTorque[verdict](basis.minimum && shown(basis.minimum));

const shown = ({ value, unit }: Written<Kind>): string => `${value} ${unit}`;
