import { Refused } from '../units/index.ts';

/** Why this room refuses an input. The error is `Refused` of the units room. */
export type TighteningRefusal =
  // patterns and orders
  | 'bad-count'
  | 'bad-place'
  | 'bad-number'
  | 'duplicate-fastener'
  | 'missing-fastener'
  | 'unknown-fastener'
  | 'order-does-not-fit'
  // passes
  | 'no-passes'
  | 'no-final-target'
  | 'bad-target'
  | 'bad-percent'
  | 'bad-step'
  | 'bad-angle'
  | 'bad-time'
  | 'pass-goes-down'
  // corrections
  | 'bad-lever'
  | 'bad-adapter'
  | 'adapter-past-the-drive'
  | 'bad-run-down'
  | 'nut-worn'
  | 'outside-tool-range'
  // tools and verdicts
  | 'bad-tool'
  | 'bad-date'
  | 'bad-uncertainty'
  // reference tables
  | 'manual-comes-first'
  | 'lubricated-not-derived'
  | 'not-in-table';

export function refuse(code: TighteningRefusal, sentence: string): never {
  throw new Refused(code, sentence);
}
