/** What every section of the page before the work reads and changes. */
import type { Procedure, Step } from '../../procedure/procedure.ts';
import type { Entered } from '../../session/preparation/entered.ts';
import type { Finding } from '../../session/preparation/finding.ts';

export interface Sheet {
  readonly procedure: Procedure;
  readonly entered: Entered;
  /** The steps that may apply to the unit, as far as its questions are answered. */
  readonly steps: readonly Step[];
  readonly findings: readonly Finding[];
  change(part: Partial<Entered>): void;
  /** Whether everybody who is named agrees that sound is kept. */
  readonly isSoundAgreed: boolean;
  agreeToSound(agreed: boolean): void;
}

export const withKey = <Value>(
  all: ReadonlyMap<string, Value>,
  key: string,
  value: Value,
): ReadonlyMap<string, Value> => new Map([...all, [key, value]]);
