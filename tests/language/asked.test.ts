/** What is said of deviations, breaks, handover and the second person's word. */
import { describe, expect, test } from 'vitest';
import { prompt } from '../../src/language/prompt.ts';
import { sayDuration } from '../../src/language/standing.ts';
import { fold } from '../../src/session/fold.ts';
import {
  affirm,
  eventOf,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from '../session/play.ts';
import { spoken } from './spoken.ts';

const two = { passes: [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')] };
const last = step('clean', 'do', { say: 'Clean it.' });
const ring = (more: object = {}): Play => start(procedureOf([tighten('ring', { ...two, ...more }), last]));
const damage = { kind: 'report', what: 'damage' } as const;
const torn = { kind: 'reason', text: 'thread is torn' } as const;

describe('a deviation', () => {
  const told = { onDeviation: [{ what: 'damage', text: 'An inspector decides.' }] };

  test('is repeated with its fastener, and its reason asked for in own words', () =>
    expect(spoken(tell(ring(), damage))).toEqual(['Stud one, damage.', 'Say the reason in your own words.']));
  test('has its reason read back before it counts', () => {
    const given = tell(ring(), damage, torn);
    expect(spoken(given)).toEqual(['Reason: thread is torn. Is that correct?']);
    expect(spoken(tell(given, { kind: 'say again' }))).toEqual(['Reason: thread is torn. Is that correct?']);
    expect(spoken(tell(given, negative))).toEqual(['Not logged.', 'Say the reason in your own words.']);
  });
  test('is followed by what the procedure has for it, and how the work can go on', () =>
    expect(spoken(tell(ring(told), damage, torn, affirm))).toEqual([
      'Logged.',
      'Stud one. An inspector decides. Is it done? Affirm or negative, or leave open?',
    ]));
  test('without anything in the procedure is left to the manual', () =>
    expect(spoken(tell(ring(), damage, torn, affirm))[1]).toBe(
      'The procedure does not say what to do. Decide by the manual.',
    ));
  test('that was left open is said at the end, and counted with what is left', () => {
    const one = start(procedureOf([tighten('ring'), last]));
    const left = tell(one, reading('24'), affirm, reading('24'), affirm, damage, torn, affirm, { kind: 'leave open' });
    expect(spoken(tell(left, { kind: 'question', question: { about: 'left' } }))).toContain('One still to be decided.');
    expect(spoken(tell(left, next))).toEqual([
      'All steps are done.',
      'One deviation needs a decision.',
      'Stud two, pass one, damage, left open.',
      'For each, type the name of whoever decides, and tap the decision.',
    ]);
  });
});

describe('the second person is told', () => {
  const look = step('look', 'witness', { what: 'the ring', say: 'Look at the ring.' });
  test('what to look at, and the two words that count', () =>
    expect(prompt(start(procedureOf([look])).state)).toEqual([
      'Look at the ring. Second person, say witness affirm or witness negative.',
    ]));
  test('that somebody must join, where there is nobody', () =>
    expect(prompt(tell(start(procedureOf([look])), { kind: 'second person', name: null }).state)).toEqual([
      'Look at the ring. No second person is named: one must join. Then say witness affirm or witness negative.',
    ]));
  test('to look at work that is done', () =>
    expect(spoken(tell(start(procedureOf([step('fit', 'do', { witness: true })])), next))).toEqual([
      'Second person, look at this step: fit. Second person, say witness affirm or witness negative.',
    ]));
  test('nothing more, and the mechanic to put it right, where they do not agree', () =>
    expect(spoken(tell(start(procedureOf([look])), { kind: 'witness says', agrees: false }))[0]).toBe(
      'Stop. The second person does not agree. Put it right. To read the last pass again, say back.',
    ));
});

describe('who comes back or comes in is told', () => {
  const begun = tell(ring(), reading('12'), affirm, reading('12'), affirm);
  const standing = 'In pass one, done: stud one, stud three. One to do, and one more pass.';

  test('which fasteners have this pass, and what is left', () =>
    expect(spoken(tell(begun, { kind: 'stand by' }, { kind: 'continue' }))[0]).toBe(standing));
  test('nothing of it where nothing is done', () =>
    expect(spoken(tell(ring(), { kind: 'stand by' }, { kind: 'continue' }))[0]).toMatch(/^Text of ring/));
  test('how long the break was, and is asked whether everything is as it was left', () => {
    const event = eventOf({ kind: 'continued' }, 9);
    const later = { ...event, at: { ...event.at, utc: '2026-03-01T01:00:04.000Z' } };
    const back = fold(tell(begun, { kind: 'stand by' }).state, later);
    expect(prompt(back)).toEqual([
      'Work was broken off for six zero minutes.',
      standing,
      'Is everything as it was left? Affirm or negative?',
    ]);
  });
  test('from whom they take over', () => {
    const handed = tell(ring(), { kind: 'hand over' }, { kind: 'take over', name: 'Third person' });
    expect(spoken(handed)[0]).toBe('Third person takes over from Mechanic.');
  });
  test.each([
    [31, 'three one minutes'],
    [119, 'one one nine minutes'],
    [120, 'two hours'],
    [47 * 60, 'four seven hours'],
    [48 * 60, 'two days'],
  ])('%i minutes as "%s"', (minutes, words) => expect(sayDuration(minutes * 60_000)).toBe(words));
});
