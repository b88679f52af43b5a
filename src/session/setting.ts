import { adapterOf, atWrench } from '../procedure/lead-hand.ts';
import type { Procedure, Step, TightenStep, Tool } from '../procedure/procedure.ts';
import { acceptedMark } from '../procedure/tool-reasons.ts';
import {
  acceptanceWindow,
  type Adapter,
  type JudgingRule,
  type TorqueTarget,
  type TorqueWindow,
  USUAL_FACTOR,
} from '../tightening/index.ts';
import { decimalOf, textOf } from '../units/decimal.ts';
import { convert, fromWritten, limits, torque, toWritten, type Torque, type Written } from '../units/index.ts';
import { RUNNING_ROUND, toolOf, type Call } from './calls.ts';
import type { Basis, WrittenRule } from './event.ts';
import { standingReading, type SessionState } from './state.ts';

/** What a wrench is set to for one fastener in one pass, and how that came about. */
export interface Setting {
  /** The manual's target and window, at the fastener. */
  readonly wanted: TorqueTarget;
  /** The running torque of this nut, where the step asks for it. */
  readonly runningTorque: Torque | null;
  readonly adapter: Adapter | null;
  readonly tool: Tool;
  /** Target and window at the wrench, in the unit of the tool and in full precision: readings are judged by these. */
  readonly atWrench: TorqueTarget;
  readonly judging: JudgingRule;
  /** What the rule of judging accepts of the window at the wrench; null where it accepts nothing. */
  readonly accepted: TorqueWindow | null;
  /**
   * What is called out and set: the accepted mark of the tool nearest to the target. Null where a setting tool has no such
   * mark: then it may not be used.
   */
  readonly value: Written<'torque'> | null;
}

/** The setting of a call; null where no torque is reached for. */
export function settingOf(state: SessionState, step: Step, { pass, fastener }: Call): Setting | null {
  if (step.kind !== 'tighten' || pass.target === null) return null;
  return settingFor(state.procedure, step, pass, runningTorqueOf(state, step, fastener));
}

/** The setting for a value at the fastener. @throws Refused `nut-worn` where the running torque is below the least. */
export function settingFor(
  procedure: Procedure,
  step: TightenStep,
  { target, window }: TorqueTarget,
  runningTorque: Torque | null,
): Setting {
  const tool = toolOf(procedure, step);
  const { unit } = tool.range.max;
  const exact = atWrench(procedure, step, { target, window }, runningTorque ?? undefined);
  const inUnit: TorqueTarget = {
    target: convert(exact.target, unit),
    window: limits(convert(exact.window.min, unit), convert(exact.window.max, unit)),
  };
  return {
    wanted: { target, window },
    runningTorque,
    adapter: adapterOf(procedure, step),
    tool,
    atWrench: inUnit,
    judging: step.judging,
    accepted: acceptanceWindow(inUnit.window, step.judging),
    value: calledValue(inUnit, step, tool),
  };
}

/** The mark to set. A tool that shows can be pulled to the target between its marks; one that is set cannot. */
function calledValue(atWrench: TorqueTarget, { judging }: TightenStep, tool: Tool): Written<'torque'> | null {
  const mark = acceptedMark(tool, atWrench, judging) ?? (tool.type === 'indicating' ? atWrench.target : null);
  if (mark === null) return null;
  // Six digits, so that the dust of a conversion is neither spoken nor recorded.
  return toWritten(torque(Number(mark.value.toPrecision(6)), mark.unit));
}

/** The running torque that stands for a nut; null where the step asks for none or none was confirmed yet. */
function runningTorqueOf(state: SessionState, step: TightenStep, fastener: number): Torque | null {
  if (!step.runDown) return null;
  const standing = standingReading(state, step.id, RUNNING_ROUND, fastener);
  return standing?.verdict === 'in' ? fromWritten('torque', standing.reading) : null;
}

/** What a torque reading is judged by, as it goes into the record. A tool without a mark to set takes no reading. */
export function basisOf(setting: Setting, step: TightenStep): Basis {
  const { wanted, runningTorque, adapter, tool, atWrench, judging, accepted, value } = setting;
  if (value === null) throw new Error(`Step "${step.id}" has no setting for its tool.`);
  return {
    of: 'torque',
    tool: tool.id,
    target: toWritten(wanted.target),
    runningTorque: runningTorque && toWritten(runningTorque),
    adapter: adapter && {
      lever: toWritten(adapter.lever),
      length: toWritten(adapter.length),
      angle: toWritten(adapter.angle),
    },
    setting: value,
    window: writtenWindow(atWrench.window),
    accepted: accepted && writtenWindow(accepted),
    judging: writtenRule(judging),
  };
}

const writtenWindow = ({ min, max }: TorqueWindow) => ({ min: toWritten(min), max: toWritten(max) });

/** A rule with the factor that holds where none is stated. */
function writtenRule(judging: JudgingRule): WrittenRule {
  switch (judging.rule) {
    case 'simple':
      return judging;
    case 'guard band':
      return {
        rule: judging.rule,
        uncertainty: toWritten(judging.uncertainty),
        factor: decimalText(judging.factor ?? USUAL_FACTOR),
      };
    case 'relative tool error':
      return { rule: judging.rule, errorPercent: decimalText(judging.errorPercent) };
  }
}

const decimalText = (value: number): string => textOf(decimalOf(value));
