import { describe, expect, test } from 'vitest';
import { loadProcedure } from '../../src/procedure/procedure.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { situationOf } from '../../src/language/situation.ts';
import { canonical } from '../../src/record/entry.ts';
import { begin } from '../../src/session/fold.ts';
import { isPractice } from '../../src/ui/practice/is-practice.ts';
import { practiceProcedure } from '../../src/ui/practice/practice-procedure.ts';
import { workView } from '../../src/ui/view.ts';
import { affirm, next, reading, start, tell } from '../session/play.ts';

const loaded = loadProcedure(canonical(practiceProcedure()));

describe('practice', () => {
  test('has a sound procedure, marked as invented and named so that nobody takes it for work', () => {
    expect(loaded).toMatchObject({ kind: 'loaded', procedure: { invented: true, title: 'Practice, no work' } });
  });

  test('needs nothing before it but the words of its first step', () => {
    if (loaded.kind !== 'loaded') throw new Error('It cannot be loaded.');
    const state = begin(loaded.procedure, { mechanic: 'Practice', second: null });
    expect(recogniserPhrases(situationOf(state))).toContain('next');
  });

  test.each(['12', '21'])('says what to say, and ends with the reading that was affirmed: %s N·m', (value) => {
    if (loaded.kind !== 'loaded') throw new Error('It cannot be loaded.');
    const called = tell(start(loaded.procedure), next);
    expect(workView(called.state).step?.title).toMatch(/“one two”.*“affirm”/);
    const { state } = tell(called, reading(value), affirm);
    expect(state.phase).toBe('closed');
    expect(state.readings.map((each) => each.reading.value)).toEqual([value]);
  });

  test('is told from work by the name of its session alone', () => {
    expect(isPractice('practice-2026-11-26T08-00-00-000Z-12345678')).toBe(true);
    expect(isPractice('2026-11-26T08-00-00-000Z-12345678')).toBe(false);
  });
});
