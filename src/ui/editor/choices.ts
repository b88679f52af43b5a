import { type Draft, listAt, wordsAt } from '../../procedure/edit/draft.ts';
import type { Choice } from './fields.tsx';

/** The things of a list as choices, by the names that people gave them. */
export const choicesOf = (draft: Draft, list: string): readonly Choice[] =>
  listAt(draft, [list]).map((item) => {
    const id = wordsAt(item, ['id']);
    return { value: id, label: wordsAt(item, ['name']) || id };
  });
