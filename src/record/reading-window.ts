import { placesOf } from '../procedure/places.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Basis } from '../session/event.ts';
import { displayWindow, fromWritten } from '../units/index.ts';

/** Places for a tool that the procedure does not describe: as fine as any torque tool shows. */
const PLACES = 1;

/** The window a torque was judged by, at the wrench, its limits rounded inwards to what the tool can show. */
export function windowText({ window, tool: id }: Extract<Basis, { of: 'torque' }>, { tools }: Procedure): string {
  const limits = { min: fromWritten('torque', window.min), max: fromWritten('torque', window.max) };
  const tool = tools.find((each) => each.id === id);
  return displayWindow(limits, window.max.unit, tool ? placesOf(tool) : PLACES);
}
