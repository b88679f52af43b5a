/** Rules about torque tools and what they are asked to do. */
import { acceptanceWindow, permissibleErrorPercent, usableRange } from '../../tightening/index.ts';
import type { JudgingRule, TorqueTarget } from '../../tightening/index.ts';
import { valuesOf } from '../../tightening/pass-values.ts';
import { compare, scale, type Torque } from '../../units/index.ts';
import { lint } from '../../words/lint.ts';
import { atWrench } from '../lead-hand.ts';
import type { Procedure } from '../schema.ts';
import type { TightenStep } from '../steps.ts';
import { acceptedMark } from '../tool-reasons.ts';
import { type Finding, type Rule, stepsOf } from './rule.ts';

type Tool = Procedure['tools'][number];

export const calibrationDateMissing: Rule = ({ tools }) =>
  tools.flatMap(({ calibrationDue }, i) =>
    calibrationDue === undefined ? [{ path: `tools.${i}.calibrationDue`, message: lint.calibrationDateMissing }] : [],
  );

export const toolErrorUnknown: Rule = ({ tools }) =>
  tools.flatMap((tool, i) =>
    tool.maximumError === undefined && tool.class === undefined
      ? [{ path: `tools.${i}`, message: lint.toolErrorUnknown }]
      : [],
  );

export const settingOutsideUsableRange: Rule = (procedure) =>
  eachSetting(procedure, ({ tool, onWrench: { target } }) => {
    const { min, max } = usableRange(tool);
    if (compare(target, min) < 0) return lint.belowUsable(plain(target), plain(min));
    return compare(target, max) > 0 ? lint.aboveScale(plain(target), plain(max)) : null;
  });

/** A graduation should be no more than this part of the value (TM 1-1500-204-23-9, chapter 8). */
const COARSEST = 0.1;

export const toolTooCoarse: Rule = (procedure) =>
  eachSetting(procedure, ({ tool: { resolution }, onWrench: { target } }) =>
    compare(resolution, scale(target, COARSEST)) > 0 ? lint.tooCoarse(plain(resolution), plain(target)) : null,
  );

export const noMarkInWindow: Rule = (procedure) =>
  eachSetting(procedure, ({ step, tool, onWrench }) =>
    tool.type === 'setting' && acceptedMark(tool, onWrench, step.judging) === null
      ? lint.noMark(plain(onWrench.target), step.judging.rule !== 'simple')
      : null,
  );

export const windowTooNarrow: Rule = (procedure) =>
  eachSetting(procedure, ({ step, tool, onWrench: { target, window } }) => {
    if (acceptanceWindow(window, step.judging) === null) return lint.nothingAccepted;
    const rule = ruleOf(tool, target);
    return rule !== null && acceptanceWindow(window, rule) === null
      ? lint.windowTooNarrow(plain(window.min), plain(window.max), rule.errorPercent)
      : null;
  });

function ruleOf(tool: Tool, at: Torque): Extract<JudgingRule, { rule: 'relative tool error' }> | null {
  if (tool.maximumError === undefined && tool.class === undefined) return null;
  return { rule: 'relative tool error', errorPercent: permissibleErrorPercent(tool, at) };
}

export const toolInOtherUnit: Rule = (procedure) =>
  eachSetting(procedure, ({ tool, onWrench: { target } }) =>
    tool.range.max.unit === target.unit ? null : lint.otherUnit(target.unit, tool.range.max.unit),
  );

/** A setting tool shows nothing, and a large one is blind to a small drag. */
export const runDownNotMeasurable: Rule = (procedure) =>
  stepsOf(procedure, 'tighten').flatMap(({ step: { runDown, tool: own }, index }) => {
    const tool = procedure.tools.find(({ id }) => id === (runDown?.tool ?? own));
    if (runDown === undefined || tool === undefined) return [];
    const path = `steps.${index}.runDown`;
    if (tool.type === 'setting') return [{ path, message: lint.showsNoTorque(tool.id) }];
    const { min } = usableRange(tool);
    if (runDown.minimum === undefined && tool.id === own) {
      return [{ path, message: lint.largeToolForRunning(plain(min)) }];
    }
    return runDown.minimum !== undefined && compare(runDown.minimum, min) < 0
      ? [
          {
            path,
            message: lint.runningBelowTool(tool.id, plain(min), plain(runDown.minimum)),
          },
        ]
      : [];
  });

interface Setting {
  readonly step: TightenStep;
  readonly tool: Tool;
  /** With the adapter, before any run-down torque, which is only known on the job. */
  readonly onWrench: TorqueTarget;
}

function eachSetting(procedure: Procedure, messageFor: (setting: Setting) => string | null): readonly Finding[] {
  return stepsOf(procedure, 'tighten').flatMap(({ step, index }) => {
    const tool = procedure.tools.find(({ id }) => id === step.tool);
    if (tool === undefined) return [];
    return step.passes.flatMap((pass, j) =>
      valuesOf(pass, step.final).flatMap((value) => {
        if (value.target === null) return [];
        const message = messageFor({ step, tool, onWrench: atWrench(procedure, step, value) });
        return message === null ? [] : [{ path: `steps.${index}.passes.${j}`, message }];
      }),
    );
  });
}

const plain = ({ value, unit }: Torque): string => `${Number(value.toPrecision(6))} ${unit}`;
