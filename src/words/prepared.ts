/** What was found and said before the work, and fetched during it, as lines of the record. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

type Handling = 'one person' | 'two persons' | 'three persons' | 'sling or hoist' | 'stand or support';

export const prepared = said('prepared', {
  approvedData: (document: string, revision: string, issued: string | null) =>
    `Compared with the register, it is the current approved data: ${document}, revision ${revision}${issued === null ? '' : `, issued ${issued}`}`,
  helper: (name: string) => `${name} helps`,
  noCalibration: (tool: string) => `${tool}: no calibration date known`,
  calibration: (tool: string, due: string, from: 'label' | 'procedure file') =>
    `${tool}: calibration due ${due}, ${from === 'label' ? 'read off its label' : 'by the procedure file'}`,
  adapter: (adapter: string, measured: string, filed: string) =>
    `${adapter} measured: ${measured} (the procedure file says ${filed}); settings follow the measured length`,
  consumable: (consumable: string, expires: string) => `${consumable}: use by ${expires}`,
  container: (capacity: string, from: 'here' | 'procedure file', needed: string) =>
    `The container holds ${capacity}${from === 'here' ? '' : ' by the procedure file'}; with the margin ${needed} may be needed`,
  lift: (load: string, handling: Handling, limit: string, least: Handling) =>
    `${load} are carried by ${handling}; ${limit} are recommended for one person, so the least is ${least}`,
  hazard: (signal: Signal, text: string, step: string) => `Acknowledged before the work: ${signal}, ${text} (${step})`,
  unknownHazard: (number: number, step: string) => `Hazard ${number} of step ${step} acknowledged before the work`,
  microphone: (person: string, fitness: 'fit' | 'fit with care' | 'do not start by voice') =>
    `Microphone check of ${person}: ${fitness}`,
  inSpiteOf: (warning: string) => `Begun despite this warning: ${warning}`,
  /** A fresh packing: "Fetched in the work, new round seal: batch 7, use by 2027-01-31, 2 of it". */
  fetched: (consumable: string, batch: string | null, expires: string | null, quantity: number | null) =>
    `Fetched in the work, ${consumable}: ${[
      batch === null ? 'no batch entered' : `batch ${batch}`,
      ...(expires === null ? [] : [`use by ${expires}`]),
      ...(quantity === null ? [] : [`${quantity} of it`]),
    ].join(', ')}`,
});
