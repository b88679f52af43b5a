/** A preparation in which everything is in order, with changes: what is found about it. */
import { allInOrder } from '../../../src/cli/all-in-order.ts';
import type { Procedure } from '../../../src/procedure/procedure.ts';
import { assess } from '../../../src/session/preparation/assess.ts';
import type { Circumstances, Entered } from '../../../src/session/preparation/entered.ts';
import { people } from '../play.ts';

export const TODAY = '2026-11-26';
export const TOMORROW = '2026-11-27';
export const YESTERDAY = '2026-11-25';

export const inOrder = (procedure: Procedure, changes: Partial<Entered> = {}): Entered => ({
  ...allInOrder(procedure, people, TOMORROW),
  ...changes,
});

/** Every finding as "stops: …" or "warns: …". */
export const findings = (
  procedure: Procedure,
  changes: Partial<Entered> = {},
  seen: Partial<Circumstances> = {},
): readonly string[] =>
  assess(procedure, inOrder(procedure, changes), { day: TODAY, microphones: [], ...seen }).map(
    ({ stops, sentence }) => `${stops ? 'stops' : 'warns'}: ${sentence}`,
  );
