/** Answers to questions about the work. They say what is known and change nothing. */
import type { Question } from '../session/intent.ts';
import { planOf } from '../session/calls.ts';
import { stillOpen } from '../session/closing.ts';
import { orderOnCall } from '../session/deviations.ts';
import { pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { openReason } from '../session/reasons.ts';
import { settingOf } from '../session/setting.ts';
import {
  currentCall,
  currentStep,
  openCalls,
  openCondition,
  openWarning,
  pendingReading,
  standingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { asksValue, awaitsWitness } from '../session/witness.ts';
import { answers } from '../words/answers.ts';
import { explainSetting } from './explain.ts';
import { askAboutDoubt } from './read-back.ts';
import { sayRoundAndCall } from './say-call.ts';
import { labelOf, named, sentence, SPOKEN, type Form } from './say.ts';

/**
 * The answer to a question, in sentences; [] for "say slowly", where what is wanted now is the answer.
 * A reading that waits for its confirmation, or for its witness, is in none of them.
 * @param form for the ear or for the eye
 */
export function answerTo(state: SessionState, question: Question, form = SPOKEN): readonly string[] {
  switch (question.about) {
    case 'place':
      return place(state, form);
    case 'left':
      return left(state, form);
    case 'last readings':
      return lastReadings(state, form);
    case 'logged':
      return [logged(state, question.fastener, form)];
    case 'why':
      return [why(state, form)];
    case 'slowly':
      return [];
  }
}

function place(state: SessionState, form: Form): readonly string[] {
  const step = currentStep(state);
  if (!step) return [answers.allDone];
  const call = currentCall(state);
  return [
    answers.place(form.count(state.at + 1), form.count(state.procedure.steps.length), step.title),
    ...(call ? [sayRoundAndCall(state, step, call, form)] : []),
  ];
}

function left(state: SessionState, { count }: Form): readonly string[] {
  const open = openCalls(state);
  const [call] = open;
  const after = Math.max(0, state.procedure.steps.length - state.at - 1);
  const steps = sentence(answers.stepsAfter(after, count(after)));
  const points = stillOpen(state).length;
  const deviations = points === 0 ? [] : [sentence(answers.toDecide(count(points)))];
  if (!call) return [steps, ...deviations];
  const inRound = open.filter(({ pass }) => pass.index === call.pass.index).length;
  const later = open.length - inRound;
  const inPasses =
    later > 0 ? answers.inThisAndLater(count(inRound), count(later)) : answers.inThisPass(count(inRound));
  return [inPasses, steps, ...deviations];
}

/** As many as can be kept in mind. */
const LAST = 3;

function lastReadings(state: SessionState, form: Form): readonly string[] {
  const last = state.readings.filter(({ status }) => status === 'confirmed').slice(-LAST);
  if (last.length === 0) return [answers.nothingLogged];
  return last.map((reading) => sentence(answers.lastReading(...named(state, reading, form), value(reading, form))));
}

/** Of the step that is worked, or of the newest reading's where that one has no fasteners. */
function logged(state: SessionState, fastener: number, form: Form): string {
  const { steps } = state.procedure;
  const newest = steps.find(({ id }) => id === state.readings.at(-1)?.step);
  const step = [currentStep(state), newest].find((each) => each && planOf(state.procedure, each).calls.length > 0);
  if (!step) return answers.nothingLogged;
  const label = labelOf(state, step.id);
  const { running, passes } = planOf(state.procedure, step);
  const standing = [...(running ? [running] : []), ...passes].flatMap(
    ({ index }) => standingReading(state, step.id, index, fastener) ?? [],
  );
  if (standing.length === 0) return answers.nothingLoggedFor(label, form.count(fastener));
  return sentence(
    answers.logged(
      label,
      form.count(fastener),
      standing.map((each) => value(each, form)),
    ),
  );
}

/** "pass two, two four point five". */
const value = ({ pass, basis, reading }: Reading, form: Form): string =>
  answers.valueIn(basis.of === 'running torque' ? null : form.count(pass), form.value(reading));

function why(state: SessionState, form: Form): string {
  const step = currentStep(state);
  const call = currentCall(state);
  const pending = pendingReading(state);
  if (pending && awaitsWitness(state, pending)) return answers.whyBlind;
  if (openReason(state)) return answers.whyReason;
  const again = pending && asksValue(state, pending) && askAboutDoubt(state, pending);
  if (again) return again;
  if (pending || pendingValue(state)) return answers.whyConfirm;
  const point = currentPoint(state);
  const order = step && point?.kind === 'ordered' && orderOnCall(state, step);
  if (call && order) {
    const what = state.deviations.find(({ seq }) => seq === order.of)?.what ?? 'over torque';
    return sentence(form.plain(answers.whyOrdered(call.label, String(call.fastener), what, order.text)));
  }
  // No value is what is asked about where a warning or a point comes first.
  const isCalled = point === null && openWarning(state) === null && openCondition(state) === null;
  const setting = isCalled && step && call && settingOf(state, step, call);
  if (setting) return `${sentence(form.plain(explainSetting(setting)))}.`;
  const { document, revision } = state.procedure.source;
  return answers.whyProcedure(document, revision);
}
