/** Whether the tools of a step may be used for what is asked of them, on a day. */
import {
  acceptanceWindow,
  nearestMark,
  reasonsAgainst,
  usableRange,
  type JudgingRule,
  type ReasonAgainst,
  type TorqueTarget,
} from '../tightening/index.ts';
import { written } from '../tightening/target.ts';
import { compare, type Torque } from '../units/index.ts';
import { wrench } from '../words/wrench.ts';
import type { Procedure } from './schema.ts';

type Tool = Procedure['tools'][number];

export interface ToolReason {
  readonly code: ReasonAgainst['code'] | 'no mark in the window' | 'shows no torque' | 'running torque uncertain';
  readonly sentence: string;
}

/** These are told, and the mechanic decides: a label can be looked at, a coarse or low scale read with care. */
const ADVICE: ReadonlySet<ToolReason['code']> = new Set([
  'calibration unknown',
  'too coarse',
  'running torque uncertain',
]);

/** Whether a reason forbids the tool; the others only advise. */
export const forbids = ({ code }: ToolReason): boolean => !ADVICE.has(code);

/** The date is not read where a tool has none of its own; any day will do. */
const ANY_DAY = '2000-01-01';

/**
 * The mark to set or pull to for a value at the wrench: the nearest that the rule of judging accepts; null where there is
 * none, so that no click of a setting tool could prove anything.
 */
export function acceptedMark({ resolution }: Tool, { target, window }: TorqueTarget, rule: JudgingRule): Torque | null {
  const accepted = acceptanceWindow(window, rule);
  return accepted && nearestMark(target, accepted, resolution);
}

/**
 * Why a tool should not be used for these values at the wrench, in the tool's unit; each reason once.
 * @param judging the rule by which the values are judged
 * @param day 'YYYY-MM-DD'; null where no day is known: then the calibration is not judged
 */
export function reasonsAgainstTool(
  tool: Tool,
  values: readonly TorqueTarget[],
  judging: JudgingRule,
  day: string | null,
): ToolReason[] {
  const on = day ?? tool.calibrationDue ?? ANY_DAY;
  const reasons = values.flatMap((value): ToolReason[] => [
    ...reasonsAgainst(tool, value.target, on),
    ...(tool.type === 'setting' && acceptedMark(tool, value, judging) === null
      ? [{ code: 'no mark in the window', sentence: noMark(judging) } as const]
      : []),
  ]);
  return [...new Map(reasons.map((reason) => [reason.sentence, reason])).values()];
}

const noMark = ({ rule }: JudgingRule): string => (rule === 'simple' ? wrench.noMark : wrench.noMarkByRule(rule));

/** Why a tool should not be used to measure running torque, down to the least value it must show. */
export function reasonsAgainstMeasuring(tool: Tool, lowest: Torque, day: string | null): ToolReason[] {
  if (tool.type === 'setting') return [{ code: 'shows no torque', sentence: wrench.showsNoTorque }];
  return reasonsAgainst(tool, lowest, day ?? tool.calibrationDue ?? ANY_DAY);
}

/** What is to be said about a running torque that was measured where its tool is not good for much; empty elsewhere. */
export function reservationsOn(tool: Tool, runningTorque: Torque): ToolReason[] {
  const { min } = usableRange(tool);
  if (compare(runningTorque, min) >= 0) return [];
  const sentence = wrench.runningUncertain(written(runningTorque), written(min));
  return [{ code: 'running torque uncertain', sentence }];
}
