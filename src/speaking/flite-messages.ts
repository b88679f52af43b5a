import type { FliteOptions } from './flite.ts';
import type { Sound } from './sound.ts';

/** What the page asks of the worker. `load` comes first and once. */
export type FliteRequest =
  | { readonly kind: 'load'; readonly wasmUrl: string }
  | { readonly kind: 'synthesise'; readonly id: number; readonly text: string; readonly options: FliteOptions };

/** What the worker answers. Reasons are for a person. */
export type FliteReply =
  | { readonly kind: 'loaded' }
  | { readonly kind: 'not loaded'; readonly reason: string }
  | { readonly kind: 'synthesised'; readonly id: number; readonly sound: Sound }
  | { readonly kind: 'not synthesised'; readonly id: number; readonly reason: string };
