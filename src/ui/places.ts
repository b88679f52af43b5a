import type { Procedure, Step } from '../procedure/procedure.ts';
import { toolOf } from '../session/calls.ts';

/** Decimal places that the tool of a step can show: no value is shown finer than it can be read. */
export function placesOf(procedure: Procedure, step: Step): number {
  if (step.kind !== 'tighten') return 0;
  const { resolution } = toolOf(procedure, step);
  return String(resolution.value).split('.')[1]?.length ?? 0;
}
