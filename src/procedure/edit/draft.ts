/**
 * A procedure while it is written: the JSON of its file, sound or not, so that nothing a person typed is lost. Every edit
 * gives a new draft and touches only its own place: what the page has no field for stays as it was.
 */
import { FORMAT, VERSION } from '../schema.ts';

export type Json = null | boolean | number | string | readonly Json[] | JsonFields;
export interface JsonFields {
  readonly [key: string]: Json;
}
export type Draft = JsonFields;

/** Field names and places in lists (from 0), from the outside in. */
export type Path = readonly (string | number)[];

/** A draft with nothing in it yet but what every file begins with. */
export const emptyDraft = (): Draft => ({ format: FORMAT, version: VERSION, tools: [], patterns: [], steps: [] });

export const isFields = (json: Json | undefined): json is JsonFields =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

export const isList = (json: Json | undefined): json is readonly Json[] => Array.isArray(json);

/** What stands at a path; undefined where nothing does. */
export function at(json: Json | undefined, path: Path): Json | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return json;
  return at(childOf(json, key), rest);
}

function childOf(json: Json | undefined, key: string | number): Json | undefined {
  if (isList(json)) return typeof key === 'number' ? json[key] : undefined;
  return isFields(json) && Object.hasOwn(json, key) ? json[key] : undefined;
}

/** The members of a list; none where no list stands. */
export function listAt(json: Json | undefined, path: Path): readonly Json[] {
  const found = at(json, path);
  return isList(found) ? found : [];
}

/** Puts a value at a path, with the objects on the way to it. A path into a list that is not there changes nothing. */
export function put(draft: Draft, path: Path, value: Json): Draft {
  const changed = withValue(draft, path, value);
  return isFields(changed) ? changed : draft;
}

function withValue(json: Json | undefined, [key, ...rest]: Path, value: Json): Json {
  if (key === undefined) return value;
  if (typeof key === 'number') {
    return isList(json) ? json.map((item, i) => (i === key ? withValue(item, rest, value) : item)) : (json ?? []);
  }
  const fields = isFields(json) ? json : {};
  return { ...fields, [key]: withValue(childOf(fields, key), rest, value) };
}

/** Takes a field away, and the objects around it that this leaves empty; or a member out of a list. */
export function take(draft: Draft, path: Path): Draft {
  const changed = without(draft, path);
  return isFields(changed) ? changed : draft;
}

function without(json: Json | undefined, [key, ...rest]: Path): Json | undefined {
  if (key === undefined || json === undefined) return undefined;
  if (isList(json)) {
    if (typeof key !== 'number') return json;
    // The fields of a member may all go; the member itself goes only when it is asked for.
    return json.flatMap((item, i) => (i !== key ? [item] : rest.length === 0 ? [] : [without(item, rest) ?? {}]));
  }
  if (!isFields(json)) return json;
  const child = without(childOf(json, key), rest);
  if (child !== undefined && !(isFields(child) && Object.keys(child).length === 0)) {
    return { ...json, [key]: child };
  }
  return Object.fromEntries(Object.entries(json).filter(([name]) => name !== key));
}

/** Puts a member into a list, before the one at `index`; at the end where no index is given. The list is made if needed. */
export function insert(draft: Draft, list: Path, item: Json, index?: number): Draft {
  const members = listAt(draft, list);
  const place = index ?? members.length;
  return put(draft, list, [...members.slice(0, place), item, ...members.slice(place)]);
}

/** Moves a member of a list by some places, as far as the list goes. */
export function move(draft: Draft, list: Path, from: number, by: number): Draft {
  const members = listAt(draft, list);
  const item = members[from];
  const to = Math.min(Math.max(from + by, 0), members.length - 1);
  if (item === undefined || to === from) return draft;
  const others = members.filter((_, i) => i !== from);
  return put(draft, list, [...others.slice(0, to), item, ...others.slice(to)]);
}

/** The words in a field; the empty text where there are none. */
export function wordsAt(json: Json | undefined, path: Path): string {
  const found = at(json, path);
  return typeof found === 'string' ? found : '';
}

/** The draft as the text of a file. */
export const fileText = (draft: Draft): string => `${JSON.stringify(draft, null, 2)}\n`;
