import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { minimumPrevailing, recommendedTorque, type TableQuestion } from '../../src/tightening/index.ts';
import { MINIMUM_PREVAILING, RECOMMENDED } from '../../src/tightening/reference-tables.ts';
import { limits, torque, valueIn } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const inchPounds = (value: number) => torque(value, 'lbf·in');
const question = (thread: string, nut: TableQuestion['nut'] = 'tension'): TableQuestion => ({
  thread,
  nut,
  threads: 'oil-free cadmium-plated',
  manual: 'gives no value',
});

describe('the tables', () => {
  it.each([
    ['AC 43.13-1B Table 7-1', RECOMMENDED],
    ['AC 43.13-1B Table 7-2', MINIMUM_PREVAILING['AC 43.13-1B']],
    ['TM 1-1500-204-23-6 Table 2-8', MINIMUM_PREVAILING['TM 1-1500-204-23-6']],
    ['TM 55-1520-240-23-1', MINIMUM_PREVAILING['TM 55-1520-240-23-1']],
  ])('%s is as it was checked against its source', (_name, table) => {
    expect(createHash('sha256').update(JSON.stringify(table.rows)).digest('hex')).toBe(table.sha256);
  });

  it('have 14 fine and 11 coarse threads, low ≤ high ≤ maximum, shear below tension (AC 43.13-1B, page 7-9)', () => {
    expect(RECOMMENDED.rows).toHaveLength(25);
    for (const { tension, shear } of RECOMMENDED.rows) {
      for (const [low, high, maximum] of [tension, shear]) expect(low < high && high < maximum).toBe(true);
      expect(shear.every((value, i) => value < (tension[i] ?? 0))).toBe(true);
    }
  });
});

describe('a recommended torque', () => {
  it('of 1/4-28 with a tension nut is 50–70, at most 100 (AC 43.13-1B, table 7-1)', () => {
    const found = recommendedTorque(question('1/4-28'));
    expect(found.recommended).toEqual(limits(inchPounds(50), inchPounds(70)));
    expect(found.maximum).toEqual(inchPounds(100));
    expect(found.source).toEqual({ document: 'AC 43.13-1B', table: 'Table 7-1', edition: '1998-09-08' });
  });

  // Three values that public reprints get wrong.
  it('of 5/8-18 with a shear nut begins at 600, not 660', () => {
    expect(recommendedTorque(question('5/8-18', 'shear')).recommended).toEqual(
      limits(inchPounds(600), inchPounds(780)),
    );
  });
  it('of 10-24 with a shear nut is at most 21, not 12', () => {
    expect(recommendedTorque(question('10-24', 'shear')).maximum).toEqual(inchPounds(21));
  });
  it('of 3/8-16 with a tension nut begins at 160, not 150', () => {
    expect(recommendedTorque(question('3/8-16')).recommended.min).toEqual(inchPounds(160));
  });

  // N·m as an ultralight maintenance manual prints them, one decimal.
  it.each([
    ['10-32', 2.3, 2.8],
    ['1/4-28', 5.6, 7.9],
    ['5/16-24', 11.3, 15.8],
    ['3/8-24', 18.1, 21.5],
    ['7/16-20', 50.8, 56.5],
    ['1/2-20', 54.2, 78],
    ['9/16-18', 90.4, 113],
    ['5/8-18', 124.3, 146.9],
    ['3/4-16', 259.9, 282.5],
  ])('of %s is %d–%d N·m (ultralight maintenance manual)', (thread, low, high) => {
    const { min, max } = recommendedTorque(question(thread)).recommended;
    expect(valueIn(min, 'N·m')).toBeCloseTo(low, 1);
    expect(valueIn(max, 'N·m')).toBeCloseTo(high, 1);
  });

  it('says where the source only estimates', () => {
    expect(recommendedTorque(question('1-14', 'shear')).estimated).toBe(true);
    expect(recommendedTorque(question('1-14')).estimated).toBe(false);
    expect(recommendedTorque(question('7/8-14', 'shear')).estimated).toBe(false);
  });

  it('is never used silently: a manual that gives a value comes first', () => {
    expect(refusal(() => recommendedTorque({ ...question('1/4-28'), manual: 'gives a value' }))).toBe(
      'manual-comes-first',
    );
  });

  it('is never derived for lubricated threads', () => {
    expect(refusal(() => recommendedTorque({ ...question('1/4-28'), threads: 'lubricated' }))).toBe(
      'lubricated-not-derived',
    );
  });

  it('of a thread the table lacks is refused', () => {
    expect(refusal(() => recommendedTorque(question('M8')))).toBe('not-in-table');
  });
});

describe('the least run-down torque of a used nut', () => {
  it.each([
    ['1/2-20', 'AC 43.13-1B', 10],
    ['1-8', 'AC 43.13-1B', 51],
    ['1/2-20', 'TM 1-1500-204-23-6', 18],
    ['7/16-14', 'TM 1-1500-204-23-6', 16.5],
    ['10-32', 'TM 55-1520-240-23-1', 2],
    ['1/2-20', 'TM 55-1520-240-23-1', 18],
  ] as const)('of %s by %s is %d', (thread, table, minimum) => {
    expect(minimumPrevailing(thread, table).minimum).toEqual(inchPounds(minimum));
  });

  it('of a small nut has no number in two of the tables', () => {
    expect(refusal(() => minimumPrevailing('1/4-28', 'AC 43.13-1B'))).toBe('not-in-table');
    expect(refusal(() => minimumPrevailing('1/4-28', 'TM 1-1500-204-23-6'))).toBe('not-in-table');
  });

  it('agrees between the Army manuals wherever both have a size', () => {
    const general = new Map(MINIMUM_PREVAILING['TM 1-1500-204-23-6'].rows);
    const shared = MINIMUM_PREVAILING['TM 55-1520-240-23-1'].rows.filter(([thread]) => general.has(thread));
    expect(shared).toHaveLength(11);
    for (const [thread, minimum] of shared) expect(general.get(thread)).toBe(minimum);
  });
});
