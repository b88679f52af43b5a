/** Publishes the procedure format as JSON Schema 2020-12: `tsx src/cli/procedure-schema.ts` writes demo-data/procedure.schema.json. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { toJsonSchema } from '@valibot/to-json-schema';
import { format } from 'prettier';
import { Decimal, Id, Text } from '../procedure/fields.ts';
import { Layout, OrderVariants, Pass } from '../procedure/pattern-schema.ts';
import { ProcedureSchema, VERSION } from '../procedure/schema.ts';
import { StepSchema } from '../procedure/step-schema.ts';

export const SCHEMA_FILE = path.join(import.meta.dirname, '../../demo-data/procedure.schema.json');

/** Laws that span fields or need arithmetic. The schema cannot say them; the check command and the app do. */
const BEYOND_JSON_SCHEMA = new Set(['check', 'regex']);

/** The text of the published schema: what may stand in a file, before anything is computed from it. */
export function schemaText(): Promise<string> {
  const { $schema, ...schema } = toJsonSchema(ProcedureSchema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    definitions: {
      text: Text,
      id: Id,
      decimal: Decimal,
      layout: Layout,
      order: OrderVariants,
      pass: Pass,
      step: StepSchema,
    },
    // A regex that asks for the u flag is reported too; JSON Schema patterns are Unicode ones anyway.
    overrideAction: ({ valibotAction, jsonSchema }) =>
      BEYOND_JSON_SCHEMA.has(valibotAction.type) ? jsonSchema : undefined,
  });
  const head = {
    $schema,
    $id: `urn:bothhands:procedure:${VERSION}`,
    title: `Bothhands procedure, version ${VERSION}`,
    description: 'The shape of a procedure file. Names, orders, passes and values are checked by the program as well.',
  };
  return format(JSON.stringify({ ...head, ...schema }), { parser: 'json', printWidth: 120 });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeFile(SCHEMA_FILE, await schemaText());
