/** Values entered with one switch or two. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beginEntry, movedOn, offered, taken, type HandEntry } from '../../src/ui/hand-entry.ts';

const WORDS: Readonly<Record<string, string>> = { '.': 'point' };

/** Takes a key: waits, or counts, until it is offered. */
function key(entry: HandEntry, wanted: string): ReturnType<typeof taken> {
  let now = entry;
  // The row of the key first, where there are rows.
  if (now.by === 'light') {
    const row = now.scan.rows.findIndex(({ items }) => items.some(({ value }) => value === wanted));
    for (let move = 0; move < row; move++) now = moved(now);
    const entered = taken(now);
    if (entered.kind !== 'goes on') throw new Error('A row is no key.');
    now = entered.entry;
  }
  for (let moves = 0; offered(now) !== (WORDS[wanted] ?? wanted); moves++) {
    if (moves > 20) throw new Error(`${wanted} is never offered.`);
    now = moved(now);
  }
  return taken(now);
}
function moved(entry: HandEntry): HandEntry {
  const next = movedOn(entry);
  if (!next) throw new Error('Nobody took anything.');
  return next;
}
function keyIn(by: HandEntry['by'], text: string): HandEntry {
  return [...text].reduce<HandEntry>((entry, each) => {
    const after = key(entry, each);
    if (after.kind !== 'goes on') throw new Error(`${each} ended the entry.`);
    return after.entry;
  }, beginEntry(by));
}

describe.each(['light', 'count'] as const)('an entry by %s', (by) => {
  test('gives any value that a scale can show, figure by figure, as it was entered', () =>
    fc.assert(
      fc.property(fc.nat(999), fc.option(fc.stringMatching(/^\d{1,3}$/)), (whole, part) => {
        const value = part === null ? `${whole}` : `${whole}.${part}`;
        const entry = keyIn(by, value);
        expect(entry.text).toBe(value);
        expect(key(entry, 'read it')).toEqual({ kind: 'value', value });
      }),
      { numRuns: 50 },
    ));
  test('deletes the last figure', () => {
    expect(key(keyIn(by, '24'), 'delete')).toMatchObject({ kind: 'goes on', entry: { text: '2' } });
  });
  test('can be left', () => expect(key(keyIn(by, '24'), 'leave')).toEqual({ kind: 'left' }));
});

test('a value that is not whole is not read', () => {
  const begun = keyIn('count', '24.');
  expect(offered(begun)).toBe('–');
  expect(taken(begun)).toMatchObject({ kind: 'goes on', entry: { text: '24.' } });
});
test('what leads to no value is not counted: no second point, nothing to delete', () => {
  const all = (entry: HandEntry): readonly string[] => {
    const words: string[] = [];
    for (let now = moved(entry); offered(now) !== offered(entry); now = moved(now)) words.push(offered(now));
    return words;
  };
  expect(all(beginEntry('count'))).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', '0', 'point', 'leave']);
  expect(all(keyIn('count', '2.5'))).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', '0', 'delete', 'leave']);
});
test('a light that nobody stops goes out', () => {
  let entry: HandEntry | null = beginEntry('light');
  for (let moves = 0; moves < 50 && entry; moves++) entry = movedOn(entry);
  expect(entry).toBeNull();
});
