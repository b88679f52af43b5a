import { Refused } from '../units/index.ts';

/** Why this room refuses an input. The error is `Refused` of the units room. */
export type LiftingRefusal =
  | 'bad-mass'
  | 'bad-volume'
  | 'bad-density'
  | 'bad-margin'
  | 'bad-distance'
  | 'bad-angle'
  | 'bad-frequency'
  | 'bad-team'
  | 'coupling-not-good';

export function refuse(code: LiftingRefusal, sentence: string): never {
  throw new Refused(code, sentence);
}
