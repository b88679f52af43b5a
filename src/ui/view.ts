import { calledValue, planOf, type Call } from '../session/calls.ts';
import {
  currentCall,
  currentStep,
  isSettled,
  openWarning,
  pendingReading,
  standingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import type { Hazard, Step } from '../procedure/procedure.ts';
import { displayWindow } from '../units/index.ts';
import { layOut, type Position } from '../tightening/pattern.ts';
import { placesOf } from './places.ts';

/** How a fastener stands in the pass that is shown. */
export type Standing = 'open' | 'next' | 'done' | 'doubt';

export interface MapView {
  readonly name: string;
  readonly positions: readonly (Position & { readonly standing: Standing })[];
}

/** What the work screen shows. A pure function of the state, for live work and for replay alike. */
export interface WorkView {
  readonly step: Step | null;
  readonly stepNumber: number;
  readonly stepCount: number;
  readonly warning: Hazard | null;
  readonly call: CallView | null;
  readonly pending: Reading | null;
  readonly map: MapView | null;
  readonly phase: SessionState['phase'];
}

export interface CallView {
  readonly label: string;
  readonly fastener: number;
  readonly pass: number;
  readonly passes: number;
  readonly passName: string;
  /** What to set, as decimal text and unit; null where no value is taken. */
  readonly target: { readonly value: string; readonly unit: string } | null;
  readonly window: string | null;
  readonly left: number;
}

export function workView(state: SessionState): WorkView {
  const step = currentStep(state);
  const pending = pendingReading(state);
  const call = currentCall(state);
  return {
    step,
    stepNumber: Math.min(state.at + 1, state.procedure.steps.length),
    stepCount: state.procedure.steps.length,
    warning: openWarning(state),
    call: step && call ? callView(state, step, call) : null,
    pending,
    map: step ? mapView(state, step, call) : null,
    phase: state.phase,
  };
}

function callView(state: SessionState, step: Step, call: Call): CallView {
  const plan = planOf(state.procedure, step);
  const { target, window } = call.pass;
  return {
    label: call.label,
    fastener: call.fastener,
    pass: call.pass.index,
    passes: plan.passes.length,
    passName: call.pass.name,
    target: target === null ? null : calledValue({ target }),
    window: window ? displayWindow(window, window.max.unit, placesOf(state.procedure, step)) : null,
    left: plan.calls.filter(
      ({ pass, fastener }) => pass.index === call.pass.index && !isSettled(state, step.id, pass, fastener),
    ).length,
  };
}

function mapView(state: SessionState, step: Step, call: Call | null): MapView | null {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return null;
  const pattern = state.procedure.patterns.find(({ id }) => id === step.pattern);
  const plan = planOf(state.procedure, step);
  const pass = call?.pass ?? plan.passes.at(-1);
  if (!pattern || !pass) return null;
  const standing = (fastener: number): Standing => {
    if (isSettled(state, step.id, pass, fastener)) return 'done';
    const isOut = standingReading(state, step.id, pass.index, fastener) !== null;
    if (isOut) return 'doubt';
    return call?.fastener === fastener ? 'next' : 'open';
  };
  return {
    name: pattern.name,
    positions: layOut(pattern.layout).positions.map((position) => ({
      ...position,
      standing: standing(position.number),
    })),
  };
}
