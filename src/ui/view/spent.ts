/** The consumable that is asked for now and may not be taken: what is entered of a fresh one. */
import { sayRefusal } from '../../language/say-refusal.ts';
import { spentConsumable } from '../../session/settle.ts';
import type { SessionState } from '../../session/state.ts';

export interface SpentView {
  readonly consumable: string;
  readonly name: string;
  /** Why it may not be taken, and what to do. */
  readonly why: string;
  readonly wantsExpiry: boolean;
  readonly wantsQuantity: boolean;
}

export function spentView(state: SessionState): SpentView | null {
  const spent = spentConsumable(state);
  const consumable = spent && state.procedure.consumables.find(({ id }) => id === spent.consumable);
  if (!consumable) return null;
  return {
    consumable: consumable.id,
    name: consumable.name,
    why: sayRefusal(state, spent),
    wantsExpiry: consumable.expires,
    wantsQuantity: consumable.quantity !== undefined,
  };
}
