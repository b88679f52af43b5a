/** The record in a mechanic's words: short sentences that an auditor reads as well, with figures and names. */
import { labelOf, sentence } from '../language/say.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { windowText } from '../record/reading-window.ts';
import { checksForTurning, planOf } from '../session/calls.ts';
import type { Basis, EventBody, SessionEvent } from '../session/event.ts';
import type { Question } from '../session/intent.ts';
import { callKey } from '../session/reading.ts';
import { pointFact } from '../session/point-words.ts';
import { factInWords, fetchedInWords } from '../session/preparation/in-words.ts';
import { pendingReading, type Reading, type SessionState } from '../session/state.ts';
import { awaitsWitness } from '../session/witness.ts';
import type { Kind, Written } from '../units/index.ts';
import { describeRefusal } from './describe-refusal.ts';

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
      return 'Page opened again: the work goes on where the record stops';
    case 'warning acknowledged':
      return warningAcknowledged(body, procedure);
    case 'step done':
      return `Step done: ${titleOf(procedure, body.step)}`;
    case 'step taken back':
      return `Step taken back: ${titleOf(procedure, body.step)}`;
    case 'condition answered':
      return questionAndAnswer(body, procedure);
    case 'step skipped':
      return `Step skipped, it does not apply: ${titleOf(procedure, body.step)} (${questionAndAnswer(body, procedure)})`;
    case 'answered':
      return answered(body, procedure);
    case 'wait begun':
      return `Wait begun: ${titleOf(procedure, body.step)}`;
    case 'value observed':
      return valueObserved(body, procedure);
    case 'value confirmed':
      return `Confirmed: ${valueOf(after, body.of)}`;
    case 'value rejected':
      return `Rejected: ${valueOf(after, body.of)}`;
    case 'value disregarded':
      return `Disregarded: ${valueOf(after, body.of)}`;
    case 'value left open':
      return `Left open: ${valueOf(after, body.of)}`;
    case 'disposed':
      return `Decided about entry ${body.of}: ${body.what}, by ${body.by}${body.note === null ? '' : `: “${body.note}”`}`;
    case 'signed':
      return `Signed by ${body.person} as ${body.role}`;
    case 'hold begun':
      return `Held: ${titleOf(procedure, body.step)}`;
    case 'hold call':
      return `Said to those who carry: “${callOf(body, procedure)}”`;
    case 'hold ended':
      return `Set down after ${body.seconds} s: ${titleOf(procedure, body.step)}`;
    case 'help called':
      return `HELP CALLED${body.step === null ? '' : `: ${titleOf(procedure, body.step)}`}`;
    case 'point settled':
      return pointFact(after, body);
    case 'consumable fetched':
      return fetchedInWords(body, procedure);
    case 'fastener done':
      return workDone(body, after);
    case 'reading captured':
      return captured(body, after);
    case 'witnessed':
      return `Witnessed by ${body.person}: ${shown(body.reading)}, against ${readingOf(after, body.of)}`;
    case 'disputed':
      return `Disputed, both read again: ${readingOf(after, body.of)}`;
    case 'reading confirmed':
      return `Confirmed: ${readingOf(after, body.of)}`;
    case 'reading rejected':
      return `Rejected: ${readingOf(after, body.of)}`;
    case 'reading disregarded':
      return `Disregarded: ${readingOf(after, body.of)}`;
    case 'timed out':
      return `No answer, asked again: ${readingOf(after, body.of)}`;
    case 'witness asked':
      return `Second person asked to look: ${titleOf(procedure, body.step)}`;
    case 'step witnessed':
      return `${body.independent ? (body.agrees ? 'Inspected' : 'Not passed') : body.agrees ? 'Witnessed' : 'Not agreed to'} by ${body.person}: ${titleOf(procedure, body.step)}`;
    case 'deviation reported':
    case 'reason given':
    case 'reason confirmed':
    case 'reason rejected':
    case 'deviation disregarded':
    case 'left open':
      return describeDeviation(body, after);
    case 'second person joined':
      return `${body.name} joined as second person`;
    case 'second person left':
      return `${body.name} is no longer second person`;
    case 'handover begun':
      return 'Work stopped: handing over';
    case 'handed over':
      return `Handed over from ${body.from} to ${body.to}`;
    case 'break noticed':
      return 'Somebody came back after a long break';
    case 'break accepted':
      return 'After the break: all is as it was left';
    case 'pass restarted':
      return `Pass ${body.pass} of ${titleOf(procedure, body.step)} worked again; its readings are set aside`;
    case 'repeat asked':
      return 'Asked to say again';
    case 'asked':
      return `Asked: ${ASKED[body.question.about]}${'fastener' in body.question ? ` ${body.question.fastener}` : ''}`;
    case 'stood by':
      return 'Work stopped: standing by';
    case 'continued':
      return 'Work continued';
    case 'refused':
      return describeRefusal(body, after);
    case 'closed':
      return 'All steps are done: record closed';
    case 'sounds deleted':
      return `Sounds deleted: ${body.sounds.length}; their hashes stay`;
  }
}

const ASKED: Readonly<Record<Question['about'], string>> = {
  place: 'where the work stands',
  left: 'what is left to do',
  'last readings': 'the last readings',
  logged: 'what is logged for number',
  why: 'why',
  slowly: 'to say it slowly',
};

function opened({ people }: BodyOf<'opened'>, { title, source, invented }: Procedure): string {
  const second = people.second === null ? 'no second person' : `second person ${people.second}`;
  const values = invented ? ' All values are invented.' : '';
  return `Session opened: ${title}, by ${source.document}, revision ${source.revision}.${values} Mechanic ${people.mechanic}, ${second}`;
}

/** A record from elsewhere may name what its procedure does not have: then the name itself is shown. */
const titleOf = ({ steps }: Procedure, id: string): string => steps.find((step) => step.id === id)?.title ?? id;

function valueObserved(body: BodyOf<'value observed'>, procedure: Procedure): string {
  const { value, unit, window, verdict, waited } = body;
  const judged = window ? `, ${VERDICTS[verdict]} ${window.min} to ${window.max} ${unit}` : '';
  const wait = waited === null ? '' : `, after a wait of ${waited} s`;
  return `${titleOf(procedure, body.step)}: ${value} ${unit}${judged}${wait}`;
}

const VERDICTS: Readonly<Record<BodyOf<'value observed'>['verdict'], string>> = {
  in: 'inside',
  under: 'under',
  over: 'over',
  'no window': 'not judged',
};

function valueOf({ observed, procedure }: SessionState, seq: number): string {
  const found = observed.find((each) => each.seq === seq);
  return found ? `${titleOf(procedure, found.step)}, ${found.value} ${found.unit}` : `entry ${seq}, which is no value`;
}

function callOf({ step: id, index }: BodyOf<'hold call'>, { steps }: Procedure): string {
  const step = steps.find((each) => each.id === id);
  return (step?.kind === 'hold' ? step.calls[index] : undefined) ?? `call ${index + 1} of step ${id}`;
}

function warningAcknowledged({ step, index }: BodyOf<'warning acknowledged'>, { steps }: Procedure): string {
  const hazard = steps.find(({ id }) => id === step)?.hazards[index];
  return hazard
    ? `${sentence(hazard.signal)} acknowledged: ${hazard.text}`
    : `Warning ${index + 1} of step ${step} acknowledged`;
}

function questionAndAnswer(
  { condition, is }: Pick<BodyOf<'condition answered'>, 'condition' | 'is'>,
  { conditions }: Procedure,
): string {
  return `${conditions.find(({ id }) => id === condition)?.question ?? condition} ${is ? 'Yes' : 'No'}`;
}

function answered({ step: id, outcome: answer }: BodyOf<'answered'>, procedure: Procedure): string {
  const step = procedure.steps.find((each) => each.id === id);
  const outcome = step?.kind === 'check' ? step.outcomes.find((each) => each.id === answer) : undefined;
  const said = outcome ? `“${(outcome.say ?? [outcome.id])[0]}”: ${outcome.text}` : `“${answer}”`;
  return `${titleOf(procedure, id)}, answered ${said}`;
}

type DeviationBody = BodyOf<
  | ('deviation reported' | 'reason given' | 'reason confirmed' | 'reason rejected')
  | ('deviation disregarded' | 'left open')
>;

function describeDeviation(body: DeviationBody, after: SessionState): string {
  if (body.kind === 'deviation reported')
    return `Deviation reported: ${placeOf(body, after)}, ${body.what}${body.reading === null ? '' : `, read as ${readingOf(after, body.reading)}`}`;
  const deviation = after.deviations.find(({ seq }) => seq === body.of);
  const value = after.observed.find(({ seq }) => seq === body.of);
  const place = deviation
    ? placeOf(deviation, after)
    : value
      ? valueOf(after, body.of)
      : `entry ${body.of}, which is no deviation`;
  switch (body.kind) {
    case 'reason given':
      return `Reason given for ${place}: “${body.text}”`;
    case 'reason confirmed':
      return `Reason confirmed for ${place}: “${deviation?.reason ?? value?.reason ?? ''}”`;
    case 'reason rejected':
      return `Reason rejected for ${place}`;
    case 'deviation disregarded':
      return `Deviation disregarded: ${place}`;
    case 'left open':
      return `Left open: ${place}`;
  }
}

/** "stud 4, pass 1". */
function placeOf({ step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>, state: SessionState): string {
  return `${labelOf(state, step)} ${fastener}, ${pass === 0 ? 'running torque' : `pass ${pass}`}`;
}

function workDone(body: BodyOf<'fastener done'>, state: SessionState): string {
  const step = state.procedure.steps.find(({ id }) => id === body.step);
  const pass = step && planOf(state.procedure, step).passes.find(({ index }) => index === body.pass);
  const isCheck = pass !== undefined && checksForTurning(pass);
  const what = body.turned ? 'turned' : isCheck ? 'did not turn' : 'done';
  return `${sentence(placeOf(body, state))}${pass ? ` (${pass.name})` : ''}: ${what}`;
}

function captured(body: BodyOf<'reading captured'>, state: SessionState): string {
  const waiting = pendingReading(state);
  if (waiting && awaitsWitness(state, waiting) && callKeyOf(waiting) === callKeyOf(body))
    return `${sentence(placeOf(body, state))}: value taken, not shown before the witness has read`;
  const { reading, evidence, basis, corrects, doubts = [] } = body;
  const value = `${shown(reading)}${evidence === 'click' ? ' by the click of the wrench' : ''}`;
  const instead = corrects === null ? '' : `. It stands in for ${readingOf(state, corrects)}`;
  return `${sentence(placeOf(body, state))}: ${value}, ${verdictOn(body.verdict, basis, state.procedure)}${instead}${doubts.length > 0 ? `. In doubt: ${doubts.join(', ')}` : ''}`;
}

const callKeyOf = ({ step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>): string =>
  callKey(step, pass, fastener);

/** The reading that an event is about: "stud 4, pass 1, 24.5 N·m". */
function readingOf(state: SessionState, seq: number): string {
  const reading = state.readings.find((each) => each.seq === seq);
  return reading ? `${placeOf(reading, state)}, ${shown(reading.reading)}` : `entry ${seq}, which is no reading`;
}

function verdictOn(verdict: Reading['verdict'], basis: Basis, procedure: Procedure): string {
  const window = basis.of === 'torque' ? `the window ${windowOf(basis, procedure)}` : 'what the step allows';
  const minimum =
    basis.of === 'running torque' && basis.minimum ? `the minimum ${shown(basis.minimum)}` : 'the minimum';
  switch (verdict) {
    case 'in':
      if (basis.of === 'torque') return `inside ${window}`;
      return basis.minimum ? `not below ${minimum}` : 'no minimum is stated';
    case 'under':
      return `under ${window}`;
    case 'over':
      return basis.of === 'torque' ? `over ${window}` : 'too much for the tools of this step';
    case 'not provable':
      return `too near a limit of ${window} for this tool to prove`;
    case 'nut worn':
      return `below ${minimum}: the nut is worn`;
  }
}

/** The limits are at the wrench where that is not the value of the manual. */
const windowOf = (basis: Extract<Basis, { of: 'torque' }>, procedure: Procedure): string =>
  `${windowText(basis, procedure)}${basis.adapter || basis.runningTorque ? ' at the wrench' : ''}`;

const shown = ({ value, unit }: Written<Kind>): string => `${value} ${unit}`;
