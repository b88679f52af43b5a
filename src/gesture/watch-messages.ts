/** What page and watching worker tell each other. A picture goes one way only, and nothing of it comes back. */
import type { Gesture, Trouble } from './gesture.ts';
import type { WatcherOptions } from './watcher.ts';

export type WatchRequest =
  /** Begins anew, with the scene unlearned. */
  | { readonly kind: 'begin'; readonly options: WatcherOptions }
  /** @property time milliseconds on the clock of the page */
  | { readonly kind: 'picture'; readonly picture: ImageBitmap; readonly time: number };

/** Follows each picture. */
export interface WatchReply {
  readonly gesture: Gesture | null;
  readonly trouble: Trouble | null;
  /** Why a picture could not be looked at; null where it could. */
  readonly refused: string | null;
}
