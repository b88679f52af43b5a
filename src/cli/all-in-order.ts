/** What somebody enters for whom everything is in order: every label holds, every length is that of the file. */
import { carriers } from '../lifting/index.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { enteredNothing, type Entered } from '../session/preparation/entered.ts';
import { carryingOf } from '../session/preparation/load.ts';
import { expiringIn, hazardsIn } from '../session/preparation/needed.ts';
import type { People } from '../session/event.ts';
import { toWritten } from '../units/index.ts';

/**
 * @param holdsTo the day to which calibrations and consumables hold, 'YYYY-MM-DD'
 */
export function allInOrder(procedure: Procedure, { mechanic, second }: People, holdsTo: string): Entered {
  const { tools, adapters, steps } = procedure;
  const least = carryingOf(procedure).lift?.least ?? null;
  const isManned = least === null || (carriers(least) ?? 0) <= (second === null ? 1 : 2);
  return {
    ...enteredNothing(mechanic, second ?? ''),
    isCurrentData: true,
    calibrations: new Map(tools.map(({ id, calibrationDue }) => [id, calibrationDue ?? holdsTo])),
    adapters: new Map(adapters.map(({ id, length }) => [id, toWritten(length).value])),
    expiries: new Map(expiringIn(procedure).map(({ id }) => [id, holdsTo])),
    handling: isManned ? least : 'sling or hoist',
    hazards: new Set(hazardsIn(steps).map(({ key }) => key)),
  };
}
