/** The pattern as it is drawn, with how each fastener stands. */
import type { Step } from '../../procedure/procedure.ts';
import { planOf, type Call } from '../../session/calls.ts';
import { isLeftOpen } from '../../session/deviation.ts';
import { isSettled, standingReading, type SessionState } from '../../session/state.ts';
import { layOut, type Position } from '../../tightening/pattern.ts';

/** How a fastener stands in the pass that is shown. */
export type Standing = 'open' | 'next' | 'done' | 'doubt';

export interface MapView {
  readonly name: string;
  readonly positions: readonly (Position & { readonly standing: Standing })[];
}

export function mapView(state: SessionState, step: Step, call: Call | null): MapView | null {
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return null;
  const pattern = state.procedure.patterns.find(({ id }) => id === step.pattern);
  const plan = planOf(state.procedure, step);
  const pass = call?.pass ?? plan.passes.at(-1);
  if (!pattern || !pass) return null;
  const standing = (fastener: number): Standing => {
    if (isLeftOpen(state, step.id, pass, fastener)) return 'doubt';
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
