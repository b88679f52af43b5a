import { isWorn, minimumRunningTorque } from '../procedure/lead-hand.ts';
import type { Procedure, Step, TightenStep, Tool } from '../procedure/procedure.ts';
import {
  forbids,
  reasonsAgainstMeasuring,
  reasonsAgainstTool,
  reservationsOn,
  type ToolReason,
} from '../procedure/tool-reasons.ts';
import { compare, type Torque } from '../units/index.ts';
import { planOf, runningToolOf, toolOf, type Call } from './calls.ts';
import type { Finding } from './event.ts';
import type { Refusal } from './refusal.ts';
import { settingFor, settingOf } from './setting.ts';
import type { SessionState } from './state.ts';

/** A tool of a step, and what speaks against it. */
export interface ToolTrouble {
  readonly tool: Tool;
  readonly reasons: readonly ToolReason[];
}

/**
 * What speaks against the tools of a step: for all its passes, and for the setting of the call that is open. What the
 * running torque of a nut may still change is only judged at its call.
 */
export function toolTroubles(state: SessionState, step: TightenStep, call: Call | null): readonly ToolTrouble[] {
  const { measuring, foreseen } = foreseenFor(state.procedure, step, state.day);
  const setting = step.runDown && call ? settingOf(state, step, call) : null;
  if (!setting) return [...measuring, ...foreseen];
  const tool = toolOf(state.procedure, step);
  const now = reasonsAgainstTool(tool, [setting.atWrench], step.judging, state.day);
  const reasons = [...foreseen.flatMap((trouble) => trouble.reasons), ...now];
  const dial = runningToolOf(state.procedure, step);
  const reserved = setting.runningTorque ? troubles(dial, reservationsOn(dial, setting.runningTorque)) : [];
  const distinct = [...new Map(reasons.map((reason) => [reason.code, reason])).values()];
  return [...measuring, ...reserved, ...troubles(tool, distinct)];
}

interface Foreseen {
  readonly measuring: readonly ToolTrouble[];
  readonly foreseen: readonly ToolTrouble[];
}

interface Known {
  readonly procedure: Procedure;
  readonly day: string | null;
  readonly found: Foreseen;
}

/** It follows from the procedure and the day alone, and is asked for with every call: found once. */
const known = new WeakMap<Step, Known>();

function foreseenFor(procedure: Procedure, step: TightenStep, day: string | null): Foreseen {
  const before = known.get(step);
  // Calibration and adapter may have been found otherwise than the file has them, in the same steps.
  if (before?.day === day && before.procedure === procedure) return before.found;
  const found = foresee(procedure, step, day);
  known.set(step, { procedure, day, found });
  return found;
}

function foresee(procedure: Procedure, step: TightenStep, day: string | null): Foreseen {
  const { running, passes } = planOf(procedure, step);
  const tool = toolOf(procedure, step);
  const minimum = minimumRunningTorque(step);
  const values = passes.flatMap((pass) =>
    pass.target === null ? [] : [settingFor(procedure, step, pass, minimum).atWrench],
  );
  const reasons = reasonsAgainstTool(tool, values, step.judging, day).filter(
    ({ code }) => !step.runDown || CERTAIN.has(code),
  );
  const dial = runningToolOf(procedure, step);
  return {
    measuring: running ? troubles(dial, reasonsAgainstMeasuring(dial, minimum ?? dial.range.max, day)) : [],
    foreseen: troubles(tool, reasons),
  };
}

const troubles = (tool: Tool, reasons: readonly ToolReason[]): readonly ToolTrouble[] =>
  reasons.length > 0 ? [{ tool, reasons }] : [];

/** True whatever the running torque turns out to be: it only adds. */
const CERTAIN: ReadonlySet<ToolReason['code']> = new Set(['calibration unknown', 'calibration expired', 'above range']);

/**
 * What a running torque means: the nut is worn, its tool has no mark so low, or it asks more than the tools of the step
 * can show or apply. Then it is measured again, or the manual decides; no setting is worked out from it.
 */
export function findingOnRunning({ procedure }: SessionState, step: TightenStep, runningTorque: Torque): Finding {
  if (isWorn(step, runningTorque)) return 'nut worn';
  const dial = runningToolOf(procedure, step);
  if (compare(runningTorque, dial.range.min) < 0) return 'not provable';
  const isTooMuch = (value: Torque, { range }: Tool): boolean => compare(value, range.max) > 0;
  const tool = toolOf(procedure, step);
  const settings = planOf(procedure, step).passes.flatMap((pass) =>
    pass.target === null ? [] : [settingFor(procedure, step, pass, runningTorque).atWrench.target],
  );
  return isTooMuch(runningTorque, dial) || settings.some((each) => isTooMuch(each, tool)) ? 'over' : 'in';
}

/** The refusal of a call whose tool may not be used; null where nothing forbids it. */
export function toolRefusal(state: SessionState, step: Step, call: Call): Refusal | null {
  if (step.kind !== 'tighten') return null;
  const [trouble] = toolTroubles(state, step, call).filter(({ reasons }) => reasons.some(forbids));
  return trouble ? { code: 'tool not usable', tool: trouble.tool.id, reasons: trouble.reasons.filter(forbids) } : null;
}
