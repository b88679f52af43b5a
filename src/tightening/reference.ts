/**
 * General tables. They apply only when the manual gives no value; every lookup asks for that to be stated, and every
 * answer carries its source. A torque for lubricated threads is never derived from them: shop rules contradict each other.
 */
import { limits, torque, type Torque } from '../units/index.ts';
import { tables } from '../words/tables.ts';
import { refuse } from './refusal.ts';
import { MINIMUM_PREVAILING, RECOMMENDED, type Source } from './reference-tables.ts';
import type { TorqueWindow } from './verdict.ts';

export type { Source } from './reference-tables.ts';

export interface RecommendedTorque {
  readonly recommended: TorqueWindow;
  /** Never to be exceeded; the run-down torque is added to it as to the others. */
  readonly maximum: Torque;
  /** The source marks the value as estimated. */
  readonly estimated: boolean;
  readonly condition: 'oil-free cadmium-plated threads';
  readonly source: Source;
}

export interface TableQuestion {
  /** Nominal size and threads per inch, '1/4-28'. */
  readonly thread: string;
  /** Tension-type nuts or the thinner shear-type ones. */
  readonly nut: 'tension' | 'shear';
  readonly threads: 'oil-free cadmium-plated' | 'lubricated';
  /** Stated by the person who asks: the manual was looked up and has no value. */
  readonly manual: 'gives no value' | 'gives a value';
}

/** @throws Refused `manual-comes-first`, `lubricated-not-derived`, `not-in-table`. */
export function recommendedTorque({ thread, nut, threads, manual }: TableQuestion): RecommendedTorque {
  if (manual !== 'gives no value') refuse('manual-comes-first', tables.manualComesFirst);
  if (threads !== 'oil-free cadmium-plated') {
    refuse('lubricated-not-derived', tables.onlyOilFree);
  }
  const row = RECOMMENDED.rows.find((candidate) => candidate.thread === thread);
  if (row === undefined) return refuse('not-in-table', tables.noThread(RECOMMENDED.source.table, thread));
  const [low, high, maximum] = row[nut];
  return {
    recommended: limits(torque(low, 'lbf·in'), torque(high, 'lbf·in')),
    maximum: torque(maximum, 'lbf·in'),
    estimated: nut === 'shear' && row.shearEstimated === true,
    condition: 'oil-free cadmium-plated threads',
    source: RECOMMENDED.source,
  };
}

export type PrevailingTable = keyof typeof MINIMUM_PREVAILING;

/**
 * The least torque that must turn a used self-locking nut before it seats. The tables in use differ; the manual
 * or the local rules say which holds.
 * @throws Refused `not-in-table`.
 */
export function minimumPrevailing(thread: string, table: PrevailingTable): { minimum: Torque; source: Source } {
  const { rows, source } = MINIMUM_PREVAILING[table];
  const value = rows.find(([size]) => size === thread)?.[1];
  if (value === undefined) return refuse('not-in-table', tables.noThread(source.table, thread));
  return { minimum: torque(value, 'lbf·in'), source };
}
