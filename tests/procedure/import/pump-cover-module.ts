/** A data module and what its import gives. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Draft, type Json, listAt, wordsAt } from '../../../src/procedure/edit/draft.ts';
import { fromDataModule, type LeftOut } from '../../../src/procedure/import/data-module.ts';

// Element names as in the public sample of S1000D issue 4.1; quantities and step attributes from memory. The module is
// in our own words and all of it is invented.
export const MODULE = readFileSync(path.join(import.meta.dirname, 'pump-cover-module.xml'), 'utf8');

export function imported(xml: string): { readonly draft: Draft; readonly leftOut: readonly LeftOut[] } {
  const found = fromDataModule(xml);
  if (found.kind === 'refused') throw new Error(found.why);
  return found;
}
export const refusal = (xml: string): string => {
  const found = fromDataModule(xml);
  return found.kind === 'refused' ? found.why : 'imported';
};
export const stepTitled = (draft: Draft, title: RegExp): Json | undefined =>
  listAt(draft, ['steps']).find((step) => title.test(wordsAt(step, ['title'])));
export const leftLines = (xml: string): readonly string[] =>
  imported(xml).leftOut.map(({ place, what }) => `${place}: ${what}`);
