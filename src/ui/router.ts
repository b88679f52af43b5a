import { createSignal, onCleanup, type Accessor } from 'solid-js';

/** Where the app is. The address tells it, so that reload, back and a second window all work. */
export type Place =
  | { readonly kind: 'start' }
  /** Where procedures are written. */
  | { readonly kind: 'editor' }
  /** Where switches and touch are taught and tried; from a session, back to it. */
  | { readonly kind: 'teach'; readonly session: string | null }
  /** What is looked at before the first step; the one preparation that is under way. */
  | { readonly kind: 'prepare' }
  | { readonly kind: 'work'; readonly session: string }
  | { readonly kind: 'replay'; readonly session: string }
  /** The second person's own window on a session that is worked in another one. */
  | { readonly kind: 'second'; readonly session: string }
  /** How the screen of this device is looked at; from a session, back to it. */
  | { readonly kind: 'display'; readonly session: string | null }
  /** How one person is heard here; from a session, back to it. */
  | { readonly kind: 'check'; readonly person: string; readonly session: string | null };

export function addressOf(place: Place): string {
  switch (place.kind) {
    case 'start':
      return '#/';
    case 'editor':
      return '#/editor';
    case 'prepare':
      return '#/prepare';
    case 'display':
    case 'teach':
      return [`#/${place.kind}`, ...(place.session === null ? [] : [place.session])].map(escaped).join('/');
    case 'check':
      return ['#/check', place.person, ...(place.session === null ? [] : [place.session])].map(escaped).join('/');
    case 'work':
    case 'replay':
    case 'second':
      return `#/${place.kind}/${encodeURIComponent(place.session)}`;
  }
}

const escaped = (part: string, at: number): string => (at === 0 ? part : encodeURIComponent(part));

/** Places of which there is one. */
const PLAIN = [
  { kind: 'editor' },
  { kind: 'prepare' },
  { kind: 'display', session: null },
  { kind: 'teach', session: null },
] as const satisfies readonly Place[];

/** Places that a session belongs to. */
const OF_SESSION = ['work', 'replay', 'second', 'display', 'teach'] as const;

/** The place that an address names. An address that names none leads to the start. */
export function placeAt(hash: string): Place {
  const plain = PLAIN.find((place) => hash === addressOf(place));
  if (plain) return plain;
  const [, kind, first, second] =
    /^#\/(work|replay|second|check|display|teach)\/([^/]+)(?:\/([^/]+))?$/.exec(hash) ?? [];
  const [one, other] = [first, second].map((part) => (part === undefined ? undefined : decoded(part)));
  if (typeof one !== 'string' || other === null) return { kind: 'start' };
  if (kind === 'check') return { kind, person: one, session: other ?? null };
  const named = OF_SESSION.find((each) => each === kind);
  return named && other === undefined ? { kind: named, session: one } : { kind: 'start' };
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
