/** A reader of JSON Schema 2020-12 for as much of it as our published schemas use; a keyword that it does not know fails. */
import { isDay } from '../../src/procedure/day.ts';

export type Node = Readonly<Record<string, unknown>>;
type Keyword = (wanted: unknown, value: unknown, node: Node, root: Node) => boolean;

const isObject = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const nodes = (wanted: unknown): readonly Node[] => wanted as readonly Node[];

const TYPES: Readonly<Record<string, (value: unknown) => boolean>> = {
  object: isObject,
  array: Array.isArray,
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: Number.isInteger,
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
};

const FORMATS: Readonly<Record<string, (text: string) => boolean>> = {
  'date-time': (text) => !Number.isNaN(Date.parse(text)),
  date: isDay,
};

/** A word about other types than its own holds, as the standard has it. */
const KEYWORDS: Readonly<Record<string, Keyword>> = {
  type: (wanted, value) => TYPES[String(wanted)]?.(value) ?? false,
  const: (wanted, value) => wanted === value,
  enum: (wanted, value) => (wanted as readonly unknown[]).includes(value),
  pattern: (wanted, value) => typeof value !== 'string' || new RegExp(String(wanted), 'u').test(value),
  format: (wanted, value) => FORMATS[String(wanted)]?.(String(value)) ?? false,
  minimum: (wanted, value) => typeof value !== 'number' || value >= Number(wanted),
  maximum: (wanted, value) => typeof value !== 'number' || value <= Number(wanted),
  minLength: (wanted, value) => typeof value !== 'string' || value.length >= Number(wanted),
  maxLength: (wanted, value) => typeof value !== 'string' || value.length <= Number(wanted),
  items: (wanted, value, _, root) => !Array.isArray(value) || value.every((each) => fits(each, wanted as Node, root)),
  required: (wanted, value) => !isObject(value) || (wanted as string[]).every((key) => Object.hasOwn(value, key)),
  properties: (wanted, value, _, root) =>
    !isObject(value) ||
    Object.entries(wanted as Readonly<Record<string, Node>>).every(
      ([key, node]) => !Object.hasOwn(value, key) || fits(value[key], node, root),
    ),
  additionalProperties: (wanted, value, { properties = {} }) =>
    wanted !== false || !isObject(value) || Object.keys(value).every((key) => Object.hasOwn(properties as Node, key)),
  anyOf: (wanted, value, _, root) => nodes(wanted).some((node) => fits(value, node, root)),
  oneOf: (wanted, value, _, root) => nodes(wanted).filter((node) => fits(value, node, root)).length === 1,
  $ref: (wanted, value, _, root) => fits(value, definition(root, String(wanted)), root),
};
const SAYS_NOTHING = new Set(['$schema', '$id', '$defs', 'title', 'description']);

function definition(root: Node, reference: string): Node {
  const found = (root.$defs as Readonly<Record<string, Node>>)[reference.replace('#/$defs/', '')];
  if (!found) throw new Error(`The schema has no ${reference}.`);
  return found;
}

/** Whether a JSON value is what a schema lets in. @throws where the schema uses a keyword that is not known here */
export function fits(value: unknown, node: Node, root: Node = node): boolean {
  return Object.entries(node).every(([word, wanted]) => {
    if (SAYS_NOTHING.has(word)) return true;
    const holds = KEYWORDS[word];
    if (!holds) throw new Error(`The keyword “${word}” is not known here.`);
    return holds(wanted, value, node, root);
  });
}
