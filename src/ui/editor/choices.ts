import { type Draft, listAt, wordsAt } from '../../procedure/edit/draft.ts';
import type { Choice } from './fields.tsx';

/** What a file may say in a field as choices, with the words for each. */
export const choicesFrom = <Value extends string>(
  values: readonly Value[],
  words: Readonly<Record<Value, string>>,
): readonly Choice[] => values.map((value) => ({ value, label: words[value] }));

/** The things of a list as choices, by the names that people gave them. */
export const choicesOf = (draft: Draft, list: string): readonly Choice[] =>
  listAt(draft, [list]).map((item) => {
    const id = wordsAt(item, ['id']);
    return { value: id, label: wordsAt(item, ['name']) || id };
  });
