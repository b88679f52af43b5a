/** Values read off something else than a torque tool: said, read back, confirmed, judged, and after a wait not too early. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { situationOf } from '../../src/language/situation.ts';
import { fold } from '../../src/session/fold.ts';
import { openReason } from '../../src/session/reasons.ts';
import { workView } from '../../src/ui/view.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { openPoints } from '../../src/session/deviations.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { silenceAfter } from '../../src/session/silence.ts';
import { currentStep } from '../../src/session/state.ts';
import {
  affirm,
  back,
  correction,
  disregard,
  eventOf,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading as torque,
  refused,
  start,
  step,
  tell,
  tighten,
  type Play,
} from './play.ts';

const observed = (value: string): Meaning => ({ kind: 'observed', value });
const leaveOpen: Meaning = { kind: 'leave open' };
const because: Meaning = { kind: 'reason', text: 'glass is dirty' };
const level = step('level', 'measure', { what: 'oil level', unit: 'mm', window: { min: '40', max: '60' } });
const leak = step('leak', 'measure', {
  what: 'pressure after the wait',
  unit: 'bar',
  window: { min: '3.5', max: '4.0' },
  waitMinutes: 1,
});
const rest = step('rest', 'do');
const at = (measured: object): Play => start(procedureOf([step('first', 'do'), measured, rest]));
const reading = tell(at(level), next);
const said = (play: Play): readonly string[] => announce(play.state, happened(play));
const why = (play: Play): string => {
  const reason = refused(play);
  return reason ? sayRefusal(play.state, reason) : '';
};
const values = ({ state }: Play): readonly string[] => state.observed.map(({ value, status }) => `${value} ${status}`);

describe('a value that is read', () => {
  const taken = tell(reading, observed('42'));
  test('is asked for in its unit', () =>
    expect(said(reading)).toEqual(['Text of level.', 'Say the value in millimetres.']));
  test('is read back digit by digit, and kept as it was said with its window', () => {
    expect(happened(taken)).toEqual([
      {
        kind: 'value observed',
        step: 'level',
        value: '42',
        unit: 'mm',
        window: { min: '40', max: '60' },
        verdict: 'in',
        waited: null,
        corrects: null,
      },
    ]);
    expect(said(taken)).toEqual(['Oil level, four two millimetres. Is that correct?']);
    expect(said(tell(reading, observed('4.0')))).toEqual([
      'Oil level, four point zero millimetres. That is under the window. Is that correct?',
    ]);
  });
  test('counts only once it is confirmed, and then its step is done', () => {
    expect(currentStep(taken.state)?.id).toBe('level');
    expect(kinds(tell(taken, affirm))).toEqual(['value confirmed', 'step done']);
  });
  test('is rejected, dropped, or said anew; nothing is erased', () => {
    expect(values(tell(taken, negative))).toEqual(['42 rejected']);
    expect(values(tell(taken, disregard))).toEqual(['42 disregarded']);
    expect(values(tell(taken, observed('43'), affirm))).toEqual(['42 replaced', '43 confirmed']);
  });
  test('is not passed by "next", before it is said or before it is confirmed', () => {
    expect(why(tell(reading, next))).toBe('A value is needed. Say it, or type it.');
    expect(why(tell(taken, next))).toBe('The value is not confirmed. Say affirm or negative.');
    expect(why(tell(taken, back))).toBe('The value is not confirmed. Say affirm or negative.');
  });
  test('is taken nowhere else', () => expect(why(tell(at(level), observed('42')))).toBe('No reading is taken here.'));
  test('that is no number is asked about', () =>
    expect(refused(tell(reading, observed('many')))?.code).toBe('unclear'));
  test('is asked about again where nobody answers: silence is no consent', () => {
    expect(silenceAfter(taken.state)).toBe(8000);
    const silent = tell(taken, { kind: 'silence' });
    expect(said(silent)).toEqual(['Oil level, four two millimetres. Is that correct?']);
    expect(values(silent)).toEqual(['42 observed']);
  });
  test('is judged by no window where the procedure has none', () => {
    const free = tell(at(step('free', 'measure', { what: 'level', unit: 'mm' })), next, observed('900'));
    expect(happened(free)).toMatchObject([{ verdict: 'no window', window: null }]);
    expect(kinds(tell(free, affirm))).toContain('step done');
  });
  test('is set aside where its step is taken back, and read again', () => {
    const again = tell(taken, affirm, back);
    expect(values(again)).toEqual(['42 set aside']);
    expect(kinds(tell(again, observed('44'), affirm))).toContain('step done');
  });
});

describe('a value outside its window', () => {
  const outside = tell(reading, observed('70'), affirm);
  test.each([
    ['39.9', 'under'],
    ['40', 'in'],
    ['60', 'in'],
    ['60.1', 'over'],
  ])('at the limit: %s is %s', (value, verdict) =>
    expect(happened(tell(reading, observed(value)))).toMatchObject([{ verdict }]),
  );
  test('is confirmed as it is, and does not end its step', () => {
    expect(kinds(outside)).toEqual(['value confirmed']);
    expect(said(outside)).toEqual([
      'Logged.',
      'It is over the window. Put it right and read again, or say leave open.',
    ]);
    expect(why(tell(outside, next))).toBe('A value is needed. Say it, or type it.');
  });
  test('is put right and read again: the new value stands in for it', () => {
    const right = tell(outside, observed('50'), affirm);
    expect(values(right)).toEqual(['70 replaced', '50 confirmed']);
    expect(currentStep(right.state)?.id).toBe('rest');
    expect(openPoints(right.state)).toEqual([]);
  });
  test('may be dropped', () => expect(values(tell(outside, disregard))).toEqual(['70 disregarded']));
  test('or is left open, and listed for somebody to decide about', () => {
    const asked = tell(outside, leaveOpen);
    expect(kinds(asked)).toEqual(['value left open']);
    expect(openPoints(asked.state)).toMatchObject([{ of: 'value', step: 'level', leftOpen: true }]);
    expect(kinds(tell(asked, because, affirm))).toEqual(['reason confirmed', 'step done']);
  });
  test('is not left open without a reason, dictated or typed, which is read back', () => {
    const asked = tell(outside, leaveOpen);
    expect(said(asked)).toEqual(['It is left open.', 'Say the reason in your own words.']);
    expect(situationOf(asked.state).dictation).toBe(true);
    expect(workView(asked.state).deviation).toEqual({ what: 'level: 70 mm, over the window, left open', reason: null });
    for (const meaning of [next, observed('50'), affirm, { kind: 'reason', text: ' ' } as const])
      expect(why(tell(asked, meaning))).toBe('Say the reason in your own words, or say: cancel that.');
    const given = tell(asked, because);
    expect(said(given)).toEqual(['Reason: glass is dirty. Is that correct?']);
    expect(currentStep(given.state)?.id).toBe('level');
    expect(said(tell(given, negative))).toEqual(['Not logged.', 'Say the reason in your own words.']);
    expect(tell(given, affirm).state.observed[0]?.reason).toBe('glass is dirty');
    expect(values(tell(asked, disregard))).toEqual(['70 disregarded']);
  });
  test('of a record from before values had a reason is done with, and asked for none', () => {
    const before = [
      { kind: 'value left open', of: outside.state.observed[0]?.seq ?? -1 },
      { kind: 'step done', step: 'level' },
    ] as const;
    const state = before.reduce((now, body, i) => fold(now, eventOf(body, outside.events.length + i)), outside.state);
    expect(currentStep(state)?.id).toBe('rest');
    expect(openReason(state)).toBeNull();
  });
  test('cannot be left open before it was read', () =>
    expect(why(tell(reading, leaveOpen))).toBe('A value is needed. Say it, or type it.'));
});

describe('a check with a wait', () => {
  const atLeak = tell(at(leak), next);
  const waiting = tell(atLeak, next);
  const asked: Meaning = { kind: 'question', question: { about: 'place' } };
  /** One event a second. */
  const later = (seconds: number): Play => tell(waiting, ...Array.from({ length: seconds }, () => asked));

  test('takes no value before the wait has begun', () => {
    expect(said(atLeak)).toEqual(['Text of leak.', 'Say next when the wait begins. It is one minute.']);
    expect(why(tell(atLeak, observed('3.9')))).toBe('The wait has not begun. Say next when it begins.');
  });
  test('begins its wait with "next"', () => {
    expect(happened(waiting)).toEqual([{ kind: 'wait begun', step: 'leak' }]);
    expect(said(waiting)).toEqual(['The wait begins: one minute.']);
  });
  test('refuses a value that comes too early, and says how long it still lasts', () => {
    // The question before is one second, so the value comes one second after the wait began, and so on.
    expect(why(tell(waiting, observed('3.9')))).toBe('Too early: wait fifty nine seconds more.');
    expect(why(tell(later(30), observed('3.9')))).toBe('Too early: wait twenty nine seconds more.');
    expect(why(tell(later(58), next))).toBe('Too early: wait one second more.');
  });
  test('takes it when the wait is over, with the wait in the record', () => {
    const taken = tell(later(59), observed('3.9'));
    expect(happened(taken)).toMatchObject([{ kind: 'value observed', verdict: 'in', waited: 60 }]);
    expect(kinds(tell(taken, affirm))).toEqual(['value confirmed', 'step done']);
  });
  test('waits anew where its step is taken back', () => {
    const again = tell(later(59), observed('3.9'), affirm, back);
    expect(refused(tell(again, observed('3.9')))).toEqual({ code: 'wait first' });
  });
});

test('a value that was left open and dropped is read again before the second person looks', () => {
  const left = tell(at({ ...level, witness: true }), next, observed('20'), affirm, leaveOpen, because, affirm);
  expect(kinds(left)).toEqual(['reason confirmed', 'witness asked']);
  const dropped = tell(left, disregard);
  expect(openPoints(dropped.state)).toEqual([]);
  expect(refused(tell(dropped, { kind: 'witness says', agrees: true }))).toEqual({ code: 'nothing to witness' });
});

test('a value that takes the place of one that was left open leaves nothing open', () => {
  const left = tell(at({ ...level, witness: true }), next, observed('20'), affirm, leaveOpen, because, affirm);
  const again = tell(left, { kind: 'witness says', agrees: false }, observed('42'), affirm);
  expect(kinds(again)).toEqual(['value confirmed', 'witness asked']);
  expect(openPoints(again.state)).toEqual([]);
});

test('a correction is of the value that was read last, and not of a fastener before it', () => {
  const torques = ['24', '24', '24'].flatMap((value) => [torque(value), affirm]);
  const play = tell(start(procedureOf([tighten('ring'), level, rest])), ...torques, observed('20'), negative);
  expect(happened(tell(play, correction('42')))).toMatchObject([{ kind: 'value observed', value: '42' }]);
});
