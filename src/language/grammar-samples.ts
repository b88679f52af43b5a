/** Sample utterances of forms, from which the recogniser learns which word may follow which. */
import { CORRECTION } from './carriers.ts';
import type { Form, Part } from './grammar.ts';

/** Stands for any digit in a sample. */
export const ANY_DIGIT = '#';

/**
 * Few utterances that show every pair of neighbouring words of these forms, with a digit in each place of a number. They
 * have offered words only. The recogniser counts pairs, so that no pair is shown oftener than it takes to show the rest.
 */
export function samplesOf(forms: readonly Form[]): readonly string[] {
  const known = new Set(pairsOf(`${ANY_DIGIT} ${ANY_DIGIT}`));
  const chosen: string[] = [];
  const all = forms.filter((form) => !isRare(form)).flatMap(wordingsOfForm);
  for (;;) {
    const best = all
      .map((text) => ({ text, fresh: pairsOf(text).filter((pair) => !known.has(pair)).length }))
      .filter(({ fresh }) => fresh > 0)
      .toSorted((a, b) => worth(b) - worth(a))[0];
    if (!best) return chosen;
    chosen.push(best.text);
    for (const pair of pairsOf(best.text)) known.add(pair);
  }
}

/** "correction stud four at two four": what it is made of is shown by other forms. */
const isRare = ({ names, parts }: Form): boolean =>
  names && parts.some((part) => part.kind === 'words' && part.wordings === CORRECTION);

/** Pairs that are new, less those that are shown again. */
const worth = ({ text, fresh }: { readonly text: string; readonly fresh: number }): number =>
  2 * fresh - pairsOf(text).length;

function pairsOf(text: string): readonly string[] {
  const words = ['<s>', ...text.split(' '), '</s>'];
  return words.slice(1).map((word, i) => `${words[i]} ${word}`);
}

/** Every wording of a form in offered words. Where two numbers follow each other, their digits run on: one stands for all. */
function wordingsOfForm({ parts }: Form): readonly string[] {
  return parts
    .map(wordingsOfPart)
    .reduce<readonly string[]>((all, place) => all.flatMap((text) => place.map((words) => `${text} ${words}`)), [''])
    .map((text) => text.split(' ').filter(Boolean).join(' '));
}

function wordingsOfPart(part: Part): readonly string[] {
  switch (part.kind) {
    case 'words':
      return [
        ...(part.optional ? [''] : []),
        ...part.wordings.filter(({ offered }) => offered).map(({ words }) => words),
      ];
    case 'number':
    case 'taken back':
      return [ANY_DIGIT];
  }
}
