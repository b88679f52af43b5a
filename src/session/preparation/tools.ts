/** The torque tools, each against its calibration and against every pass in which it is used. */
import type { Procedure, Step, TightenStep, Tool } from '../../procedure/procedure.ts';
import { minimumRunningTorque } from '../../procedure/lead-hand.ts';
import { reasonsAgainstMeasuring, reasonsAgainstTool, type ToolReason } from '../../procedure/tool-reasons.ts';
import {
  acceptanceWindow,
  permissibleErrorPercent,
  usableRange,
  type PlannedPass,
  type TorqueTarget,
} from '../../tightening/index.ts';
import { convert, type Torque } from '../../units/index.ts';
import { preparation } from '../../words/preparation.ts';
import { planOf, runningToolOf, toolOf } from '../calls.ts';
import { settingFor } from '../setting.ts';
import { stop, warn, type Finding } from './finding.ts';
import { isTightening, toolsIn } from './needed.ts';
import { typedDay } from './typed.ts';

/** A pass in which the tool is set or pulled to a value. */
type TorquePass = Extract<PlannedPass, { kind: 'torque' | 'circular check' | 're-check' }>;
const isTorquePass = (pass: PlannedPass): pass is TorquePass => pass.target !== null;

/** A tool in one pass: what is wanted of it, at the wrench. */
export interface ToolUse {
  readonly step: TightenStep;
  readonly pass: TorquePass;
  /** With the adapter, and with the least running torque where the procedure states one: the true one only adds. */
  readonly atWrench: TorqueTarget;
}

/** Every pass in which a tool is set or pulled to a value. */
export const usesOf = (procedure: Procedure, steps: readonly Step[], tool: Tool): readonly ToolUse[] =>
  steps
    .filter(isTightening)
    .filter((step) => toolOf(procedure, step).id === tool.id)
    .flatMap((step) =>
      planOf(procedure, step)
        .passes.filter(isTorquePass)
        .map((pass) => ({
          step,
          pass,
          atWrench: settingFor(procedure, step, pass, minimumRunningTorque(step)).atWrench,
        })),
    );

/**
 * @param procedure with what was read and measured, so far as it can be read
 * @param labels what was typed of each label
 * @param day 'YYYY-MM-DD'
 */
export function toolFindings(
  { asFiled, asFound }: { readonly asFiled: Procedure; readonly asFound: Procedure },
  steps: readonly Step[],
  labels: ReadonlyMap<string, string>,
  day: string,
): readonly Finding[] {
  return toolsIn(asFound, steps).flatMap((tool) => {
    const filed = asFiled.tools.find(({ id }) => id === tool.id)?.calibrationDue ?? null;
    const uses = usesOf(asFound, steps, tool);
    return [
      ...calibrationFindings(tool, labels.get(tool.id) ?? '', filed, day),
      ...accuracyFindings(tool, uses),
      ...uses.flatMap((use) => useFindings(tool, use)),
      ...steps
        .filter(isTightening)
        .filter((step) => step.runDown && runningToolOf(asFound, step).id === tool.id)
        .flatMap((step) => measuringFindings(tool, step)),
    ];
  });
}

function calibrationFindings({ id, name }: Tool, label: string, filed: string | null, day: string): Finding[] {
  const field = `tool/${id}` as const;
  const typed = typedDay(label);
  if (typed.kind === 'wrong') return [stop(field, preparation.tool.wrongCalibration(name, typed.why))];
  // What the file says is no look at the tool that lies here.
  if (typed.kind === 'nothing') return [stop(field, preparation.tool.noCalibration(name))];
  const due = typed.value;
  return [
    ...(due < day ? [stop(field, preparation.tool.calibrationEnded(name, due, day))] : []),
    ...(filed !== null && filed !== due ? [warn(field, preparation.tool.otherLabel(name, due, filed))] : []),
  ];
}

/** What class or declared error of a tool leave of the window of a pass. */
function accuracyFindings(tool: Tool, uses: readonly ToolUse[]): Finding[] {
  const { id, name, class: letter, maximumError } = tool;
  const field = `tool/${id}` as const;
  if (letter === undefined && maximumError === undefined) {
    return [warn(field, preparation.tool.noAccuracy(name))];
  }
  return uses.flatMap(({ step, pass, atWrench: { target, window } }) => {
    const errorPercent = permissibleErrorPercent(tool, target);
    if (acceptanceWindow(window, { rule: 'relative tool error', errorPercent }) !== null) return [];
    return [warn(field, preparation.tool.tooInaccurate(name, errorPercent, pass.index, step.title))];
  });
}

function useFindings(tool: Tool, { step, pass, atWrench }: ToolUse): Finding[] {
  const field = `tool/${tool.id}` as const;
  const range = usableRange(tool);
  const { unit } = tool.range.max;
  const wanted = {
    pass: pass.index,
    step: step.title,
    value: shown(convert(atWrench.target, unit)),
    onWrench: step.adapter !== undefined,
  };
  return reasonsAgainstTool(tool, [atWrench], step.judging, null)
    .filter(({ code }) => !step.runDown || HOLDS_ANYHOW.has(code))
    .flatMap(({ code, sentence }): Finding[] => {
      switch (code) {
        case 'calibration unknown':
        case 'calibration expired':
          return [];
        case 'above range':
          return [stop(field, preparation.tool.reachesTo(tool.id, shown(range.max), wanted))];
        case 'below usable range':
          return [stop(field, preparation.tool.accurateFrom(tool.id, shown(range.min), wanted))];
        case 'no mark in the window':
          return [stop(field, preparation.tool.noMark(tool.id, shown(tool.resolution), wanted, sentence))];
        case 'too coarse':
        case 'shows no torque':
        case 'running torque uncertain':
          return [warn(field, preparation.tool.doubtful(tool.id, wanted, sentence))];
      }
    });
}

/** True whatever the running torque turns out to be: it only adds. The rest is judged at each nut. */
const HOLDS_ANYHOW: ReadonlySet<ToolReason['code']> = new Set(['above range']);

function measuringFindings(tool: Tool, step: TightenStep): Finding[] {
  const field = `tool/${tool.id}` as const;
  return reasonsAgainstMeasuring(tool, minimumRunningTorque(step) ?? tool.range.max, null).flatMap(
    ({ code, sentence }) => {
      if (code === 'calibration unknown' || code === 'calibration expired') return [];
      return [
        code === 'too coarse'
          ? warn(field, preparation.tool.doubtfulForRunning(tool.id, step.title, sentence))
          : stop(field, preparation.tool.notForRunning(tool.id, step.title, sentence)),
      ];
    },
  );
}

/** Six digits, so that no dust of a conversion is shown. */
export const shown = ({ value, unit }: Torque): string => `${Number(value.toPrecision(6))} ${unit}`;
