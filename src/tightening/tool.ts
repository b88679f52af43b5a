/** Torque tools: what they can be trusted with, and the reasons not to use one for a setting. */
import {
  compare,
  convert,
  isWithin,
  type Limits,
  limits,
  scale,
  torque,
  type Torque,
  valueIn,
} from '../units/index.ts';
import { wrench } from '../words/wrench.ts';
import { refuse } from './refusal.ts';
import { written } from './target.ts';
import type { TorqueWindow } from './verdict.ts';

/** ISO 6789-1: type I shows the torque, type II is set to it and signals. */
export type ToolType = 'indicating' | 'setting';

export interface TorqueTool {
  readonly type: ToolType;
  /** Lowest marked value to full scale. */
  readonly range: Limits<'torque'>;
  /** One graduation, or the last digit of an electronic display. */
  readonly resolution: Torque;
  /** Class within its type by ISO 6789-1: A to E indicating, A to G setting. */
  readonly class?: string | undefined;
  /** Maximum permissible error in per cent of the reading, as declared for this tool; else by its class. */
  readonly maximumError?: number | undefined;
  /** Last day of validity, 'YYYY-MM-DD'. */
  readonly calibrationDue?: string | undefined;
}

export interface ReasonAgainst {
  readonly code: 'calibration unknown' | 'calibration expired' | 'below usable range' | 'above range' | 'too coarse';
  readonly sentence: string;
}

/** No accuracy is promised below this part of full scale (TM 1-1500-204-23-9, table 8-1). */
const USABLE_FROM = 0.2;
/** A graduation should be no more than this part of the value measured (TM 1-1500-204-23-9, chapter 8). */
const COARSEST = 0.1;

/** From 20 % of full scale, or the lowest mark where that is higher, to full scale. @throws Refused `bad-tool`. */
export function usableRange({ range }: TorqueTool): Limits<'torque'> {
  if (range.min.value < 0 || range.max.value <= 0 || compare(range.min, range.max) > 0) {
    refuse('bad-tool', wrench.badRange(written(range.min), written(range.max)));
  }
  const from = scale(range.max, USABLE_FROM);
  return limits(compare(range.min, from) > 0 ? range.min : from, range.max);
}

/**
 * Why this tool may not be used for a wrench setting on a day; empty when it may. The setting is the corrected one: with
 * an adapter the wrench works at another torque than the fastener gets.
 * @param onDate 'YYYY-MM-DD'; the calibration still holds on its due date.
 * @throws Refused `bad-tool`, `bad-date`.
 */
export function reasonsAgainst(tool: TorqueTool, setting: Torque, onDate: string): ReasonAgainst[] {
  const usable = usableRange(tool);
  if (tool.resolution.value <= 0) refuse('bad-tool', wrench.badResolution(written(tool.resolution)));
  return [
    ...calibrationReasons(tool.calibrationDue, isoDate(onDate)),
    ...rangeReasons(setting, usable),
    ...coarseReasons(setting, tool.resolution),
  ];
}

function calibrationReasons(due: string | undefined, onDate: string): ReasonAgainst[] {
  if (due === undefined) {
    return [{ code: 'calibration unknown', sentence: wrench.calibrationUnknown }];
  }
  if (isoDate(due) >= onDate) return [];
  return [{ code: 'calibration expired', sentence: wrench.calibrationEnded(due) }];
}

function rangeReasons(setting: Torque, usable: Limits<'torque'>): ReasonAgainst[] {
  if (compare(setting, usable.min) < 0) {
    return [{ code: 'below usable range', sentence: wrench.belowUsable(written(setting), written(usable.min)) }];
  }
  if (compare(setting, usable.max) <= 0) return [];
  return [{ code: 'above range', sentence: wrench.aboveFullScale(written(setting), written(usable.max)) }];
}

function coarseReasons(setting: Torque, resolution: Torque): ReasonAgainst[] {
  if (compare(resolution, scale(setting, COARSEST)) <= 0) return [];
  return [{ code: 'too coarse', sentence: wrench.tooCoarse(written(resolution), written(setting)) }];
}

/** Days compare as text once they are real days. @throws Refused `bad-date`. */
function isoDate(text: string): string {
  const parsed = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  if (parsed === null || Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== text) {
    refuse('bad-date', wrench.notADay(text));
  }
  return text;
}

/** The torque at which ISO 6789-1 changes from the wider error to the narrower one. */
const STEP = torque(10, 'N·m');

/** Classes with ±6 % up to 10 N·m and ±4 % above; the others have ±6 % throughout (ISO 6789-1:2017, table, from memory). */
const NARROW: Readonly<Record<ToolType, string>> = { indicating: 'BCE', setting: 'ABC' };
const WIDE: Readonly<Record<ToolType, string>> = { indicating: 'AD', setting: 'DEFG' };

/**
 * Maximum permissible error of the tool at a torque, in per cent of the reading: the declared one, else that of its class.
 * @throws Refused `bad-tool` when it has neither.
 */
export function permissibleErrorPercent(tool: TorqueTool, at: Torque): number {
  if (tool.maximumError !== undefined) return tool.maximumError;
  const { type, class: toolClass = '' } = tool;
  if (toolClass.length === 1 && NARROW[type].includes(toolClass)) return compare(at, STEP) > 0 ? 4 : 6;
  if (toolClass.length === 1 && WIDE[type].includes(toolClass)) return 6;
  return refuse('bad-tool', wrench.unknownError(type, toolClass));
}

/**
 * The mark of the tool inside the window that is nearest to a setting, as it is set in practice (117.39 → 117); null when
 * neither mark beside the setting is inside, so that the tool cannot be set for it.
 */
export function nearestMark(setting: Torque, window: TorqueWindow, resolution: Torque): Torque | null {
  if (resolution.value <= 0) refuse('bad-tool', wrench.badResolution(written(resolution)));
  const exact = valueIn(setting, resolution.unit) / resolution.value;
  const nearest = Math.round(exact);
  const next = nearest + (exact < nearest ? -1 : 1);
  const marks = [nearest, next].map((count) => convert(scale(resolution, count), setting.unit));
  return marks.find((mark) => isWithin(mark, window)) ?? null;
}
