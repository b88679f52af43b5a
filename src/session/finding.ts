/** What a value says of its fastener, and what it was judged by. */
import { minimumRunningTorque } from '../procedure/lead-hand.ts';
import type { TightenStep } from '../procedure/procedure.ts';
import { judge } from '../tightening/verdict.ts';
import { fromWritten, toWritten, type Written } from '../units/index.ts';
import { isReadCall, planOf, toolFor, type ReadCall } from './calls.ts';
import type { Basis, Finding } from './event.ts';
import type { Reading } from './reading.ts';
import { basisOf, settingOf } from './setting.ts';
import type { SessionState } from './state.ts';
import { findingOnRunning } from './tools.ts';

/** Judges a value for a call, in the unit of its tool. */
export function findingOf(
  state: SessionState,
  step: TightenStep,
  call: ReadCall,
  reading: Written<'torque'>,
): { readonly verdict: Finding; readonly basis: Basis } {
  const value = fromWritten('torque', reading);
  const setting = settingOf(state, step, call);
  if (setting)
    return { verdict: judge(value, setting.atWrench.window, step.judging).outcome, basis: basisOf(setting, step) };
  const minimum = minimumRunningTorque(step);
  const tool = toolFor(state.procedure, step, call.pass.index).id;
  const basis: Basis = { of: 'running torque', tool, minimum: minimum && toWritten(minimum) };
  return { verdict: findingOnRunning(state, step, value), basis };
}

/** The call that a reading is of. */
export function callOf(state: SessionState, step: TightenStep, { seq, pass, fastener }: Reading): ReadCall {
  const call = planOf(state.procedure, step)
    .calls.filter(isReadCall)
    .find((candidate) => candidate.pass.index === pass && candidate.fastener === fastener);
  if (!call) throw new Error(`Reading ${seq} is about no call of step "${step.id}".`);
  return call;
}
