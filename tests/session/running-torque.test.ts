/** Running torque: what turns a nut before it seats. It is read, confirmed and put right like any reading. */
import { describe, expect, test } from 'vitest';
import { settingOf } from '../../src/session/setting.ts';
import { currentCall, currentStep } from '../../src/session/state.ts';
import {
  affirm,
  click,
  correction,
  dial,
  disregard,
  happened,
  indicating,
  kinds,
  negative,
  newtonMetres,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  setting,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from './play.ts';

const used = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
const ring = (more: object = {}, tools: readonly object[] = [indicating, dial]): Play =>
  start(procedureOf([tighten('ring', { runDown: used, ...more }), step('clean', 'do')], { tools }));
const called = ({ state }: Play): string | null => {
  const call = currentCall(state);
  return call && `${call.pass.index}: ${call.fastener}`;
};
const set = ({ state }: Play): string | undefined => {
  const [current, call] = [currentStep(state), currentCall(state)];
  return (current && call && settingOf(state, current, call)?.value?.value) ?? undefined;
};

describe('running torque', () => {
  const play = ring();
  const measured = tell(play, ...['2.5', '3', '3.5'].flatMap((value) => [reading(value), affirm]));

  test('is called for before the first pass, nut by nut, and then added to each target', () => {
    expect(called(play)).toBe('0: 1');
    expect(called(measured)).toBe('1: 1');
    expect(set(measured)).toBe('27'); // 24.5 + 2.5
    expect(set(tell(measured, reading('27'), affirm))).toBe('27.5'); // 24.5 + 3
  });
  test('is read back like a reading: rejected, said anew, out of order', () => {
    expect(readings(tell(play, reading('2.5'), negative))).toEqual(['1: 2.5 rejected']);
    expect(readings(tell(play, reading('2.5'), reading('2.6')))).toEqual(['1: 2.5 replaced', '1: 2.6 captured']);
    expect(refused(tell(play, reading('2.5', 3)))).toEqual({ code: 'out of order', offered: 3, expected: 1 });
    expect(refused(tell(play, next))).toEqual({ code: 'reading first', fastener: 1 });
  });
  test('is corrected after it was confirmed, and the setting follows', () => {
    const corrected = tell(measured, correction('5'), affirm);
    expect(readings(corrected).slice(-2)).toEqual(['2: 3.5 replaced', '2: 5 confirmed']);
    const last = tell(corrected, reading('27'), affirm, reading('27.5'), affirm);
    expect(set(last)).toBe('29.5'); // 24.5 + 5
  });
  test('is taken in the unit of its own tool', () => {
    const inches = { value: '1', unit: 'lbf·in' };
    const small = { ...dial, range: { min: inches, max: { value: '75', unit: 'lbf·in' } }, resolution: inches };
    const taken = tell(ring({}, [indicating, small]), reading('22'));
    expect(happened(taken)).toMatchObject([{ reading: { value: '22', unit: 'lbf·in' }, verdict: 'in' }]);
  });
  test('is measured with the tool of the step where it has none of its own', () => {
    const taken = tell(ring({ runDown: { used: false } }), reading('12'));
    expect(happened(taken)).toMatchObject([{ basis: { of: 'running torque', tool: 'wrench', minimum: null } }]);
  });
  test('is never a click: there is nothing to set', () => {
    const play = ring({ tool: 'wrench' }, [setting, dial]);
    expect(refused(tell(play, click()))).toEqual({ code: 'running torque is read', fastener: 1 });
  });
  test('goes on with the next nut where going on confirms, into the pass of the very same nut', () => {
    const one = { pattern: 'one', confirm: 'by going on' };
    const single = { id: 'one', name: 'One', fastener: 'stud', layout: { shape: 'ring', count: 1 }, order: CIRCULAR };
    const play = start(
      procedureOf([tighten('ring', { runDown: used, ...one }), step('clean', 'do')], {
        tools: [indicating, dial],
        patterns: [single],
      }),
    );
    const gone = tell(play, reading('2.5'), reading('27'));
    expect(happened(gone)).toMatchObject([
      { kind: 'reading confirmed' },
      { kind: 'reading captured', basis: { runningTorque: newtonMetres('2.5'), setting: newtonMetres('27') } },
    ]);
  });
});
const CIRCULAR = { kind: 'circular' };

describe('a self-locking nut', () => {
  test('that turns with less than the minimum is refused by name, and stays open until another is measured', () => {
    const worn = tell(ring(), reading('1.9'));
    expect(happened(worn)).toMatchObject([{ verdict: 'nut worn', basis: { minimum: newtonMetres('2') } }]);
    const recorded = tell(worn, affirm);
    expect(readings(recorded)).toEqual(['1: 1.9 confirmed']);
    expect(called(recorded)).toBe('0: 1');
    const replaced = tell(recorded, reading('2.4'), affirm);
    expect(readings(replaced)).toEqual(['1: 1.9 confirmed', '1: 2.4 confirmed']);
    expect(called(replaced)).toBe('0: 3');
  });
  test('at the very minimum is good', () =>
    expect(happened(tell(ring(), reading('2.0')))).toMatchObject([{ verdict: 'in' }]));
  test('wants a word of its own also where going on confirms', () => {
    const worn = tell(ring({ confirm: 'by going on' }), reading('1.9'));
    expect(refused(tell(worn, reading('3', 3)))).toEqual({ code: 'confirm first', fastener: 1 });
  });
  test('is held to a stated minimum also where it is new, and to none where none is stated', () => {
    const fresh = { ...used, used: false };
    expect(happened(tell(ring({ runDown: fresh }), reading('1.2')))).toMatchObject([{ verdict: 'nut worn' }]);
    const free = ring({ runDown: { ...fresh, minimum: undefined } });
    expect(happened(tell(free, reading('1.2')))).toMatchObject([{ verdict: 'in' }]);
  });
  test('found out by a correction is open again, and what was done to it by hand is done again', () => {
    const passes = [{ kind: 'snug' }, torquePass('24.5', '23', '26')];
    const snug = tell(
      ring({ passes }),
      ...['2.5', '3', '3.5'].flatMap((value) => [reading(value), affirm]),
      ...[next, next, next],
    );
    expect(called(snug)).toBe('2: 1');
    const worn = tell(snug, correction('1.5'), affirm);
    expect(called(worn)).toBe('0: 2');
    const measured = tell(worn, reading('4'), affirm);
    expect(called(measured)).toBe('1: 2');
    expect(called(tell(measured, next))).toBe('2: 1');
  });
  test('whose value was disregarded is measured, and made snug, again', () => {
    const passes = [{ kind: 'snug' }, torquePass('24.5', '23', '26')];
    const snug = tell(
      ring({ passes }),
      ...['2.5', '3', '3.5'].flatMap((value) => [reading(value), affirm]),
      ...[next, next, next],
    );
    const dropped = tell(snug, disregard);
    expect(called(dropped)).toBe('0: 2');
    expect(called(tell(dropped, reading('3'), affirm))).toBe('1: 2');
  });
});

describe('a running torque that the tools of the step cannot deal with', () => {
  test('above the scale of the dial is not taken as one', () => {
    const play = tell(ring(), reading('22'));
    expect(happened(play)).toMatchObject([{ verdict: 'over' }]);
    expect(called(tell(play, affirm))).toBe('0: 1');
  });
  test('below the lowest mark of the tool proves nothing: a large wrench is blind there', () => {
    const play = tell(ring({ runDown: { used: false } }), reading('0.3')); // the wrench has marks from 5 to 60
    expect(happened(play)).toMatchObject([{ verdict: 'not provable' }]);
    expect(called(tell(play, affirm))).toBe('0: 1');
    expect(happened(tell(ring({ runDown: { used: false } }), reading('5')))).toMatchObject([{ verdict: 'in' }]);
  });
  test('that would lift the setting above the wrench is not taken either, and can be measured again', () => {
    const passes = [torquePass('55', '54', '56')];
    const play = tell(ring({ passes }), reading('6'), affirm);
    expect(readings(play)).toEqual(['1: 6 confirmed']);
    expect(called(play)).toBe('0: 1'); // 55 + 6 = 61 on a wrench up to 60
    expect(called(tell(play, reading('4'), affirm))).toBe('0: 3');
  });
});

test('a step without a torque target has no running torque to add it to', () => {
  const play = ring({ passes: [{ kind: 'snug' }] });
  expect(called(play)).toBe('1: 1');
  expect(kinds(tell(play, next, next, next))).toEqual(['fastener done', 'step done']);
});
