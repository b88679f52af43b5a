/** The door of the room: patterns, orders, passes, corrections, tools and verdicts. */
export type { TighteningRefusal } from './refusal.ts';
export { type Direction, type Layout, layOut, numbersOf, type Pattern, type Place, type Position } from './pattern.ts';
export { type Order, orderGroups, orderLabels, orderOf, type OrderPart } from './order.ts';
export { middleOf, plusMinus, plusMinusPercent, type TorqueTarget, torqueTarget } from './target.ts';
export { type Loosening, type PassSpec, planLoosening, type PlannedPass, planPasses, type Schedule } from './passes.ts';
export {
  acceptanceWindow,
  judge,
  type JudgingRule,
  type Outcome,
  type TorqueWindow,
  USUAL_FACTOR,
  type Verdict,
} from './verdict.ts';
export {
  type Adapter,
  correct,
  type Correction,
  type CorrectionInput,
  refuseWornNut,
  settingFor,
  settingRatio,
  torqueAtFastener,
} from './correction.ts';
export { conformityProbability } from './conformity.ts';
export { explainPasses } from './explain.ts';
export {
  nearestMark,
  permissibleErrorPercent,
  type ReasonAgainst,
  reasonsAgainst,
  type ToolType,
  type TorqueTool,
  usableRange,
} from './tool.ts';
export {
  minimumPrevailing,
  type PrevailingTable,
  recommendedTorque,
  type RecommendedTorque,
  type Source,
  type TableQuestion,
} from './reference.ts';
