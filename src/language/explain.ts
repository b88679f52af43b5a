/** How computed values came about, in plain sentences for the screen; `sayPlain` makes them fit for the voice. */
import { assessedLift, carriedMass, containerCheck } from '../procedure/lead-hand.ts';
import { shownLoad, type LiftAssessment } from '../lifting/index.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { forbids } from '../procedure/tool-reasons.ts';
import { planOf } from '../session/calls.ts';
import type { Setting } from '../session/setting.ts';
import type { ToolTrouble } from '../session/tools.ts';
import { explainPasses, settingRatio } from '../tightening/index.ts';
import { decimalOf } from '../units/decimal.ts';
import { roundedWindow, valueIn, type Mass, type Torque } from '../units/index.ts';
import { explaining } from '../words/explaining.ts';

/**
 * Why a wrench is set to a value, short: "target 175, plus 12 running, times 0.833 for the adapter: set 156". Units are
 * only named where they differ from that of the tool. A tool that shows is pulled to a value instead of set to it.
 */
export function explainSetting(setting: Setting): string {
  const { wanted, runningTorque, adapter, tool, value } = setting;
  const toolUnit = tool.range.max.unit;
  const plain = (torque: Torque): string =>
    `${figures(torque.value)}${torque.unit === toolUnit ? '' : ` ${torque.unit}`}`;
  const parts = [
    explaining.target(plain(wanted.target)),
    ...(runningTorque ? [explaining.plusRunning(plain(runningTorque))] : []),
    ...(adapter ? [explaining.timesAdapter(String(Number(settingRatio(adapter).toFixed(3))))] : []),
  ];
  if (value === null) return explaining.noMark(parts);
  const unit = wanted.target.unit === toolUnit ? '' : ` ${toolUnit}`;
  const set = tool.type === 'setting' ? explaining.setTo : explaining.pullTo;
  return withAccepted(set(parts, `${value.value}${unit}`), setting);
}

/** And what the rule of judging leaves of the window, rounded inwards. */
function withAccepted(set: string, { accepted, judging, tool: { range, resolution } }: Setting): string {
  if (judging.rule === 'simple') return set;
  if (accepted === null) return explaining.nothingAccepted(set, judging.rule);
  const { min, max } = roundedWindow(accepted, range.max.unit, decimalOf(valueIn(resolution, range.max.unit)).scale);
  return explaining.accepted(set, judging.rule, min.value, max.value);
}

/** Six digits are enough to recognise a value. */
const figures = (value: number): string => String(Number(value.toPrecision(6)));

/** The passes of a step about fasteners in one or two sentences; null for other steps. */
export function explainPlan(procedure: Procedure, step: Step): string | null {
  const { running, passes } = planOf(procedure, step);
  if (step.kind !== 'tighten' || passes.length === 0) return null;
  return [
    ...(running ? [explaining.runningFirst] : []),
    explainPasses(passes),
    ...(running || step.adapter !== undefined ? [explaining.atFastener] : []),
  ].join(' ');
}

/** What is carried, and what the lifting equation says of it; `limits` is what it does not say. */
export function explainLift(procedure: Procedure): {
  readonly facts: readonly string[];
  readonly limits: readonly string[];
} {
  const { total, fluid } = carriedMass(procedure);
  const { fluid: named } = procedure.component;
  const inHands = (mass: Mass): string => `${Number(shownLoad(mass, total.unit).value)} ${total.unit}`;
  const weight =
    named && fluid.value > 0
      ? explaining.weightWithFluid(inHands(total), inHands(fluid), named.name)
      : explaining.weight(inHands(total));
  const lift = assessedLift(procedure);
  return {
    facts: [weight, ...(lift ? liftWords(lift) : [])],
    limits: lift?.reservations ?? [],
  };
}

function liftWords({ index, sentence }: LiftAssessment): readonly string[] {
  const words = index === null ? [] : [explaining.liftingIndex(roundedUp(index))];
  return [...words, sentence];
}

/** An index of 3.01 is above 3, and must not read as 3.0. */
const roundedUp = (index: number): string => (Math.ceil(Number((index * 10).toPrecision(12))) / 10).toFixed(1);

/** All that is said before the work begins: the weight, the lift with its limits, and whether the container holds. */
export function explainBeforeWork(procedure: Procedure): readonly string[] {
  const { facts, limits } = explainLift(procedure);
  const container = containerCheck(procedure);
  return [...facts, ...limits, ...(container ? [container.sentence] : [])];
}

/** What speaks against a tool, and what follows from it. */
export function explainTool({ tool, reasons }: ToolTrouble): string {
  const sentences = reasons.map(({ sentence }) => sentence).join(' ');
  return (reasons.some(forbids) ? explaining.toolForbidden : explaining.tool)(tool.name, sentences);
}
