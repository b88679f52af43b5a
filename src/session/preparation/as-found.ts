/**
 * The procedure as it is worked with: the file, with what was read off the tools and measured on the day. Settings, and
 * whether a tool may be used, follow from this one.
 */
import { adapterOf } from '../../procedure/lead-hand.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { settingRatio } from '../../tightening/index.ts';
import { Refused, type Length } from '../../units/index.ts';
import { isTightening } from './needed.ts';

/** With the last day of validity on the label of a tool. */
export const withCalibration = (procedure: Procedure, tool: string, calibrationDue: string): Procedure => ({
  ...procedure,
  tools: procedure.tools.map((each) => (each.id === tool ? { ...each, calibrationDue } : each)),
});

/** With the measured length of an adapter; null where no setting could be worked out with it. */
export function withAdapter(procedure: Procedure, adapter: string, length: Length): Procedure | null {
  const found: Procedure = {
    ...procedure,
    adapters: procedure.adapters.map((each) => (each.id === adapter ? { ...each, length } : each)),
  };
  const using = found.steps.filter(isTightening).filter((step) => step.adapter === adapter);
  try {
    for (const step of using) {
      const geometry = adapterOf(found, step);
      if (geometry) settingRatio(geometry);
    }
    return found;
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}
