import { describe, expect, test } from 'vitest';
import { eventLines, found, neighbour, type Wanted } from '../../../src/ui/replay/search.ts';
import { sealedDemo as demo } from './demonstration.ts';

const lines = eventLines(demo);
const wanted = (change: Partial<Wanted>): readonly number[] =>
  found(demo, lines, { query: '', kinds: new Set(), person: null, ...change });

describe('a search in the demonstration', () => {
  test('for nothing lets everything through', () => expect(wanted({})).toEqual(demo.entries.map(({ seq }) => seq)));
  test.each([
    ['what was said', 'correction one two', [27]],
    ['a fastener in a pass', 'stud 4 pass 1', [39, 40]],
    ['a fastener, not another whose number begins or ends so', 'stud 1 pass 2', [41, 42]],
    ['a value that is not a part of another', '21', [22, 23]],
    ['a value beside what is no fastener', 'rejected 21', [23]],
    ['a word that is not ended yet', 'DEVIA', [63]],
    ['an entry', 'entry 44', [44]],
    ['a person, in words only that person has', 'brandt witnessed', [69]],
    ['what nobody said', 'stud 99', []],
  ])('finds %s: %s', (_, query, seqs) => expect(wanted({ query })).toEqual(seqs));
  test.each(['.', '(', '*', '\\', '[a', '4.', '“”'])('takes %s as no pattern of anything', (query) =>
    expect(() => wanted({ query })).not.toThrow(),
  );
  test('for kinds finds what is of any of them', () => {
    expect(wanted({ kinds: new Set(['doubt']) })).toEqual([22]);
    expect(wanted({ kinds: new Set(['hold']) })).toEqual([73, 74]);
    expect(wanted({ kinds: new Set(['doubt', 'hold']) })).toEqual([22, 73, 74]);
  });
  test('for a person finds what they did', () => expect(wanted({ person: 'Tom Brandt (invented)' })).toEqual([69, 70]));
  test('for all at once finds what is all of it', () =>
    expect(wanted({ query: 'stud 8', kinds: new Set(['correction']), person: 'Ida Falk (invented)' })).toEqual([27]));
});

describe('the next event of a kind', () => {
  test('is found in both directions, and is never the one that is shown', () => {
    expect(neighbour(lines, 0, 'reading', 1)).toBe(18);
    expect(neighbour(lines, 18, 'reading', 1)).toBe(20);
    expect(neighbour(lines, 20, 'reading', -1)).toBe(18);
  });
  test('is none where there is none', () => {
    expect(neighbour(lines, 18, 'reading', -1)).toBeNull();
    expect(neighbour(lines, 22, 'doubt', 1)).toBeNull();
  });
});
