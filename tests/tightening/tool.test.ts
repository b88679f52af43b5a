import { describe, expect, it } from 'vitest';
import {
  correct,
  permissibleErrorPercent,
  plusMinusPercent,
  reasonsAgainst,
  type TorqueTool,
  usableRange,
} from '../../src/tightening/index.ts';
import { angle, length, limits, torque } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const newtonMetres = (value: number) => torque(value, 'N·m');
const tool = (changes: Partial<TorqueTool> = {}): TorqueTool => ({
  type: 'indicating',
  range: limits(newtonMetres(10), newtonMetres(100)),
  resolution: newtonMetres(1),
  maximumError: 4,
  calibrationDue: '2026-06-30',
  ...changes,
});
const TODAY = '2026-03-01';
const codes = (setting: number, changes: Partial<TorqueTool> = {}, onDate = TODAY) =>
  reasonsAgainst(tool(changes), newtonMetres(setting), onDate).map(({ code }) => code);

describe('the usable range', () => {
  it('is 20 to 100 per cent of full scale: 15 on a scale of 100 is refused (TM 1-1500-204-23-9, table 8-1)', () => {
    expect(usableRange(tool())).toEqual(limits(newtonMetres(20), newtonMetres(100)));
    expect(codes(15)).toEqual(['below usable range']);
    expect(codes(20)).toEqual([]);
    expect(codes(100)).toEqual([]);
    expect(codes(101)).toEqual(['above range']);
  });

  it('begins at the lowest mark where that is higher', () => {
    expect(usableRange(tool({ range: limits(newtonMetres(40), newtonMetres(100)) })).min).toEqual(newtonMetres(40));
  });

  it('may have marks from zero; below 20 per cent they do not count', () => {
    expect(usableRange(tool({ range: limits(newtonMetres(0), newtonMetres(100)) })).min).toEqual(newtonMetres(20));
  });

  it('is asked for the setting and not for the torque at the fastener', () => {
    const adapter = { lever: length(300, 'mm'), length: length(150, 'mm'), angle: angle(0) };
    const { atWrench } = correct({ ...plusMinusPercent(newtonMetres(120), 5), adapter });
    expect(codes(120)).toEqual(['above range']);
    expect(reasonsAgainst(tool(), atWrench.target, TODAY)).toEqual([]);
  });
});

describe('calibration', () => {
  it('holds through its due date', () => {
    expect(codes(50, {}, '2026-06-30')).toEqual([]);
    expect(codes(50, {}, '2026-07-01')).toEqual(['calibration expired']);
  });

  it('must be known', () => {
    expect(codes(50, { calibrationDue: undefined })).toEqual(['calibration unknown']);
  });

  it.each(['2026-02-30', '26-02-01', '2026-2-1', '2026-02-01T00:00:00Z', ''])('refuses "%s" as a day', (day) => {
    expect(refusal(() => codes(50, {}, day))).toBe('bad-date');
    expect(refusal(() => codes(50, { calibrationDue: day }))).toBe('bad-date');
  });
});

describe('marks', () => {
  it('may be a tenth of the value apart and no more (TM 1-1500-204-23-9, chapter 8)', () => {
    expect(codes(50, { resolution: newtonMetres(5) })).toEqual([]);
    expect(codes(50, { resolution: newtonMetres(5.1) })).toEqual(['too coarse']);
  });
});

describe('the reasons', () => {
  it('are all told, in words', () => {
    const reasons = reasonsAgainst(tool({ resolution: newtonMetres(2) }), newtonMetres(15), '2027-01-01');
    expect(reasons.map(({ sentence }) => sentence)).toEqual([
      'The calibration of the tool ended on 2026-06-30; take another tool.',
      'The setting of 15 N·m is below 20 N·m, where the tool begins to be accurate; take a smaller one.',
      "The tool's marks, 2 N·m apart, are too coarse for 15 N·m.",
    ]);
  });

  it('are not given for a tool that cannot exist', () => {
    expect(refusal(() => codes(50, { resolution: newtonMetres(0) }))).toBe('bad-tool');
    expect(refusal(() => codes(50, { range: { min: newtonMetres(100), max: newtonMetres(10) } }))).toBe('bad-tool');
  });
});

describe('the permissible error', () => {
  const byClass = (type: TorqueTool['type'], letter: string, at: number) =>
    permissibleErrorPercent(tool({ type, class: letter, maximumError: undefined }), newtonMetres(at));

  it('of a setting tool of class A is 4 per cent above 10 N·m and 6 up to it (a tool manual restating ISO 6789)', () => {
    expect(byClass('setting', 'A', 10.1)).toBe(4);
    expect(byClass('setting', 'A', 10)).toBe(6);
  });

  it('of the other classes (ISO 6789-1, from memory)', () => {
    expect(['A', 'D'].map((letter) => byClass('indicating', letter, 50))).toEqual([6, 6]);
    expect(['B', 'C', 'E'].map((letter) => byClass('indicating', letter, 50))).toEqual([4, 4, 4]);
    expect(['B', 'C'].map((letter) => byClass('setting', letter, 5))).toEqual([6, 6]);
    expect(['D', 'E', 'F', 'G'].map((letter) => byClass('setting', letter, 50))).toEqual([6, 6, 6, 6]);
  });

  it('is the declared one where there is one, and never guessed', () => {
    expect(permissibleErrorPercent(tool({ maximumError: 3 }), newtonMetres(50))).toBe(3);
    expect(refusal(() => byClass('setting', 'H', 50))).toBe('bad-tool');
    expect(refusal(() => byClass('setting', '', 50))).toBe('bad-tool');
    expect(refusal(() => byClass('setting', 'AB', 50))).toBe('bad-tool');
  });
});
