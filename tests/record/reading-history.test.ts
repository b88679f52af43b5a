import { describe, expect, test } from 'vitest';
import { differenceFrom, historyOf } from '../../src/record/reading-history.ts';
import { affirm, correction, negative, procedureOf, reading, start, tell, tighten } from '../session/play.ts';

describe('the history of a fastener in a pass', () => {
  const { state } = tell(
    start(procedureOf([tighten('ring')])),
    ...[reading('21'), negative, reading('24'), affirm, correction('24.5'), affirm, reading('25'), affirm],
  );
  const [first] = state.readings;
  if (!first) throw new Error('Nothing was read.');
  test('has every value ever read of it, with what became of each', () =>
    expect(historyOf(state.readings, first).map((each) => [each.reading.value, each.status])).toEqual([
      ['21', 'rejected'],
      ['24', 'replaced'],
      ['24.5', 'confirmed'],
    ]));
  test('has nothing of another fastener', () =>
    expect(historyOf(state.readings, { ...first, fastener: 3 }).map((each) => each.reading.value)).toEqual(['25']));
});

describe('the difference between two values', () => {
  test.each([
    ['24', '24.5', '+0.5'],
    ['24.5', '24', '−0.5'],
    ['12', '12.0', '0'],
    ['0.1', '0.3', '+0.2'],
    ['9', '21', '+12'],
  ])('from %s to %s N·m is %s', (from, to, difference) =>
    expect(differenceFrom({ value: from, unit: 'N·m' }, { value: to, unit: 'N·m' })).toBe(difference),
  );
  test('is in the unit of the first (1 lbf·ft is 12 lbf·in)', () =>
    expect(differenceFrom({ value: '10', unit: 'lbf·in' }, { value: '1', unit: 'lbf·ft' })).toBe('+2'));
});
