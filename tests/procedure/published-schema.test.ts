import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { SCHEMA_FILE, schemaText } from '../../src/cli/procedure-schema.ts';

type Node = { readonly [key: string]: unknown };
const published = JSON.parse(readFileSync(SCHEMA_FILE, 'utf8')) as Node;

function* nodesOf(value: unknown): Generator<Node> {
  if (typeof value !== 'object' || value === null) return;
  if (!Array.isArray(value)) yield value as Node;
  for (const child of Object.values(value)) yield* nodesOf(child);
}

it('the published file is what the schema in the program yields; if not: npx tsx src/cli/procedure-schema.ts', async () => {
  expect(readFileSync(SCHEMA_FILE, 'utf8')).toBe(await schemaText());
});

it('it is JSON Schema 2020-12 with an id of its own', () => {
  expect(published).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:bothhands:procedure:1',
  });
});

it('no object in it takes fields that it does not name', () => {
  const objects = [...nodesOf(published)].filter(({ type, properties }) => type === 'object' && properties);
  expect(objects.length).toBeGreaterThan(40);
  expect(objects.filter(({ additionalProperties }) => additionalProperties !== false)).toEqual([]);
});

it('every reference in it leads to a definition, and an order may hold orders', () => {
  const definitions = Object.keys(published.$defs as Node);
  const references = [...nodesOf(published)].flatMap(({ $ref }) => (typeof $ref === 'string' ? [$ref] : []));
  expect(new Set(references)).toEqual(new Set(definitions.map((name) => `#/$defs/${name}`)));
  expect(JSON.stringify((published.$defs as Node).order)).toContain('"$ref":"#/$defs/order"');
});

it('nothing in it is left open', () => {
  const open = Object.entries(published.$defs as Node).filter(([, node]) => Object.keys(node as Node).length === 0);
  expect(open).toEqual([]);
  expect(JSON.stringify(published)).not.toContain('{}');
});
