import { describe, expect, test } from 'vitest';
import { compareHead, headGroups } from '../../src/record/head.ts';
import { sha256 } from '../../src/record/entry.ts';

const entries = await Promise.all(['a', 'b', 'c'].map(async (text) => ({ hash: await sha256(text) })));
const hashOf = (at: number): string => entries[at]?.hash ?? '';

describe('a head that was noted elsewhere', () => {
  test('is the same as that of the last entry', () =>
    expect(compareHead(hashOf(2), entries)).toEqual({ kind: 'same' }));
  test('is compared without spaces, line breaks and capitals', () => {
    const noted = ` ${headGroups(hashOf(2)).join(' \n')} `.toUpperCase();
    expect(compareHead(noted, entries)).toEqual({ kind: 'same' });
  });
  test('was noted before the record grew', () =>
    expect(compareHead(hashOf(0), entries)).toEqual({ kind: 'grown', at: 0, since: 2 }));
  test('is of another record, or of this one before its end was cut off', () =>
    expect(compareHead(hashOf(2), entries.slice(0, 2))).toEqual({ kind: 'another' }));
  test.each([
    ['too short', hashOf(2).slice(0, 16), 'these are 16'],
    ['too long', `${hashOf(2)}0`, 'these are 65'],
    ['not hexadecimal', 'hello', '“h” is not a digit'],
  ])('is no head: %s', (_, noted, why) => {
    const finding = compareHead(noted, entries);
    expect(finding.kind).toBe('no head');
    if (finding.kind === 'no head') expect(finding.why).toContain(why);
  });
});

test('a head is shown whole, in groups', () => {
  expect(headGroups(hashOf(0)).join('')).toBe(hashOf(0));
  expect(headGroups(hashOf(0)).map((group) => group.length)).toEqual([8, 8, 8, 8, 8, 8, 8, 8]);
});
