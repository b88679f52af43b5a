import { createSignal, onCleanup, type Accessor } from 'solid-js';

/** Where the app is. The address tells it, so that reload, back and a second window all work. */
export type Place =
  | { readonly kind: 'start' }
  | { readonly kind: 'work'; readonly session: string }
  | { readonly kind: 'replay'; readonly session: string }
  /** The second person's own window on a session that is worked in another one. */
  | { readonly kind: 'second'; readonly session: string };

export const addressOf = (place: Place): string =>
  place.kind === 'start' ? '#/' : `#/${place.kind}/${encodeURIComponent(place.session)}`;

/** The place that an address names. An address that names none leads to the start. */
export function placeAt(hash: string): Place {
  const [, kind, part] = /^#\/(work|replay|second)\/([^/]+)$/.exec(hash) ?? [];
  const session = part === undefined ? null : decoded(part);
  const isKnown = kind === 'work' || kind === 'replay' || kind === 'second';
  return isKnown && session !== null ? { kind, session } : { kind: 'start' };
}

const decoded = (part: string): string | null => {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
};

export const go = (place: Place): void => {
  location.hash = addressOf(place);
};

/** The current place; follows the address. */
export function createPlace(): Accessor<Place> {
  const [place, setPlace] = createSignal(placeAt(location.hash));
  const follow = (): void => void setPlace(placeAt(location.hash));
  window.addEventListener('hashchange', follow);
  onCleanup(() => window.removeEventListener('hashchange', follow));
  return place;
}
