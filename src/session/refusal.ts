import type { ToolReason } from '../procedure/tool-reasons.ts';
import type { Doubt, SaidReading } from './intent.ts';

/** Why an intent was not carried out. Codes and facts only: the words are made in the language room. */
export type Refusal =
  | { readonly code: 'standing by' }
  | { readonly code: 'session closed' }
  | { readonly code: 'warning first' }
  | { readonly code: 'condition first' }
  | { readonly code: 'tool not usable'; readonly tool: string; readonly reasons: readonly ToolReason[] }
  /** A point of the step wants its answer, named by its key. */
  | { readonly code: 'point first'; readonly point: string }
  /** What keeps the record open, by the keys of the points. */
  | { readonly code: 'unaccounted'; readonly points: readonly string[] }
  /** With the criterion that the seal failed; null where the manual never has it used again. */
  | { readonly code: 'seal not reusable'; readonly seal: string; readonly failed: string | null }
  | { readonly code: 'seal not seated'; readonly seal: string }
  | { readonly code: 'not started by hand'; readonly pattern: string }
  | { readonly code: 'consumable expired'; readonly consumable: string; readonly expires: string }
  | { readonly code: 'consumable used up'; readonly consumable: string }
  | { readonly code: 'no such consumable' }
  /** Of a fresh packing. */
  | { readonly code: 'no expiry date'; readonly consumable: string }
  | { readonly code: 'no quantity'; readonly consumable: string }
  | { readonly code: 'confirm first'; readonly fastener: number }
  /** What waits cannot be confirmed as it is: its value is said again, or it is dropped. */
  | { readonly code: 'in doubt'; readonly fastener: number }
  | { readonly code: 'witness first'; readonly fastener: number }
  | { readonly code: 'no second person' }
  | { readonly code: 'nothing to witness' }
  | { readonly code: 'step witness first' }
  | { readonly code: 'doer is no witness' }
  | { readonly code: 'no name' }
  | { readonly code: 'between steps' }
  | { readonly code: 'not handing over' }
  | { readonly code: 'same mechanic' }
  | { readonly code: 'break first' }
  | { readonly code: 'reason first' }
  | { readonly code: 'no reason wanted' }
  | { readonly code: 'nothing to report on' }
  | { readonly code: 'report first' }
  | { readonly code: 'nothing to confirm' }
  | { readonly code: 'nothing to correct' }
  | { readonly code: 'value first' }
  | { readonly code: 'value unconfirmed' }
  /** A value below zero, of a scale that has none. */
  | { readonly code: 'scale ends at zero' }
  | { readonly code: 'wait first' }
  | { readonly code: 'wait not over'; readonly seconds: number }
  | { readonly code: 'inspector first' }
  | { readonly code: 'own work'; readonly name: string }
  | { readonly code: 'closing' }
  | { readonly code: 'nothing to decide' }
  /** Why a step is not gone back to from the end of the work. */
  | { readonly code: 'not worked again'; readonly because: 'not left open' | 'moved since' | 'nut seated' }
  | { readonly code: 'nothing to sign' }
  | { readonly code: 'not the mechanic'; readonly name: string }
  | { readonly code: 'hold first' }
  | { readonly code: 'holding' }
  | { readonly code: 'set down first' }
  | { readonly code: 'nothing to hold' }
  | { readonly code: 'not holding' }
  | { readonly code: 'answer first' }
  | { readonly code: 'no such answer' }
  | { readonly code: 'no reading here' }
  | { readonly code: 'reading first'; readonly fastener: number }
  | { readonly code: 'out of order'; readonly offered: number; readonly expected: number }
  | { readonly code: 'no such fastener'; readonly offered: number; readonly expected: number }
  | { readonly code: 'not the last reading'; readonly offered: number; readonly last: number }
  | { readonly code: 'unclear'; readonly doubt: Doubt; readonly readings: readonly SaidReading[] }
  | { readonly code: 'not a setting tool' }
  | { readonly code: 'running torque is read'; readonly fastener: number }
  | { readonly code: 'first step' }
  | { readonly code: 'readings stand' }
  | { readonly code: 'not standing by' };
