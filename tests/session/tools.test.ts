/** A tool that may not be used stops its step, and says why; what only advises is told and stops nothing. */
import { describe, expect, test } from 'vitest';
import { fold } from '../../src/session/fold.ts';
import { currentCall, currentStep } from '../../src/session/state.ts';
import { toolTroubles } from '../../src/session/tools.ts';
import {
  affirm,
  back,
  click,
  correction,
  dial,
  eventOf,
  indicating,
  kinds,
  newtonMetres,
  next,
  procedureOf,
  reading,
  refused,
  setting,
  start,
  step,
  tell,
  tighten,
  torquePass,
  turned,
  window,
  type Play,
} from './play.ts';

/** Opened on a day. */
function on(day: string, play: Play): Play {
  const opened = eventOf({ kind: 'reopened' }, 0);
  return { ...play, state: fold(play.state, { ...opened, at: { ...opened.at, utc: `${day}T08:00:00.000Z` } }) };
}
const ring = (tool: object, more: object = {}): Play =>
  start(procedureOf([step('fit', 'do'), tighten('ring', more), step('clean', 'do')], { tools: [tool, dial] }));
const begun = (play: Play): Play => tell(play, next);
const codes = ({ state }: Play): readonly string[] => {
  const current = currentStep(state);
  if (current?.kind !== 'tighten') return [];
  return toolTroubles(state, current, currentCall(state)).flatMap(({ reasons }) => reasons.map(({ code }) => code));
};

describe('a tool whose calibration', () => {
  test('holds until its day is over may be used on that day', () => {
    const play = begun(on('2031-03-31', ring(indicating)));
    expect(codes(play)).toEqual([]);
    expect(kinds(tell(play, reading('24')))).toEqual(['reading captured']);
  });
  test('has run out stops the step before its first call, and says so', () => {
    const play = begun(on('2031-04-01', ring(indicating)));
    expect(refused(tell(play, reading('24')))).toEqual({
      code: 'tool not usable',
      tool: 'wrench',
      reasons: [
        {
          code: 'calibration expired',
          sentence: 'The calibration of the tool ended on 2031-03-31; take another tool.',
        },
      ],
    });
    expect(kinds(tell(play, back))).toEqual(['step taken back']);
  });
  test('runs out while the session stands by stops it when it is gone on with', () => {
    const play = tell(begun(on('2031-03-31', ring(indicating))), { kind: 'stand by' });
    const continued = eventOf({ kind: 'continued' }, 9);
    const later = { ...continued, at: { ...continued.at, utc: '2031-04-01T00:10:00.000Z' } };
    const after = tell({ ...play, state: fold(play.state, later) }, affirm, reading('24'));
    expect(refused(after)?.code).toBe('tool not usable');
  });
  test('is not known is told, and stops nothing: its label can be looked at', () => {
    const play = begun(on('2031-04-01', ring({ ...indicating, calibrationDue: undefined })));
    expect(codes(play)).toEqual(['calibration unknown']);
    expect(kinds(tell(play, reading('24')))).toEqual(['reading captured']);
  });
});

describe('a tool that a pass asks too little or too much of', () => {
  const low = { passes: [torquePass('24.5', '23', '26'), torquePass('55', '53', '57')] };

  test('stops the step for a later pass as well as for the first', () => {
    const small = { ...indicating, range: window('1', '50') };
    const play = begun(on('2026-03-01', ring(small, low)));
    expect(codes(play)).toEqual(['above range']);
    expect(refused(tell(play, reading('24')))?.code).toBe('tool not usable');
  });
  test('below a fifth of its scale promises nothing (TM 1-1500-204-23-9, table 8-1)', () => {
    const large = { ...indicating, range: window('10', '200') };
    expect(codes(begun(ring(large, low)))).toEqual(['below usable range']); // 24.5 is below 40
  });
  test('also stops what is done by hand before it', () => {
    const small = { ...indicating, range: window('1', '20') };
    const passes = [{ kind: 'snug' }, torquePass('24.5', '23', '26')];
    expect(refused(tell(begun(ring(small, { passes })), next))?.code).toBe('tool not usable');
    expect(refused(tell(begun(ring(small, { passes })), turned))?.code).toBe('no such answer');
  });
  test('with marks too far apart is told of where it shows, and stops where it is set', () => {
    const coarse = { resolution: newtonMetres('5'), range: window('5', '60') };
    const passes = { passes: [torquePass('22.5', '22', '23')] };
    expect(codes(begun(ring({ ...indicating, ...coarse }, passes)))).toEqual(['too coarse']);
    expect(codes(begun(ring({ ...setting, ...coarse }, passes)))).toEqual(['too coarse', 'no mark in the window']);
    expect(refused(tell(begun(ring({ ...setting, ...coarse }, passes)), reading('22.5')))).toMatchObject({
      reasons: [{ code: 'no mark in the window' }],
    });
  });
});

test('a setting tool without a mark that the rule of judging accepts takes no click: it would prove nothing', () => {
  const marks = { ...setting, resolution: newtonMetres('1') };
  const judging = { rule: 'guard band', uncertainty: newtonMetres('0.7') };
  const passes = [torquePass('24.5', '23.4', '25.6')];
  const play = begun(ring(marks, { passes, judging })); // accepted is 24.1 to 24.9
  expect(refused(tell(play, click()))).toMatchObject({ reasons: [{ code: 'no mark in the window' }] });
  expect(kinds(tell(begun(ring(marks, { passes })), click()))).toEqual(['reading captured']);
});

describe('with running torque', () => {
  const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };

  test('the tool for it must show a value, down to the minimum', () => {
    const clicking = { ...dial, type: 'setting' };
    const play = tell(
      start(procedureOf([tighten('ring', { runDown }), step('clean', 'do')], { tools: [indicating, clicking] })),
      reading('3'),
    );
    expect(refused(play)).toMatchObject({
      code: 'tool not usable',
      tool: 'dial',
      reasons: [{ code: 'shows no torque' }],
    });
    const large = { ...dial, range: window('1', '20') };
    const blind = tell(
      start(procedureOf([tighten('ring', { runDown }), step('clean', 'do')], { tools: [indicating, large] })),
      reading('3'),
    );
    expect(refused(blind)).toMatchObject({ reasons: [{ code: 'below usable range' }] }); // 2 is below 20 / 5
  });
  test('a running torque where its tool promises nothing is told at its nut, and stops nothing', () => {
    const play = tell(begun(ring(indicating, { runDown: { used: false, tool: 'dial' } })), reading('1.5'), affirm);
    const measured = tell(play, reading('2'), affirm, reading('2'), affirm); // the dial is good from 10 / 5 = 2 N·m
    expect(codes(measured)).toEqual(['running torque uncertain']);
    const second = tell(measured, reading('26'), affirm);
    expect(codes(second)).toEqual([]);
  });
  test('a setting below the usable range is judged when it is known: the running torque may lift it', () => {
    const passes = [torquePass('9', '8', '10'), torquePass('24.5', '23', '26')];
    const play = begun(ring(indicating, { runDown, passes }));
    expect(codes(play)).toEqual([]);
    const measured = (value: string): Play => tell(play, ...[1, 2, 3].flatMap(() => [reading(value), affirm]));
    // The wrench is good from 60 / 5 = 12 N·m.
    expect(kinds(tell(measured('3.5'), reading('12.5')))).toEqual(['reading captured']); // 9 + 3.5 = 12.5
    expect(refused(tell(measured('2.5'), reading('11.5')))).toMatchObject({
      code: 'tool not usable',
      tool: 'wrench',
      reasons: [{ code: 'below usable range' }], // 9 + 2.5 = 11.5
    });
  });
});

test('a correction is taken whatever became of the tool: the value was read with it while it was good', () => {
  const play = tell(begun(on('2031-03-31', ring(indicating))), reading('24'), affirm);
  expect(kinds(tell(on('2031-04-01', play), affirm, correction('24.5')))).toEqual(['reading captured']);
});
