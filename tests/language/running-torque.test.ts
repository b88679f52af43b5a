/** What is said, and may be said, about running torque, conditions of the unit, and tools that may not be used. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { situationOf } from '../../src/language/situation.ts';
import {
  affirm,
  click,
  dial,
  indicating,
  negative,
  newtonMetres,
  next,
  procedureOf,
  reading,
  setting,
  start,
  step,
  tell,
  tighten,
  torquePass,
  window,
  type Play,
} from '../session/play.ts';
import { meant } from './meant.ts';
import { spoken } from './spoken.ts';

const used = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
const clean = step('clean', 'do', { say: 'Clean it.' });
const last = { ...clean, id: 'clean-2' };
const ring = (more: object = {}, tools: readonly object[] = [indicating, dial]): Play =>
  start(procedureOf([tighten('ring', { say: 'Tighten the ring.', runDown: used, ...more }), clean], { tools }));

describe('running torque', () => {
  const play = ring();

  test('gives way, by going on, to a value on the scale of the wrench for the first pass', () => {
    const going = {
      confirm: 'by going on',
      runDown: { used: false, tool: 'dial' },
      passes: [torquePass('14', '13', '15.5')],
    };
    const all = tell(ring(going, [setting, dial]), reading('2.5'), reading('2.5'), reading('2.5'));
    expect(meant(all, 'two zero')).toEqual(reading('20'));
    expect(meant(all, 'click')).toEqual(click());
  });

  test('is called with what it is and when it is read, then shortly', () => {
    expect(spoken(tell(play, { kind: 'say again' }))).toEqual([
      'Tighten the ring. Running torque: read each stud as it runs down, before it seats. Stud one, running torque.',
    ]);
    expect(spoken(tell(play, reading('2.5'), affirm))).toEqual(['Logged.', 'Stud three, running torque.']);
  });
  test('is read back by its name', () =>
    expect(spoken(tell(play, reading('2.5')))).toEqual(['Stud one, running torque two point five. Is that correct?']));
  test('below the minimum refuses the nut by name, and says what to do', () => {
    const worn = tell(play, reading('1.9'));
    expect(spoken(worn)).toEqual([
      'Stud one, running torque one point nine. That is below the minimum. Is that correct?',
    ]);
    expect(spoken(tell(worn, affirm))).toEqual([
      'Logged.',
      'Stud one is worn: it runs below the minimum of two newton metres. Reject it, fit another, and measure again.',
      'Stud one, running torque.',
    ]);
  });
  test('that is too much for the tools is asked about', () => {
    const over = tell(play, reading('25'));
    expect(spoken(over)).toEqual([
      'Stud one, running torque two five. That is too much for the tools of this step. Is that correct?',
    ]);
    expect(spoken(tell(over, affirm))[1]).toBe(
      'Stud one runs too hard for the tools of this step. Measure it again or decide by the manual.',
    );
  });
  test('is added to what is called for each nut: the value to set is said, not that of the manual', () => {
    const measured = tell(play, ...['2.5', '3', '3.5'].flatMap((value) => [reading(value), affirm]));
    expect(spoken(measured)).toEqual(['Logged.', 'Stud one, two seven newton metres.']); // 24.5 + 2.5
    expect(spoken(tell(measured, reading('27'), affirm))).toEqual(['Logged.', 'Stud three, two seven point five.']);
  });
  test('of one nut, where going on confirms, is in the value of the call that follows it', () => {
    const single = { id: 'one', name: 'One', fastener: 'stud', layout: { shape: 'ring', count: 1 } };
    const only = start(
      procedureOf([tighten('ring', { runDown: used, pattern: 'one', confirm: 'by going on' }), clean], {
        tools: [indicating, dial],
        patterns: [{ ...single, order: { kind: 'circular' } }],
      }),
    );
    expect(spoken(tell(only, reading('2.5')))).toEqual([
      'Stud one, running torque two point five. Next: Stud one, two seven newton metres.',
    ]);
  });
  test('is heard on the scale of its own tool, and is no click', () => {
    const play = ring({}, [setting, dial]);
    expect(situationOf(play.state).reading).toMatchObject({ called: 1, unit: 'N·m', takesClicks: false });
    expect(meant(play, 'two point five')).toEqual({ kind: 'reading', reading: { fastener: null, value: '2.5' } });
    expect(spoken(tell(play, click()))).toEqual(['The running torque of stud one is read. Say the value.']);
  });
});

describe('a step of tightening', () => {
  const passes = [torquePass('12', '11', '13', { name: 'first' }), torquePass('24.5', '23', '26', { name: 'final' })];
  const play = start(
    procedureOf([clean, tighten('ring', { say: 'Tighten the ring.', passes, tool: 'wrench' }), last], {}),
  );
  test('is explained once, when it begins', () => {
    const begun = tell(play, next);
    const plan =
      'Three fasteners in two passes: one two newton metres, then two four point five newton metres in the order of the manual.';
    const call = 'Pass one of two, first. Stud one, one two newton metres.';
    expect(spoken(begun)).toEqual([`Tighten the ring. ${plan} ${call}`]);
    expect(spoken(tell(begun, { kind: 'say again' }))).toEqual([`Tighten the ring. ${call}`]);
    expect(spoken(tell(begun, { kind: 'reopen' })).at(-1)).toBe(`Tighten the ring. ${call}`);
  });
  test('with a tool that may not be used says so instead of calling a fastener, and again when it is tried', () => {
    const small = { ...indicating, range: window('1', '20') };
    const begun = tell(start(procedureOf([clean, tighten('ring'), last], { tools: [small] })), next);
    const refusal =
      "Indicating wrench: may not be used here. The setting of two four point five newton metres is above the tool's full scale of two zero newton metres. Choose another tool by the manual.";
    expect(spoken(begun)).toEqual(['Text of ring.', refusal]);
    expect(spoken(tell(begun, reading('24')))).toEqual([refusal]);
  });
  test('with a tool whose label must be looked at says that once', () => {
    const unknown = { ...indicating, calibrationDue: undefined };
    const begun = tell(start(procedureOf([clean, tighten('ring'), last], { tools: [unknown] })), next);
    expect(spoken(begun)[0]).toContain('Indicating wrench: The tool has no calibration date; look for its label.');
    expect(spoken(tell(begun, reading('24'), affirm)).join(' ')).not.toContain('calibration');
  });
});

describe('a condition of the unit', () => {
  const conditions = [{ id: 'salt', question: 'Did it run in salt water?' }];
  const applies = { condition: 'salt', is: true };
  const asked = tell(
    start(
      procedureOf(
        [clean, step('rinse', 'do', { title: 'Rinse', say: 'Rinse it.', applies }), { ...clean, id: 'lift' }],
        { conditions },
      ),
    ),
    next,
  );

  test('is asked with both answers, and again where it is not answered', () => {
    expect(spoken(asked)).toEqual(['Did it run in salt water? Affirm or negative?']);
    expect(spoken(tell(asked, next))).toEqual(['Answer the question first: say affirm or negative.']);
    expect(prompt(asked.state)).toEqual(['Did it run in salt water? Affirm or negative?']);
  });
  test('takes the two words, and the way back', () => {
    expect(meant(asked, 'affirm')).toEqual(affirm);
    expect(meant(asked, 'negative')).toEqual(negative);
    expect(meant(asked, 'go back')).toEqual({ kind: 'back' });
    expect(meant(asked, 'next')).toBeNull();
  });
  test('leads to its step, or past it, aloud', () => {
    expect(spoken(tell(asked, affirm))).toEqual(['Rinse it.']);
    expect(spoken(tell(asked, negative))).toEqual(['Skipped, it does not apply: Rinse.', 'Clean it.']);
  });
});

test('where the component is held, its weight is said with the step', () => {
  const held = tell(start(procedureOf([clean, step('hold', 'hold', { say: 'Hold it.' }), last])), next);
  expect(spoken(held)).toEqual(['Hold it.', 'The component weighs one zero kilograms.', 'Say held when you hold it.']);
  expect(announce(held.state, [{ kind: 'repeat asked' }])).toEqual(spoken(held));
});
