/** How a call is spoken: the fastener, what to do to it, and the value to set. */
import type { Step } from '../procedure/procedure.ts';
import { checksForTurning, isTorqueCall, planOf, type Call } from '../session/calls.ts';
import { settingOf } from '../session/setting.ts';
import type { SessionState } from '../session/state.ts';
import { count, digits, sayName, sayTorque, sentence } from './say.ts';

/** "Pass two of two, final. Stud four, two four point five newton metres." */
export function sayRoundAndCall(state: SessionState, step: Step, call: Call): string {
  const named = sentence(`${call.label} ${count(call.fastener)}`);
  if (call.pass.kind === 'running torque') {
    return `Running torque: read each ${call.label} as it runs down, before it seats. ${named}, running torque.`;
  }
  const { passes } = planOf(state.procedure, step);
  const { index, name } = call.pass;
  const pass = passes.length > 1 ? `Pass ${count(index)} of ${count(passes.length)}, ${sayName(name)}. ` : '';
  const setting = settingOf(state, step, call);
  const value = setting === null || setting.value === null ? '' : `, ${sayTorque(setting.value)}`;
  const question = checksForTurning(call.pass) ? ' Say next if it stands, turned if it turns.' : '';
  return `${pass}${named}${value}.${question}`;
}

/** Within a round the unit is known: "stud four, two four point five." */
export function sayCall(state: SessionState, step: Step, call: Call): string {
  const named = `${call.label} ${count(call.fastener)}`;
  if (call.pass.kind === 'running torque') return `${named}, running torque.`;
  const setting = isTorqueCall(call) ? settingOf(state, step, call) : null;
  return setting === null || setting.value === null ? `${named}.` : `${named}, ${digits(setting.value.value)}.`;
}
