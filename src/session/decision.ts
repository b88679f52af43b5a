import type { EventBody } from './event.ts';
import type { Refusal } from './refusal.ts';

/** What follows from an intent: events, all of them together, or the reason why nothing happens. */
export type Decision =
  | { readonly kind: 'accepted'; readonly events: readonly EventBody[] }
  | { readonly kind: 'refused'; readonly reason: Refusal };

export const accept = (...events: readonly EventBody[]): Decision => ({ kind: 'accepted', events });
export const refuse = (reason: Refusal): Decision => ({ kind: 'refused', reason });
