/**
 * Forms: the building blocks of the number grammar, as data.
 *
 * A form pairs words with the figures they stand for, in the order in which both are said and written. Because every
 * form is such a pairing, one definition is read in both directions: words to figures, and figures to words.
 */

export type Form =
  | { readonly kind: 'word'; readonly word: string; readonly figures: string; readonly offered: boolean }
  /** Figures that stand in the number although no word is said for them: the '00' of "two hundred". */
  | { readonly kind: 'unsaid'; readonly figures: string }
  | { readonly kind: 'sequence'; readonly parts: readonly Form[] }
  /** The first part is the usual one: saying a number takes the first that fits. Reading takes all. */
  | { readonly kind: 'either'; readonly parts: readonly Form[] }
  /** One or more. */
  | { readonly kind: 'many'; readonly part: Form };

/** A word that people say and the recogniser is told to expect. */
export const word = (word: string, figures = ''): Form => ({ kind: 'word', word, figures, offered: true });

/** A spelling that is understood in text, but never said by us and never offered to the recogniser. */
export const spelling = (word: string, figures = ''): Form => ({ kind: 'word', word, figures, offered: false });

export const unsaid = (figures: string): Form => ({ kind: 'unsaid', figures });
export const sequence = (...parts: readonly Form[]): Form => ({ kind: 'sequence', parts });
export const either = (...parts: readonly Form[]): Form => ({ kind: 'either', parts });
export const many = (part: Form): Form => ({ kind: 'many', part });

const nothing = unsaid('');
/** The part is usually said. */
export const usually = (part: Form): Form => either(part, nothing);
/** The part is usually not said. */
export const perhaps = (part: Form): Form => either(nothing, part);

/** Every offered word of a form, each once, in the order of the definition. */
export function offeredWords(form: Form): readonly string[] {
  const found = new Set<string>();
  const visit = (part: Form): void => {
    switch (part.kind) {
      case 'word':
        if (part.offered) found.add(part.word);
        return;
      case 'unsaid':
        return;
      case 'many':
        return visit(part.part);
      case 'sequence':
      case 'either':
        return part.parts.forEach(visit);
    }
  };
  visit(form);
  return [...found];
}
