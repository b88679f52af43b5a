/** Where in the work something is: the fastener, the pass. Numbers come as figures or as words. */
import { said } from './said.ts';

export const place = said('place', {
  /** What a fastener is called where the procedure does not say. */
  anyFastener: 'fastener',
  fastener: (label: string, number: string) => `${label} ${number}`,
  /** @param pass null in the round before the passes, in which the running torque is measured */
  inPass: (label: string, number: string, pass: string | null) => `${label} ${number}, ${round(pass)}`,
  round: (pass: string | null) => round(pass),
  passOf: (pass: string, of: string) => `Pass ${pass} of ${of}`,
});

const round = (pass: string | null): string => (pass === null ? 'running torque' : `pass ${pass}`);
