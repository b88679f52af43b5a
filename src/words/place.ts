/** Where in the work something is: the fastener, the pass. Numbers come as figures or as words. */
import { said } from './said.ts';

export const place = said('place', {
  /** What a fastener is called where the procedure does not say. */
  anyFastener: 'fastener',
  /** @param pass null in the round before the passes, in which the running torque is measured */
  inPass: (label: string, number: string, pass: string | null) =>
    `${label} ${number}, ${pass === null ? 'running torque' : `pass ${pass}`}`,
});
