/** What a reading may be at a moment: by the tool and the fasteners, never by the target. */
import type { Step } from '../procedure/procedure.ts';
import { isReadCall, planOf, RUNNING_ROUND, toolFor, type Call } from '../session/calls.ts';
import { confirmed } from '../session/confirmed.ts';
import { settingOf } from '../session/setting.ts';
import { callAfter, confirmsByGoingOn, type Reading, type SessionState } from '../session/state.ts';
import type { Limits, Torque, Unit } from '../units/index.ts';

/** What a reading is held against where the questions about it are found. */
export interface Held {
  readonly scale: Limits<'torque'>;
  readonly unit: Unit<'torque'>;
  /** The step between two marks of the scale. */
  readonly resolution: Torque;
  /** At the wrench; null where no torque is reached for. */
  readonly window: Limits<'torque'> | null;
}

/** What a reading may be at this moment: which fasteners exist and what the scale of the tool can show. Never the target. */
export interface ReadingRoom {
  readonly fasteners: ReadonlySet<number>;
  /** The fastener that a value without a number is about. */
  readonly called: number;
  readonly label: string;
  readonly scale: { readonly min: Torque; readonly max: Torque };
  readonly unit: Unit<'torque'>;
  readonly takesClicks: boolean;
  /**
   * For the questions about a reading only, by the fastener that it is of; null is a value without a number. What is
   * recognised never depends on it.
   */
  readonly held: ReadonlyMap<number | null, Held>;
}

/** The room of a reading about a fastener in a pass; null where that step takes no readings. */
export function readingRoom(
  state: SessionState,
  about: { readonly step: string; readonly pass: number; readonly fastener: number },
): ReadingRoom | null {
  const step = state.procedure.steps.find(({ id }) => id === about.step);
  if (step?.kind !== 'tighten') return null;
  const pattern = state.procedure.patterns.find(({ id }) => id === step.pattern);
  const tool = toolFor(state.procedure, step, about.pass);
  if (!pattern) return null;
  return {
    fasteners: new Set(planOf(state.procedure, step).calls.map(({ fastener }) => fastener)),
    called: about.fastener,
    label: pattern.fastener,
    scale: tool.range,
    unit: tool.range.max.unit,
    takesClicks: tool.type === 'setting' && about.pass !== RUNNING_ROUND,
    held: heldFor(state, step, callOf(state, step, about)),
  };
}

/**
 * Where going on confirms a reading, a value without a number is of the fastener after it. It is taken on the scale of the
 * tool for that one: after the last running torque it is another.
 */
export function withNext(state: SessionState, step: Step, pending: Reading, room: ReadingRoom): ReadingRoom {
  const next = confirmsByGoingOn(state, pending) ? callAfter(state, pending) : null;
  const held = new Map([...room.held, ...heldFor(confirmed(state, pending.seq), step, next)]);
  if (!next || !isReadCall(next) || step.kind !== 'tighten') return { ...room, held };
  const [tool, nextTool] = [pending.pass, next.pass.index].map((pass) => toolFor(state.procedure, step, pass));
  const of = { step: step.id, pass: next.pass.index, fastener: next.fastener };
  return { ...(tool === nextTool ? room : (readingRoom(state, of) ?? room)), held };
}

function heldFor(state: SessionState, step: Step, call: Call | null): ReadingRoom['held'] {
  if (step.kind !== 'tighten' || call === null) return new Map();
  const { range, resolution } = toolFor(state.procedure, step, call.pass.index);
  const window = settingOf(state, step, call)?.atWrench.window ?? null;
  const held: Held = { scale: range, unit: range.max.unit, resolution, window };
  return new Map([call.fastener, null].map((fastener) => [fastener, held]));
}

const callOf = (state: SessionState, step: Step, about: Pick<Reading, 'pass' | 'fastener'>): Call | null =>
  planOf(state.procedure, step).calls.find(
    ({ pass, fastener }) => pass.index === about.pass && fastener === about.fastener,
  ) ?? null;
