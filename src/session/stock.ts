/** Consumables: how often each was taken, until when it may be used, and the fresh ones that were fetched in the work. */
import type { Procedure } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import { wellFormed, type Meaning } from './intent.ts';
import { pointOf, type PointAnswer } from './point.ts';
import { expiriesIn } from './preparation/recorded.ts';
import { typedCount, typedDay } from './preparation/typed.ts';
import type { Refusal } from './refusal.ts';
import type { SessionState } from './state.ts';

type Consumable = Procedure['consumables'][number];

/** A packing that was fetched in the work. It takes the place of what there was before. */
export interface FreshPacking {
  /** As it stands on the packing; null where none was entered. */
  readonly batch: string | null;
  /** The last day on which it may be used, 'YYYY-MM-DD'; null where it does not expire. */
  readonly expires: string | null;
  /** How many there are in it; null where they are not counted. */
  readonly quantity: number | null;
  /** How often the consumable had been taken before. */
  readonly takenBefore: number;
}

type FreshMeaning = Extract<Meaning, { kind: 'fresh consumable' }>;
type Fetched = Extract<EventBody, { kind: 'consumable fetched' }>;

/** Why a consumable may not be taken: its day is past, or there is none left. Null where it may, and where none is named. */
export function consumableRefusal(state: SessionState, id: string | undefined): Refusal | null {
  const consumable = consumableIn(state, id);
  if (!consumable) return null;
  const fresh = state.fetched.get(consumable.id);
  const expires = fresh ? fresh.expires : expiriesIn(state.prepared).get(consumable.id);
  const expired = expires === undefined || expires === null ? null : expiredOn(state, consumable, expires);
  if (expired) return expired;
  const quantity = fresh ? fresh.quantity : consumable.quantity;
  const taken = (state.taken.get(consumable.id) ?? 0) - (fresh?.takenBefore ?? 0);
  return quantity !== undefined && quantity !== null && taken >= quantity
    ? { code: 'consumable used up', consumable: consumable.id }
    : null;
}

const expiredOn = ({ day }: SessionState, { id }: Consumable, expires: string): Refusal | null =>
  day !== null && expires < day ? { code: 'consumable expired', consumable: id, expires } : null;

/** What is entered of a fresh packing: refused where that is past its day too, or does not say what the procedure asks for. */
export function fetchConsumable(state: SessionState, { consumable: id, ...typed }: FreshMeaning): Decision {
  const consumable = consumableIn(state, id);
  if (!consumable) return refuse({ code: 'no such consumable' });
  const day = typedDay(typed.expires);
  if (day.kind === 'wrong' || (day.kind === 'nothing' && consumable.expires))
    return refuse({ code: 'no expiry date', consumable: id });
  const expires = day.kind === 'value' ? day.value : null;
  const expired = expires === null ? null : expiredOn(state, consumable, expires);
  if (expired) return refuse(expired);
  const count = typedCount(typed.quantity);
  if (count.kind === 'wrong' || (count.kind === 'nothing' && consumable.quantity !== undefined))
    return refuse({ code: 'no quantity', consumable: id });
  return accept({
    kind: 'consumable fetched',
    consumable: id,
    batch: tidyBatch(typed.batch),
    expires,
    quantity: count.kind === 'value' ? count.value : null,
  });
}

/** In letters: more than any packing shows, and a bound for what comes from outside. */
const LONGEST_BATCH = 60;

function tidyBatch(text: string): string | null {
  const tidy = [...wellFormed(text).trim().replace(/\s+/g, ' ')].slice(0, LONGEST_BATCH).join('');
  return tidy === '' ? null : tidy;
}

const consumableIn = ({ procedure }: SessionState, id: string | undefined): Consumable | undefined =>
  procedure.consumables.find((each) => each.id === id);

/** The state after a fresh packing was fetched. */
export function withFetched(state: SessionState, { consumable, batch, expires, quantity }: Fetched): SessionState {
  const fresh = { batch, expires, quantity, takenBefore: state.taken.get(consumable) ?? 0 };
  return { ...state, fetched: new Map([...state.fetched, [consumable, fresh]]) };
}

/** The consumable that the answer to a point takes: a new seal, or what one is coated with. */
export function takenBy({ seals }: Procedure, key: string, answer: PointAnswer | undefined): string | undefined {
  const point = pointOf(key);
  if (point?.kind === 'coated' && answer === 'affirm') return seals.find(({ id }) => id === point.seal)?.coatedFrom;
  if (point?.kind === 'seal' && answer === 'replace') return seals.find(({ id }) => id === point.seal)?.replacedBy;
  return undefined;
}

/** The consumables that no seal names: how often they are taken nobody asks, so they count as used. */
export const usedAnyhow = ({ seals, consumables }: Procedure): readonly string[] => {
  const named = new Set(seals.flatMap(({ coatedFrom, replacedBy }) => [coatedFrom, replacedBy]));
  return consumables.filter(({ id }) => !named.has(id)).map(({ id }) => id);
};
