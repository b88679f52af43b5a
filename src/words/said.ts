/** The words of one part of the interface: English, until another language is chosen. */
import type { Words } from './words.ts';

let chosen: Partial<Words> = {};

/** From now on the words of another language are shown and spoken; English where they lack a part. */
export function useWords(words: Partial<Words>): void {
  chosen = words;
}

/**
 * The words of a part. They are looked up each time one is used, so nothing that is worked out once and for all, such as a
 * constant of a module, may hold one.
 *
 * The bundler is told that it does nothing else, so that a part that nobody reads is left out of the page.
 */
// @__NO_SIDE_EFFECTS__
export function said<T extends object>(part: keyof Words, english: T): T {
  return new Proxy(english, {
    get: (_, key): unknown =>
      Reflect.get((chosen[part] as Partial<T> | undefined) ?? english, key) ?? Reflect.get(english, key),
  });
}
