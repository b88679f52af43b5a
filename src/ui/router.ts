import { createSignal, onCleanup, type Accessor } from 'solid-js';

/** Where the app is. The address tells it, so that reload, back and a second window all work. */
export type Place =
  | { readonly kind: 'start' }
  | { readonly kind: 'work'; readonly session: string }
  | { readonly kind: 'replay'; readonly session: string };

export const addressOf = (place: Place): string =>
  place.kind === 'start' ? '#/' : `#/${place.kind}/${encodeURIComponent(place.session)}`;

export function placeAt(hash: string): Place {
  const [, kind, session] = hash.split('/');
  const name = decoded(session ?? '');
  if ((kind === 'work' || kind === 'replay') && name) return { kind, session: name };
  return { kind: 'start' };
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
