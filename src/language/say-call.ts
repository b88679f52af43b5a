/** How a call is spoken: the fastener, what to do to it, and the value to set. */
import type { Step } from '../procedure/procedure.ts';
import { checksForTurning, isTorqueCall, planOf, type Call } from '../session/calls.ts';
import { settingOf } from '../session/setting.ts';
import type { SessionState } from '../session/state.ts';
import { calls } from '../words/calls.ts';
import { count, digits, sentence, SPOKEN } from './say.ts';

/** "Pass two of two, final. Stud four, two four point five newton metres." */
export function sayRoundAndCall(state: SessionState, step: Step, call: Call, form = SPOKEN): string {
  const { label } = call;
  const number = form.count(call.fastener);
  if (call.pass.kind === 'running torque')
    return [calls.runningTorques(label), sentence(calls.runningTorque(label, number))].join(' ');
  const { passes } = planOf(state.procedure, step);
  const { index, name } = call.pass;
  const setting = settingOf(state, step, call);
  const called =
    setting === null || setting.value === null
      ? calls.fastener(label, number)
      : calls.fastenerTo(label, number, form.torque(setting.value));
  return [
    ...(passes.length > 1 ? [calls.pass(form.count(index), form.count(passes.length), form.name(name))] : []),
    sentence(called),
    ...(checksForTurning(call.pass) ? [calls.standsOrTurns] : []),
  ].join(' ');
}

/** Within a round the unit is known: "stud four, two four point five." */
export function sayCall(state: SessionState, step: Step, call: Call): string {
  const { label } = call;
  const number = count(call.fastener);
  if (call.pass.kind === 'running torque') return calls.runningTorque(label, number);
  const setting = isTorqueCall(call) ? settingOf(state, step, call) : null;
  return setting === null || setting.value === null
    ? calls.fastener(label, number)
    : calls.fastenerTo(label, number, digits(setting.value.value));
}
