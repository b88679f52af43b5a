import { type Draft, isFields, type Json } from '../../procedure/edit/draft.ts';
import { jsonFaults } from '../../procedure/json-text.ts';
import { LARGEST_FILE } from '../../procedure/procedure.ts';
import { FORMAT } from '../../procedure/schema.ts';
import { editorFiles } from '../../words/editor-files.ts';

export type Opened =
  { readonly kind: 'opened'; readonly draft: Draft } | { readonly kind: 'refused'; readonly why: readonly string[] };

/** The text of a procedure file as a draft. Faults in its fields are no reason to refuse it: they are mended on the page. */
export function openDraft(text: string): Opened {
  if (text.length > LARGEST_FILE) return refused(editorFiles.tooLong(text.length, LARGEST_FILE));
  const faults = jsonFaults(text);
  if (faults.length > 0) return refused(...faults.map(({ path, message }) => (path ? `${path}: ${message}` : message)));
  const json = JSON.parse(text) as Json;
  if (!isFields(json) || json.format !== FORMAT) return refused(editorFiles.noProcedure);
  return { kind: 'opened', draft: json };
}

const refused = (...why: readonly string[]): Opened => ({ kind: 'refused', why });
