/** The demonstration files, and small changes to them that a test can read. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { readProcedure, type Fault, type Procedure } from '../../src/procedure/procedure.ts';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type DemoName = 'ropeway-oil-cooler' | 'fire-boat-pump-cover';
export const DEMOS: readonly DemoName[] = ['ropeway-oil-cooler', 'fire-boat-pump-cover'];

export const demoPath = (name: DemoName): string => path.join(import.meta.dirname, `../../demo-data/${name}.json`);
export const demoText = (name: DemoName): string => readFileSync(demoPath(name), 'utf8');
export const demoJson = (name: DemoName): Json => JSON.parse(demoText(name)) as Json;

/** Members of a list may be named by their id: `steps.tighten-ring.passes.0` is `steps.9.passes.0` in the file. */
export function placeIn(file: Json, path: string): string {
  let node: Json | undefined = file;
  return path
    .split('.')
    .map((name) => {
      const key = keyOf(node, name);
      node = childOf(node, key);
      return key;
    })
    .join('.');
}

/** The demonstration with values replaced, by path; `undefined` takes a field away. */
export function edited(name: DemoName, changes: Readonly<Record<string, Json | undefined>>): Json {
  const file = demoJson(name);
  for (const [path, value] of Object.entries(changes)) {
    const keys = placeIn(file, path).split('.');
    const last = keys.pop() ?? '';
    const parent = keys.reduce<Json | undefined>(childOf, file);
    if (typeof parent !== 'object' || parent === null) throw new Error(`${name} has no ${path}`);
    if (Array.isArray(parent)) parent.splice(Number(last), 1, ...(value === undefined ? [] : [value]));
    else if (value === undefined) delete parent[last];
    else parent[last] = value;
  }
  return file;
}

export function loaded(json: unknown): Procedure {
  const result = readProcedure(json);
  if (result.kind === 'faulty') throw new Error(result.faults.map(asLine).join('\n'));
  return result.procedure;
}

export function faultsOf(json: unknown): readonly Fault[] {
  const result = readProcedure(json);
  return result.kind === 'faulty' ? result.faults : [];
}

export const asLine = ({ path, message }: Fault): string => `${path}: ${message}`;

function keyOf(node: Json | undefined, name: string): string {
  if (!Array.isArray(node) || /^\d+$/.test(name)) return name;
  const index = node.findIndex((item) => childOf(item, 'id') === name);
  if (index < 0) throw new Error(`no member of the list is called ${name}`);
  return String(index);
}

export function childOf(node: Json | undefined, key: string): Json | undefined {
  if (typeof node !== 'object' || node === null) return undefined;
  return Array.isArray(node) ? node[Number(key)] : Object.hasOwn(node, key) ? node[key] : undefined;
}
