/** The fastener that is called, with what is to be set and what speaks against it. */
import { explainPlan, explainSetting, explainTool } from '../../language/explain.ts';
import { sayRefusal } from '../../language/say-refusal.ts';
import { minimumRunningTorque } from '../../procedure/lead-hand.ts';
import { placesOf } from '../../procedure/places.ts';
import type { Procedure, Step } from '../../procedure/procedure.ts';
import { forbids } from '../../procedure/tool-reasons.ts';
import { planOf, runningToolOf, toolFor, type Call } from '../../session/calls.ts';
import { ordersOnCall } from '../../session/deviations.ts';
import { jointRefusal } from '../../session/seals.ts';
import { settingOf, type Setting } from '../../session/setting.ts';
import { isSettled, isUntouched, standingReading, type Reading, type SessionState } from '../../session/state.ts';
import { toolTroubles } from '../../session/tools.ts';
import type { TorqueWindow } from '../../tightening/verdict.ts';
import { display, displayWindow } from '../../units/index.ts';
import { announcing } from '../../words/announcing.ts';
import { workView as words } from '../../words/work-view.ts';

export interface CallView {
  readonly label: string;
  readonly fastener: number;
  /** "Pass 1 of 2: first", or the round before the passes. */
  readonly round: string;
  /** What to set, as decimal text and unit; null where no torque is reached for. */
  readonly target: { readonly value: string; readonly unit: string } | null;
  /** What stands in place of a value to set: something is read, or done by hand. */
  readonly instead: 'read it' | 'by hand';
  /** At the wrench, in the unit of the tool, limits rounded inwards. */
  readonly window: string | null;
  /** What a running torque must reach, where a minimum is stated. */
  readonly minimum: string | null;
  readonly why: string | null;
  readonly tool: string | null;
  /** What was read of this fastener in this round and is not inside: it stays in sight until a reading is. */
  readonly outside: Reading | null;
  readonly left: number;
  /** What the procedure has done about this fastener, because of its deviation or of a value over its window. */
  readonly toDo: string | null;
  /** How the step is gone about, as long as nothing of it is done. */
  readonly plan: string | null;
  /** What speaks against the tools; the work stops where one of them may not be used. */
  readonly troubles: readonly { readonly text: string; readonly stops: boolean }[];
}

export function callView(state: SessionState, step: Step, call: Call): CallView {
  const { procedure } = state;
  const plan = planOf(procedure, step);
  const setting = settingOf(state, step, call);
  const isRunning = call.pass.kind === 'running torque';
  return {
    label: call.label,
    fastener: call.fastener,
    round: isRunning ? words.runningTorque : words.passNamed(call.pass.index, plan.passes.length, call.pass.name),
    target: setting && setting.value,
    instead: isRunning ? 'read it' : 'by hand',
    window: setting && windowOf(setting),
    minimum: isRunning ? minimumOf(procedure, step) : null,
    why: setting && explainSetting(setting),
    tool: step.kind === 'tighten' && (setting || isRunning) ? toolFor(procedure, step, call.pass.index).name : null,
    outside: standingReading(state, step.id, call.pass.index, call.fastener),
    left: plan.calls.filter(
      ({ pass, fastener }) => pass.index === call.pass.index && !isSettled(state, step.id, pass, fastener),
    ).length,
    toDo: toDoNow(state, step),
    plan: isUntouched(state, step) ? explainPlan(procedure, step) : null,
    troubles:
      step.kind === 'tighten'
        ? [
            ...jointTrouble(state, step),
            ...toolTroubles(state, step, call).map((trouble) => ({
              text: explainTool(trouble),
              stops: trouble.reasons.some(forbids),
            })),
          ]
        : [],
  };
}

function jointTrouble(state: SessionState, step: Step): CallView['troubles'] {
  const refusal = jointRefusal(state, step);
  return refusal ? [{ text: sayRefusal(state, refusal), stops: true }] : [];
}

/** What is asked about stands first. Of what the procedure says nothing about, the manual decides. */
function toDoNow(state: SessionState, step: Step): string | null {
  const orders = ordersOnCall(state, step);
  return orders.find(({ text }) => text !== null)?.text ?? (orders.length > 0 ? announcing.decideByManual : null);
}

/** The window of the manual, and what the rule of judging accepts of it where that is less. */
function windowOf({ atWrench, accepted, judging, tool }: Setting): string {
  const shown = (window: TorqueWindow): string => displayWindow(window, tool.range.max.unit, placesOf(tool));
  if (judging.rule === 'simple') return shown(atWrench.window);
  return accepted
    ? words.accepted(shown(atWrench.window), shown(accepted), judging.rule)
    : words.nothingAccepted(shown(atWrench.window), judging.rule);
}

/** The minimum is rounded up: what is shown as enough is enough. */
function minimumOf(procedure: Procedure, step: Step): string | null {
  if (step.kind !== 'tighten') return null;
  const minimum = minimumRunningTorque(step);
  const tool = runningToolOf(procedure, step);
  return minimum && display(minimum, tool.range.max.unit, placesOf(tool), 'up');
}
