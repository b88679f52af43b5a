/** Any node of a demonstration deleted, replaced or retyped: never a crash, never a silent default. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { assessLift } from '../../src/lifting/index.ts';
import { atWrench, carriedMass, containerCheck, liftTasks } from '../../src/procedure/lead-hand.ts';
import { lintProcedure } from '../../src/procedure/lint.ts';
import { loadProcedure, readProcedure, type Procedure } from '../../src/procedure/procedure.ts';
import { planOf, toolOf } from '../../src/session/calls.ts';
import { judge, usableRange } from '../../src/tightening/index.ts';
import { childOf, DEMOS, demoJson, type Json } from './demo-files.ts';

type Path = readonly string[];

function* nodesOf(node: Json, path: Path = []): Generator<{ path: Path; node: Json }> {
  yield { path, node };
  if (typeof node !== 'object' || node === null) return;
  for (const [key, child] of Object.entries(node)) yield* nodesOf(child, [...path, key]);
}

/** Values that have broken programs before, and some that fit somewhere else in the file. */
const odd = fc.oneof(
  fc.constantFrom<Json>(null, true, 0, -1, 1.5, 1e300, Infinity, NaN, '', ' ', '0', '-1', '-0', '1e5', '1000', [], {}),
  fc.constantFrom<Json>(
    'NaN',
    '٣',
    '0'.repeat(500),
    '9'.repeat(400),
    '__proto__',
    'constructor',
    '\ud800',
    [[]],
    [null],
  ),
  fc.string(),
  fc.integer({ min: -3, max: 1001 }),
  fc.integer({ min: -3, max: 1001 }).map(String),
  fc.record({
    value: fc.integer({ min: -2, max: 300 }).map(String),
    unit: fc.constantFrom('N·m', 'lbf·in', 'mm', '°'),
  }),
  fc.jsonValue({ maxDepth: 2 }).map((value) => value as Json),
);

const change = fc.record({
  what: fc.constantFrom('delete', 'replace', 'transplant', 'add', 'repeat', 'retype'),
  pick: fc.nat(),
  from: fc.nat(),
  value: odd,
  key: fc.oneof(fc.constantFrom('toString', '__proto__', 'id', 'order', 'only', 'numbers', 'applies'), fc.string()),
});

const mutated = fc
  .record({ name: fc.constantFrom(...DEMOS), changes: fc.array(change, { minLength: 1, maxLength: 3 }) })
  .map(({ name, changes }) =>
    changes.reduce<Json>((file, { what, pick, from, value, key }) => {
      const nodes = [...nodesOf(file)];
      const spot = nodes[pick % nodes.length];
      const donor = nodes[from % nodes.length];
      if (spot === undefined || donor === undefined) return file;
      switch (what) {
        case 'delete':
          return withNode(file, spot.path, undefined);
        case 'replace':
          return withNode(file, spot.path, value);
        case 'transplant':
          return withNode(file, spot.path, donor.node);
        case 'add':
          return isPlain(spot.node) ? withNode(file, [...spot.path, key], value) : file;
        case 'repeat':
          return Array.isArray(spot.node) ? withNode(file, spot.path, [...spot.node, ...spot.node]) : file;
        case 'retype':
          return withNode(file, spot.path, retyped(spot.node));
      }
    }, demoJson(name)),
  );

const isPlain = (node: Json): node is { [key: string]: Json } =>
  typeof node === 'object' && node !== null && !Array.isArray(node);

function retyped(node: Json): Json {
  if (typeof node === 'number' || typeof node === 'boolean') return String(node);
  if (typeof node === 'string') return Number.isNaN(Number(node)) ? [node] : Number(node);
  return Array.isArray(node) ? Object.fromEntries(node.entries()) : isPlain(node) ? Object.values(node) : {};
}

/** A copy with one node put in, or left out where it is undefined. */
function withNode(node: Json, [key, ...rest]: Path, value: Json | undefined): Json {
  if (key === undefined) return value ?? null;
  if (typeof node !== 'object' || node === null) return node;
  const child = rest.length === 0 ? value : withNode(childOf(node, key) ?? null, rest, value);
  if (Array.isArray(node)) {
    return node.flatMap((item, i) => (String(i) !== key ? [item] : child === undefined ? [] : [child]));
  }
  const entries = Object.entries(node).filter(([name]) => name !== key || child !== undefined);
  const known = entries.some(([name]) => name === key);
  const next = entries.map(([name, item]): [string, Json] => [
    name,
    name === key && child !== undefined ? child : item,
  ]);
  return Object.fromEntries(known || child === undefined ? next : [...next, [key, child]]);
}

/** All that the rooms compute from a procedure, with nothing thrown. */
function workAll(procedure: Procedure): void {
  for (const step of procedure.steps) {
    for (const { pass } of planOf(procedure, step).calls) {
      if (step.kind !== 'tighten' || pass.target === null) continue;
      const { target, window } = atWrench(procedure, step, { target: pass.target, window: pass.window });
      judge(target, window, step.judging);
    }
    if (step.kind === 'tighten') usableRange(toolOf(procedure, step));
  }
  carriedMass(procedure);
  containerCheck(procedure);
  const { lift } = procedure;
  const tasks = liftTasks(procedure);
  if (lift && tasks) Object.values(tasks).forEach((task) => assessLift(task, lift.system));
  lintProcedure(procedure);
}

/** Where something the file says is not in what was read: every word and number must be there, none made up. */
function lostFrom(file: unknown, read: unknown, path = ''): readonly string[] {
  if (typeof file === 'object' && file !== null) {
    if (typeof read !== 'object' || read === null) return [path];
    const inside = read as Readonly<Record<string, unknown>>;
    return Object.entries(file).flatMap(([key, value]) => lostFrom(value, inside[key], `${path}.${key}`));
  }
  const isKept = typeof read === 'number' && typeof file === 'string' ? read === Number(file) : read === file;
  return isKept ? [] : [path];
}

const isInFile = (file: Json, path: string): boolean => {
  const keys = path === '' ? [] : path.split('.');
  return childAt(file, keys.slice(0, -1)) !== undefined;
};
const childAt = (file: Json, keys: readonly string[]): Json | undefined => keys.reduce<Json | undefined>(childOf, file);

const RUNS = 1500;
let accepted = 0;

it('every mutated procedure is refused at a place in the file, or loaded whole and works', () => {
  fc.assert(
    fc.property(mutated, (file) => {
      const result = readProcedure(file);
      if (result.kind === 'faulty') {
        expect(result.faults.length).toBeGreaterThan(0);
        for (const { path, message } of result.faults) {
          expect(message).not.toBe('');
          // A field made up by the mutation may itself hold dots, which no path can show.
          if (!message.startsWith('unknown field')) expect(isInFile(file, path), `${path}: ${message}`).toBe(true);
        }
      } else {
        accepted += 1;
        workAll(result.procedure);
        expect(lostFrom(file, result.procedure)).toEqual([]);
      }
    }),
    { numRuns: RUNS },
  );
  // Most mutations must be refused, but a test that accepts none would prove nothing about plans.
  expect(accepted).toBeGreaterThan(RUNS / 20);
});

it('text of any kind is refused, not crashed on', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json(), fc.string({ unit: 'binary' })), (text) => {
      expect(loadProcedure(text).kind).toBe('faulty');
    }),
  );
});
