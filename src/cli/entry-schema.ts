/** Publishes the form of an entry as JSON Schema 2020-12: `tsx src/cli/entry-schema.ts` writes demo-data/session-entry.schema.json. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';
import { format } from 'prettier';
import { EntrySchema, RECORD_VERSION } from '../record/entry.ts';
import { EventBodySchema } from '../record/event-schema.ts';
import { Count, DecimalText, Hash, Time, WrittenTorque } from '../record/exactly.ts';
import { MeaningSchema, RefusalSchema } from '../record/input-schema.ts';

export const ENTRY_SCHEMA_FILE = path.join(import.meta.dirname, '../../demo-data/session-entry.schema.json');

/** What a schema cannot say: laws that need arithmetic, which the program checks, and that a list stays as it is in memory. */
const BEYOND_JSON_SCHEMA = new Set(['check', 'readonly']);

const PROCEDURE = 'The procedure file as it was: see procedure.schema.json.';

/** The text of the published schema: what each line of “entries.jsonl” in a sealed file may be. */
export function entrySchemaText(): Promise<string> {
  const { $schema, ...schema } = toJsonSchema(EntrySchema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    definitions: {
      body: EventBodySchema,
      meaning: MeaningSchema,
      refusal: RefusalSchema,
      torque: WrittenTorque,
      decimal: DecimalText,
      count: Count,
      time: Time,
      hash: Hash,
    },
    // The one thing in an entry that may be anything is the procedure, which has a schema of its own.
    overrideSchema: ({ valibotSchema }) => (valibotSchema.type === 'unknown' ? { description: PROCEDURE } : undefined),
    overrideAction: ({ valibotAction, jsonSchema }) =>
      BEYOND_JSON_SCHEMA.has(valibotAction.type) ? jsonSchema : undefined,
  });
  const head = {
    $schema,
    $id: `urn:bothhands:session-entry:${RECORD_VERSION}`,
    title: `Bothhands session entry, version ${RECORD_VERSION}`,
    description:
      'One line of “entries.jsonl” in a sealed file. How the hashes bind the entries, and what follows from their order, is checked by the program as well.',
  };
  return format(JSON.stringify({ ...head, ...schema }), { parser: 'json', printWidth: 120 });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeFile(ENTRY_SCHEMA_FILE, await entrySchemaText());
