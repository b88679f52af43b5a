import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEEPEST, jsonFaults } from '../../src/procedure/json-text.ts';
import { asLine, DEMOS, demoText } from './demo-files.ts';

const lines = (text: string) => jsonFaults(text).map(asLine);

describe('a text that is not JSON', () => {
  it.each([
    ['{"a": 1,\n "b": }', 'line 2, column 7: found "}", expected a value'],
    ['{"a": 1,\n}', 'line 2, column 1: found "}", expected the name of a field in double quotes'],
    ['{"a": 1\n "b": 2}', 'line 2, column 2: found "\\"", expected a comma or "}"'],
    ['[1 2]', 'line 1, column 4: found "2", expected a comma or "]"'],
    ["{'a': 1}", 'line 1, column 2: found "\'", expected the name of a field in double quotes'],
    ['{"a" 1}', 'line 1, column 6: found "1", expected a colon after the name of the field'],
    ['{"a": "b\nc"}', 'line 1, column 7: found "\\"", expected a text that ends with a quote on the same line'],
    ['{"a": 01}', 'line 1, column 8: found "1", expected a comma or "}"'],
    ['{"a": NaN}', 'line 1, column 7: found "N", expected a value'],
    ['{} // note', 'line 1, column 4: found "/", expected nothing more after the end of the procedure'],
    ['\ufeff{}', 'line 1, column 1: found "\ufeff", expected a value'],
    ['{"a": {"b": [', 'line 1, column 14: found the end of the file, expected a value'],
  ])('%j is told by line and column', (text, words) => {
    expect(lines(text)).toEqual([`: not readable as JSON at ${words}`]);
  });
});

describe('a field that stands twice', () => {
  it('is a fault, because one value would be lost without a word', () => {
    expect(lines('{"steps": [{"id": "a"},\n {"id": "b", "id": "c"}]}')).toEqual([
      'steps.1.id: this field stands twice in its object, the second time at line 2, column 14',
    ]);
  });
  it('is seen through its escapes', () => {
    expect(lines('{"a": 1, "\\u0061": 2}')).toHaveLength(1);
  });
  it('may be the same name in two objects', () => {
    expect(lines('{"a": {"b": 1}, "c": {"b": 1}}')).toEqual([]);
  });
});

it('takes the deepest nesting that is allowed, and not one level more', () => {
  const nested = (levels: number) => '['.repeat(levels) + ']'.repeat(levels);
  expect(lines(nested(DEEPEST + 1))).toEqual([]);
  expect(lines(nested(DEEPEST + 2))).toEqual([expect.stringContaining(`nested more than ${DEEPEST} levels deep`)]);
});

describe('agrees with the JSON reader of the language', () => {
  const isJson = (text: string): boolean => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };

  it('on every value it writes', () => {
    fc.assert(fc.property(fc.json({ maxDepth: 5 }), (text) => lines(text).length === 0));
  });

  it('on procedure files with characters taken out, put in or changed', () => {
    const cut = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      remove: fc.integer({ min: 0, max: 3 }),
      insert: fc.oneof(
        fc.constantFrom('', '"', '\\', ',', ':', '{', '}', '[', ']', '-', '.', 'e', '\n', '\t'),
        fc.string(),
      ),
    });
    fc.assert(
      fc.property(fc.constantFrom(...DEMOS), fc.array(cut, { minLength: 1, maxLength: 3 }), (name, cuts) => {
        const text = cuts.reduce((left, { at, remove, insert }) => {
          const place = Math.floor(at * left.length);
          return left.slice(0, place) + insert + left.slice(place + remove);
        }, demoText(name));
        const syntax = lines(text).filter((line) => !line.includes('stands twice'));
        expect(syntax.length === 0).toBe(isJson(text));
      }),
      { numRuns: 500 },
    );
  });
});
