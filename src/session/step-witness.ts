/** A second person looks at what a step asks for. The one who did it cannot, and no other word stands in for theirs. */
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import { witnessIn } from './people.ts';
import { currentStep, openCondition, openWarning, type SessionState } from './state.ts';
import { stepDone } from './steps.ts';

/** Whether the word of the second person is wanted now: at a step that is only that, or when a step is done that asks for it. */
export function awaitsStepWitness(state: SessionState): boolean {
  const step = currentStep(state);
  if (step === null || openCondition(state) || openWarning(state)) return false;
  return step.kind === 'witness' || state.witnessAsked === step.id;
}

/** What the second person says of the step. Where they do not agree it is worked again, and they are asked again. */
export function takeStepWitness(state: SessionState, agrees: boolean): Decision {
  const step = currentStep(state);
  const person = witnessIn(state);
  if (step === null || !awaitsStepWitness(state)) return refuse({ code: 'nothing to witness' });
  if (person === null) return refuse({ code: 'no second person' });
  const witnessed: EventBody = { kind: 'step witnessed', step: step.id, person, agrees };
  return accept(witnessed, ...(agrees ? stepDone({ ...state, witnessAsked: null }, step, 'witnessed') : []));
}
