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
  if (typed.kind === 'wrong') return [stop(field, `Calibration of ${name}: ${typed.why}`)];
  const due = typed.kind === 'value' ? typed.value : filed;
  if (due === null) {
    return [
      warn(
        field,
        `${name}: no calibration date is known. Look at its label and enter the day, or take one that has it.`,
      ),
    ];
  }
  return [
    ...(due < day
      ? [
          stop(
            field,
            `${name}: its calibration ended on ${due}, and today is ${day}. Take another of the same kind and enter the date on its label.`,
          ),
        ]
      : []),
    ...(typed.kind === 'value' && filed !== null && filed !== typed.value
      ? [warn(field, `${name}: the label says ${typed.value}, the procedure file says ${filed}. The label counts.`)]
      : []),
  ];
}

/** What class or declared error of a tool leave of the window of a pass. */
function accuracyFindings(tool: Tool, uses: readonly ToolUse[]): Finding[] {
  const { id, name, class: letter, maximumError } = tool;
  const field = `tool/${id}` as const;
  if (letter === undefined && maximumError === undefined) {
    return [warn(field, `${name}: neither class nor error is stated, so nothing says how far to trust it.`)];
  }
  return uses.flatMap(({ step, pass, atWrench: { target, window } }) => {
    const errorPercent = permissibleErrorPercent(tool, target);
    if (acceptanceWindow(window, { rule: 'relative tool error', errorPercent }) !== null) return [];
    const sentence = `${name}: its error of ±${errorPercent} % is more than the window of ${placeOf(step, pass)} leaves. A value that reads inside may be outside; take a finer tool where there is one.`;
    return [warn(field, sentence)];
  });
}

const MEND = 'Take a tool that can, and have the procedure name it.';

function useFindings(tool: Tool, { step, pass, atWrench }: ToolUse): Finding[] {
  const field = `tool/${tool.id}` as const;
  const range = usableRange(tool);
  const { unit } = tool.range.max;
  const wants = `${placeOf(step, pass)} wants ${shown(convert(atWrench.target, unit))}${step.adapter === undefined ? '' : ' on the wrench'}`;
  return reasonsAgainstTool(tool, [atWrench], step.judging, null)
    .filter(({ code }) => !step.runDown || HOLDS_ANYHOW.has(code))
    .flatMap(({ code, sentence }): Finding[] => {
      switch (code) {
        case 'calibration unknown':
        case 'calibration expired':
          return [];
        case 'above range':
          return [stop(field, `${tool.id} reaches ${shown(range.max)}; ${wants}. ${MEND}`)];
        case 'below usable range':
          return [stop(field, `${tool.id} is accurate from ${shown(range.min)}; ${wants}. ${MEND}`)];
        case 'no mark in the window':
          return [stop(field, `${tool.id} has a mark every ${shown(tool.resolution)}; ${wants}. ${sentence} ${MEND}`)];
        case 'too coarse':
        case 'shows no torque':
        case 'running torque uncertain':
          return [warn(field, `${tool.id}: ${wants}. ${sentence}`)];
      }
    });
}

/** True whatever the running torque turns out to be: it only adds. The rest is judged at each nut. */
const HOLDS_ANYHOW: ReadonlySet<ToolReason['code']> = new Set(['above range']);

function measuringFindings(tool: Tool, step: TightenStep): Finding[] {
  const field = `tool/${tool.id}` as const;
  const what = `${tool.id} is to measure the running torque in “${step.title}”`;
  return reasonsAgainstMeasuring(tool, minimumRunningTorque(step) ?? tool.range.max, null).flatMap(
    ({ code, sentence }) => {
      if (code === 'calibration unknown' || code === 'calibration expired') return [];
      return [
        code === 'too coarse' ? warn(field, `${what}. ${sentence}`) : stop(field, `${what}. ${sentence} ${MEND}`),
      ];
    },
  );
}

/** "pass 3 of “Tighten the ring”" */
const placeOf = ({ title }: TightenStep, { index }: TorquePass): string => `pass ${index} of “${title}”`;

/** Six digits, so that no dust of a conversion is shown. */
export const shown = ({ value, unit }: Torque): string => `${Number(value.toPrecision(6))} ${unit}`;
