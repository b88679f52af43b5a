/** Questions about the work: asked while working, answered shortly, and without effect. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { answerTo } from '../../src/language/answer.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { WRITTEN } from '../../src/language/say.ts';
import { situationOf } from '../../src/language/situation.ts';
import type { Question } from '../../src/session/intent.ts';
import { fold } from '../../src/session/fold.ts';
import {
  affirm,
  dial,
  fireBoat,
  happened,
  indicating,
  newtonMetres,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from '../session/play.ts';
import { openly } from '../session/anything.ts';
import { meant, typed } from './meant.ts';

const passes = [torquePass('12', '11', '13', { name: 'first' }), torquePass('24.5', '23', '26', { name: 'final' })];
const ring = start(
  procedureOf([tighten('ring', { title: 'Tighten the ring', passes }), step('clean', 'do'), step('close', 'do')]),
);
/** Stud 1 in the second pass is confirmed, so stud 3 is called. */
const midway = tell(ring, ...['12', '12.5', '12', '24'].flatMap((value) => [reading(value), affirm]));
const ask = (play: Play, question: Question): Play => tell(play, { kind: 'question', question });
const answered = (play: Play, question: Question): readonly string[] => {
  const asked = ask(play, question);
  return announce(asked.state, happened(asked));
};

describe('a question', () => {
  test('is an event that changes nothing', () => {
    const asked = ask(midway, { about: 'left' });
    expect(happened(asked)).toEqual([{ kind: 'asked', question: { about: 'left' } }]);
    expect(asked.events.slice(midway.events.length).reduce(fold, midway.state)).toEqual(midway.state);
  });
  test.each<[string, string, Question]>([
    ['where are we', 'where am I', { about: 'place' }],
    ['remaining', 'what is left', { about: 'left' }],
    ['last values', 'last three', { about: 'last readings' }],
    ['explain', 'why', { about: 'why' }],
    ['say slowly', 'say it slowly', { about: 'slowly' }],
    ['look up stud three', 'what did you log for 3', { about: 'logged', fastener: 3 }],
    ['look up stud three', 'what is logged for stud 3', { about: 'logged', fastener: 3 }],
  ])('is spoken as "%s" and written as "%s" as well', (spoken, written, question) => {
    expect(meant(midway, spoken)).toEqual({ kind: 'question', question });
    expect(typed(midway, written)).toEqual({ kind: 'question', question });
    const words = new Set(recogniserPhrases(situationOf(midway.state)).flatMap((phrase) => phrase.split(' ')));
    expect(spoken.split(' ').filter((word) => !words.has(word))).toEqual([]);
  });
  test('does not put a word that sounds like a digit into the phrase list', () => {
    const words = new Set(recogniserPhrases(situationOf(midway.state)).flatMap((phrase) => phrase.split(' ')));
    expect(['for', 'is', 'i', 'why', 'to', 'too', 'won', 'ate'].filter((word) => words.has(word))).toEqual([]);
  });
  test('comes not between a read-back and its answer, but for why', () => {
    const pending = tell(midway, reading('24.5'));
    expect(meant(pending, 'where are we')).toBeNull();
    expect(refused(ask(pending, { about: 'logged', fastener: 3 }))).toEqual({ code: 'confirm first', fastener: 3 });
    expect(meant(pending, 'explain')).toEqual({ kind: 'question', question: { about: 'why' } });
    expect(answered(pending, { about: 'why' })).toEqual([
      'A value counts once it is confirmed. Say affirm if it is what you read, negative if not.',
    ]);
  });
  test('waits while the work stands by', () =>
    expect(refused(ask(tell(midway, { kind: 'stand by' }), { about: 'place' }))).toEqual({ code: 'standing by' }));
});

describe('the answer', () => {
  test('says where the work stands', () => {
    expect(answered(midway, { about: 'place' })).toEqual([
      'Step one of three: Tighten the ring.',
      'Pass two of two, final. Stud three, two four point five newton metres.',
    ]);
    const all = tell(midway, reading('24'), affirm, reading('24'), affirm);
    expect(answered(all, { about: 'place' })).toEqual(['Step two of three: clean.']);
  });
  test('says what is left', () => {
    expect(answered(ring, { about: 'left' })).toEqual([
      'In this pass, three to do; in later passes, three.',
      'Two steps after this one.',
    ]);
    expect(answered(midway, { about: 'left' })).toEqual(['In this pass, two to do.', 'Two steps after this one.']);
  });
  test('says the last three readings that were confirmed, digit by digit', () => {
    expect(answered(ring, { about: 'last readings' })).toEqual(['Nothing is logged yet.']);
    expect(answered(midway, { about: 'last readings' })).toEqual([
      'Stud three, pass one, one two point five.',
      'Stud two, pass one, one two.',
      'Stud one, pass two, two four.',
    ]);
  });
  test('says what is logged of a fastener, in the step that is worked or the last that was', () => {
    const of = (play: Play, fastener: number) => answered(play, { about: 'logged', fastener });
    expect(of(midway, 1)).toEqual(['Stud one: pass one, one two; pass two, two four.']);
    expect(of(midway, 7)).toEqual(['Nothing is logged for stud seven.']);
    const all = tell(midway, reading('24'), affirm, reading('24'), affirm);
    expect(of(all, 2)).toEqual(['Stud two: pass one, one two; pass two, two four.']);
    expect(of(start(procedureOf([step('clean', 'do')])), 2)).toEqual(['Nothing is logged yet.']);
  });
  test('says running torque by its name', () => {
    const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
    const play = start(procedureOf([tighten('ring', { runDown })], { tools: [indicating, dial] }));
    expect(answered(tell(play, reading('2.5'), affirm), { about: 'logged', fastener: 1 })).toEqual([
      'Stud one: running torque, two point five.',
    ]);
  });
  test('says why: how the setting came about, or whose order it is', () => {
    let cover = start(fireBoat());
    while (cover.state.readings.length < 13) cover = tell(cover, openly(cover.state));
    expect(answered(tell(cover, affirm), { about: 'why' })).toEqual([
      'Target eight seven point five, plus two two running, times zero point nine zero four for the adapter: set nine nine.',
    ]);
    expect(answered(tell(midway, reading('24'), affirm, reading('24'), affirm), { about: 'why' })).toEqual([
      'The procedure says so. It follows Invented manual, revision A.',
    ]);
  });
  test('is the same for the eye, in figures with their units', () => {
    const shown = (play: Play, question: Question) => answerTo(play.state, question, WRITTEN);
    expect(shown(midway, { about: 'place' })).toEqual([
      'Step 1 of 3: Tighten the ring.',
      'Pass 2 of 2, final. Stud 3, 24.5 N·m.',
    ]);
    expect(shown(ring, { about: 'left' })).toEqual([
      'In this pass, 3 to do; in later passes, 3.',
      '2 steps after this one.',
    ]);
    expect(shown(midway, { about: 'last readings' })[0]).toBe('Stud 3, pass 1, 12.5 N·m.');
    expect(shown(midway, { about: 'logged', fastener: 1 })).toEqual(['Stud 1: pass 1, 12 N·m; pass 2, 24 N·m.']);
    expect(shown(midway, { about: 'why' })).toEqual(['Target 24.5: pull to 24.5.']);
  });
  test('says slowly what is wanted, piece by piece', () => {
    expect(answered(ring, { about: 'slowly' })).toEqual([
      'Text of ring.',
      'Pass one of two,',
      'First.',
      'Stud one,',
      'One two newton metres.',
    ]);
  });
});
