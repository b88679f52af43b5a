import { get, update, type UseStore } from 'idb-keyval';
import { createStrictStore } from './strict-store.ts';

/** What is kept of the seal that is made when a session is closed. */
export type KeptSeal =
  | { readonly kind: 'sealed'; /** JWS, as found. */ readonly seal: string }
  /** It is to be made yet: the session is not closed, or sealing broke off or failed. */
  | { readonly kind: 'due' }
  /** Nothing: it was removed, or the session was closed by a program that noted nothing. */
  | { readonly kind: 'none' };

/** The seals that were made when sessions were closed, beside their records. */
export interface SealBook {
  /** Notes that a seal is to be made, before there is anything to seal. One that is there stays. */
  expect(session: string): Promise<void>;
  /** Keeps the seal of a session; the first one stays. When this settles it is on disk. */
  keep(session: string, seal: string): Promise<void>;
  read(session: string): Promise<KeptSeal>;
}

/** In the place of a seal; no JWS looks like it. */
const DUE = 'due';

/** Opens the seals of this origin. */
export function openSealBook(store: UseStore = createStrictStore('bothhands-seals', 'seals')): SealBook {
  // One transaction looks and writes: another window may seal the same session.
  const change = (session: string, to: string, from: (kept: KeptSeal) => boolean): Promise<void> =>
    update<unknown>(session, (found) => (from(asKept(found)) ? to : found), store);
  return {
    expect: (session) => change(session, DUE, ({ kind }) => kind === 'none'),
    keep: (session, seal) => change(session, seal, ({ kind }) => kind !== 'sealed'),
    read: async (session) => asKept(await get<unknown>(session, store)),
  };
}

function asKept(found: unknown): KeptSeal {
  if (typeof found !== 'string') return { kind: 'none' };
  return found === DUE ? { kind: 'due' } : { kind: 'sealed', seal: found };
}
