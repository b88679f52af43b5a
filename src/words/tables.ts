/** General tables of torques: when they do not apply. */
import { said } from './said.ts';

export const tables = said('tables', {
  manualComesFirst: 'The manual gives a value; the general table does not apply.',
  onlyOilFree: 'The table is for oil-free cadmium-plated threads; no lubricated value is derived from it.',
  noThread: (table: string, thread: string) => `${table} has no thread ${thread}.`,
});
