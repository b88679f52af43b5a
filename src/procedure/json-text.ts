/**
 * What is wrong with a text as JSON (RFC 8259), with its line and column. Two things the language's own reader lets pass
 * are faults here: a field that stands twice in one object, of which one value would be lost without a word (RFC 7493,
 * 2.3), and nesting too deep for any procedure.
 */
import { procedureFile } from '../words/procedure-file.ts';
import { type Fault, pathOf, quoted } from './fault.ts';

/** Procedures need about twelve levels. */
export const DEEPEST = 64;

const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y; // eslint-disable-line no-control-regex
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\n\r]*/y;

/** What should stand at a place. */
type Expected = Parameters<typeof procedureFile.inJson>[1];

class Misfit extends Error {
  readonly at: number;
  constructor(at: number, message: string) {
    super(message);
    this.at = at;
  }
}

/** Nothing for JSON with no field twice; else every field that stands twice, or the first place that is not JSON. */
export function jsonFaults(text: string): readonly Fault[] {
  const faults: Fault[] = [];
  const path: (string | number)[] = [];
  let at = 0;

  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found === undefined) return null;
    at += found.length;
    return found;
  };
  const next = (): string => {
    take(SPACE);
    return text.charAt(at);
  };
  const takes = (mark: string): boolean => {
    if (next() !== mark) return false;
    at += 1;
    return true;
  };
  const stop = (expected: Expected): never => {
    throw new Misfit(at, procedureFile.inJson(foundAt(text, at), expected));
  };

  function value(): void {
    const first = next();
    if (first === '{') return object();
    if (first === '[') return list();
    if (first === '"') return void string('text');
    if (take(NUMBER) === null && take(WORD) === null) stop('value');
  }
  function string(expected: Expected): string {
    return take(STRING) ?? stop(expected);
  }
  function deeper(key: string | number, work: () => void): void {
    path.push(key);
    if (path.length > DEEPEST) throw new Misfit(at, procedureFile.tooDeep(DEEPEST));
    work();
    path.pop();
  }
  function object(): void {
    at += 1;
    if (takes('}')) return;
    const seen = new Set<string>();
    do {
      if (next() !== '"') stop('name of a field');
      const start = at;
      const name = JSON.parse(string('name of a field')) as string;
      if (seen.has(name)) {
        faults.push({ path: pathOf([...path, name]), message: procedureFile.fieldTwice(...placeOf(text, start)) });
      }
      seen.add(name);
      if (!takes(':')) stop('colon');
      deeper(name, value);
    } while (takes(','));
    if (!takes('}')) stop('comma or brace');
  }
  function list(): void {
    at += 1;
    if (takes(']')) return;
    let index = 0;
    do deeper(index++, value);
    while (takes(','));
    if (!takes(']')) stop('comma or bracket');
  }

  try {
    value();
    if (next() !== '') stop('end');
    return faults;
  } catch (error) {
    if (!(error instanceof Misfit)) throw error;
    return [{ path: '', message: procedureFile.notJson(...placeOf(text, error.at), error.message) }];
  }
}

/** Counted from 1. */
function placeOf(text: string, at: number): readonly [line: number, column: number] {
  const before = text.slice(0, at).split('\n');
  return [before.length, (before.at(-1)?.length ?? 0) + 1];
}

function foundAt(text: string, at: number): string | null {
  const character = text.codePointAt(at);
  return character === undefined ? null : quoted(String.fromCodePoint(character));
}
