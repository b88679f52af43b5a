/** Steps on their way from a document into a draft. */
import type { Json, JsonFields } from '../edit/draft.ts';

export interface ImportedStep {
  readonly id: string;
  readonly fields: JsonFields;
}

interface Parts {
  /** As the document numbers it: "2.1". */
  readonly number: string;
  /** The empty text where the document gives none. */
  readonly title: string;
  readonly text: string;
  readonly kind: string;
  readonly hazards: readonly Json[];
  readonly notes: readonly string[];
  readonly fields?: JsonFields;
}

/** A step with its number before its title, so that it is found again in the document. */
export function importedStep({ number, title, text, kind, hazards, notes, fields = {} }: Parts): ImportedStep {
  const named = title || beginning(text);
  return {
    id: `step-${number.replaceAll('.', '-').toLowerCase()}`,
    fields: {
      kind,
      title: `${number} ${named}`.trim(),
      text: text || title,
      ...(hazards.length > 0 ? { hazards } : {}),
      ...(notes.length > 0 ? { notes } : {}),
      ...fields,
    },
  };
}

const LONGEST_TITLE = 48;

/** The first sentence, or its first words. */
function beginning(text: string): string {
  const sentence = /^.+?(?=[.;:!?](?:\s|$)|$)/u.exec(text)?.[0] ?? text;
  if (sentence.length <= LONGEST_TITLE) return sentence;
  return `${sentence.slice(0, LONGEST_TITLE).replace(/\s+\S*$/u, '')}…`;
}
