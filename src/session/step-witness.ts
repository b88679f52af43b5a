/** A second person looks at what a step asks for. The one who did it cannot, and no other word stands in for theirs. */
import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import { tidyName, tookPart, witnessIn } from './people.ts';
import { currentPoint } from './points.ts';
import { currentStep, openCondition, openWarning, type SessionState } from './state.ts';
import { stepDone } from './steps.ts';

/** Whether the word of the second person is wanted now: at a step that is only that, or when a step is done that asks for it. */
export function awaitsStepWitness(state: SessionState): boolean {
  const step = currentStep(state);
  if (step === null || openCondition(state) || openWarning(state) || currentPoint(state)) return false;
  return step.kind === 'witness' || state.witnessAsked === step.id;
}

/** What the second person says of the step. Where they do not agree it is worked again, and they are asked again. */
export function takeStepWitness(state: SessionState, agrees: boolean): Decision {
  const step = currentStep(state);
  const person = witnessIn(state);
  if (step === null || !awaitsStepWitness(state)) return refuse({ code: 'nothing to witness' });
  if (wantsInspector(step)) return refuse({ code: 'inspector first' });
  if (person === null) return refuse({ code: 'no second person' });
  const witnessed: EventBody = { kind: 'step witnessed', step: step.id, person, agrees };
  return accept(witnessed, ...(agrees ? stepDone({ ...state, witnessAsked: null }, step, 'witnessed') : []));
}

/** Whether a step wants somebody who took no part in the work, and who gives their name for it. */
export const wantsInspector = (step: Step): boolean => step.kind === 'witness' && step.independent;

/** What an inspector says of the step, under their own name. Who took part in this session is not taken. */
export function takeInspection(
  state: SessionState,
  { name, agrees }: { readonly name: string; readonly agrees: boolean },
): Decision {
  const step = currentStep(state);
  if (step === null || !wantsInspector(step) || !awaitsStepWitness(state))
    return refuse({ code: 'nothing to witness' });
  if (tidyName(name) === '') return refuse({ code: 'no name' });
  // Common practice: an independent check is by somebody who had no part in what is checked.
  if (tookPart(state, name)) return refuse({ code: 'own work', name: tidyName(name) });
  const inspected: EventBody = {
    kind: 'step witnessed',
    step: step.id,
    person: tidyName(name),
    agrees,
    independent: true,
  };
  return accept(inspected, ...(agrees ? stepDone({ ...state, witnessAsked: null }, step, 'witnessed') : []));
}
