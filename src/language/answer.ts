/** Answers to questions about the work. They say what is known and change nothing. */
import type { Question } from '../session/intent.ts';
import { planOf } from '../session/calls.ts';
import { openPoints } from '../session/deviations.ts';
import { pendingValue } from '../session/observed.ts';
import { settingOf } from '../session/setting.ts';
import {
  currentCall,
  currentStep,
  openCalls,
  pendingReading,
  standingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { awaitsWitness } from '../session/witness.ts';
import { explainSetting } from './explain.ts';
import { sayRoundAndCall } from './say-call.ts';
import { count, digits, labelOf, sayPlain, sentence } from './say.ts';

/**
 * The answer to a question, in sentences to speak; [] for "say slowly", where what is wanted now is the answer.
 * A reading that waits for its confirmation, or for its witness, is in none of them.
 */
export function answerTo(state: SessionState, question: Question): readonly string[] {
  switch (question.about) {
    case 'place':
      return place(state);
    case 'left':
      return left(state);
    case 'last readings':
      return lastReadings(state);
    case 'logged':
      return [logged(state, question.fastener)];
    case 'why':
      return [why(state)];
    case 'slowly':
      return [];
  }
}

function place(state: SessionState): readonly string[] {
  const step = currentStep(state);
  if (!step) return ['All steps are done.'];
  const call = currentCall(state);
  return [
    `Step ${count(state.at + 1)} of ${count(state.procedure.steps.length)}: ${step.title}.`,
    ...(call ? [sayRoundAndCall(state, step, call)] : []),
  ];
}

function left(state: SessionState): readonly string[] {
  const open = openCalls(state);
  const [call] = open;
  const after = Math.max(0, state.procedure.steps.length - state.at - 1);
  const steps = `${count(after)} ${after === 1 ? 'step' : 'steps'} after this one.`;
  const points = openPoints(state).length;
  const deviations = points === 0 ? [] : [`${sentence(count(points))} to be decided about.`];
  if (!call) return [sentence(steps), ...deviations];
  const inRound = open.filter(({ pass }) => pass.index === call.pass.index).length;
  const later = open.length - inRound;
  const here = `In this pass, ${count(inRound)} to do`;
  return [later > 0 ? `${here}; in later passes, ${count(later)}.` : `${here}.`, sentence(steps), ...deviations];
}

/** As many as can be kept in mind. */
const LAST = 3;

function lastReadings(state: SessionState): readonly string[] {
  const last = state.readings.filter(({ status }) => status === 'confirmed').slice(-LAST);
  if (last.length === 0) return ['Nothing is logged yet.'];
  return last.map(
    (reading) => `${sentence(labelOf(state, reading.step))} ${count(reading.fastener)}, ${value(reading)}.`,
  );
}

/** Of the step that is worked, or of the newest reading's where that one has no fasteners. */
function logged(state: SessionState, fastener: number): string {
  const { steps } = state.procedure;
  const newest = steps.find(({ id }) => id === state.readings.at(-1)?.step);
  const step = [currentStep(state), newest].find((each) => each && planOf(state.procedure, each).calls.length > 0);
  if (!step) return 'Nothing is logged yet.';
  const named = `${labelOf(state, step.id)} ${count(fastener)}`;
  const { running, passes } = planOf(state.procedure, step);
  const standing = [...(running ? [running] : []), ...passes].flatMap(
    ({ index }) => standingReading(state, step.id, index, fastener) ?? [],
  );
  if (standing.length === 0) return `Nothing is logged for ${named}.`;
  return sentence(`${named}: ${standing.map(value).join('; ')}.`);
}

/** "pass two, two four point five". */
const value = ({ pass, basis, reading }: Reading): string =>
  `${basis.of === 'running torque' ? 'running torque' : `pass ${count(pass)}`}, ${digits(reading.value)}`;

function why(state: SessionState): string {
  const step = currentStep(state);
  const call = currentCall(state);
  const pending = pendingReading(state);
  if (pending && awaitsWitness(state, pending))
    return 'Two people read the tool, and neither is told what the other read. The second person reads now.';
  if (pending || pendingValue(state))
    return 'A value counts once it is confirmed. Say affirm if it is what you read, else negative.';
  const setting = step && call && settingOf(state, step, call);
  if (setting) return `${sentence(sayPlain(explainSetting(setting)))}.`;
  const { document, revision } = state.procedure.source;
  return `The procedure has it so. It follows ${document}, revision ${revision}.`;
}
