/** Both hands under a weight: what is said, what is refused, and what the record keeps of it. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { sayHeldFor, sayHoldTime } from '../../src/language/say-hold.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand } from '../../src/language/understand.ts';
import { CALL_PAUSE, dueWhileHeld, heldStep } from '../../src/session/hold.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { forwardMeaning } from '../../src/ui/forward.ts';
import {
  affirm,
  back,
  correction,
  disregard,
  happened,
  kinds,
  next,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  type Play,
} from './play.ts';

const held: Meaning = { kind: 'held' };
const setDown: Meaning = { kind: 'set down' };
const help: Meaning = { kind: 'help' };
const timePassed: Meaning = { kind: 'time passed' };
const calls = ['Straight off', 'Two steps back', 'Down'];
const carry = step('carry', 'hold', { orientation: 'ports up', everySeconds: 30, calls });
const rest = step('rest', 'do');
const atHold = (more: object = {}): Play => start(procedureOf([{ ...carry, ...more }, rest]));
const carrying = tell(atHold(), held);
const said = (play: Play): readonly string[] => announce(play.state, happened(play));
const says = (play: Play, text: string) =>
  understand(
    text.split(' ').map((word) => ({ word, confidence: 1 })),
    situationOf(play.state),
  );
const why = (play: Play): string => {
  const reason = refused(play);
  return reason ? sayRefusal(play.state, reason) : '';
};

describe('a hold', () => {
  test('begins with the word "held", and its first call follows at once', () => {
    expect(kinds(carrying)).toEqual(['hold begun', 'hold call']);
    expect(said(carrying)).toEqual(['Held. Ports up.', 'Straight off.']);
  });
  test('does not begin with "next": nobody is taken for holding who has not said so', () => {
    expect(refused(tell(atHold(), next))).toEqual({ code: 'hold first' });
    expect(why(tell(atHold(), next))).toBe('Say held first, when you hold it.');
    expect(refused(tell(atHold(), setDown))).toEqual({ code: 'hold first' });
  });
  test('does not begin before its warning is acknowledged', () => {
    const hazards = [{ signal: 'warning', consequence: 'person', text: 'It is heavy.' }];
    expect(refused(tell(atHold({ hazards }), held))).toEqual({ code: 'warning first' });
    expect(kinds(tell(atHold({ hazards }), affirm, held))).toContain('hold begun');
  });
  test('is nothing elsewhere', () => {
    const elsewhere = start(procedureOf([rest]));
    expect(why(tell(elsewhere, held))).toBe('Nothing is held here.');
    expect(why(tell(elsewhere, setDown))).toBe('Nothing is held.');
  });
  test('has its calls said one after another by themselves, and "next" or a nod brings one at once', () => {
    const second = tell(carrying, timePassed);
    expect(said(second)).toEqual(['Two steps back.']);
    expect(said(tell(second, next))).toEqual(['Down.']);
    expect(forwardMeaning(carrying.state, situationOf(carrying.state))).toEqual(next);
  });
  test('begins with a pedal or a nod as well: no hand is free', () => {
    const { state } = atHold();
    expect(forwardMeaning(state, situationOf(state))).toEqual(held);
  });
  test('does not end with its last call: the weight is in their hands until it is set down', () => {
    const all = tell(carrying, next, next);
    expect(why(tell(all, next))).toBe('Say set down when it is down.');
    expect(tell(all, timePassed).last).toEqual({ kind: 'accepted', events: [] });
    expect(heldStep(tell(all, timePassed).state)?.id).toBe('carry');
  });
  test('ends with "set down", and the record has how long it was held', () => {
    // One event a second: two at the beginning, three calls in all, so it is set down four seconds after it was taken.
    const down = tell(carrying, next, next, setDown);
    expect(happened(down)).toEqual([
      { kind: 'hold ended', step: 'carry', seconds: 4 },
      { kind: 'step done', step: 'carry' },
    ]);
    expect(said(down)).toEqual(['Set down. Held for four seconds.', 'Text of rest.']);
    expect(down.state.hold).toBeNull();
  });
  test('may be set down at any time, and is not done before its last call: it is lifted again', () => {
    const early = tell(carrying, next, setDown);
    expect(happened(early)).toEqual([{ kind: 'hold ended', step: 'carry', seconds: 3 }]);
    expect(said(early)).toEqual([
      'Set down. Held for three seconds.',
      'The last word of the carry was not reached: the step is not done. Say held when you lift it again.',
    ]);
    expect(why(tell(early, next))).toBe('Say held first, when you hold it.');
    expect(kinds(tell(early, held, next, next, setDown))).toEqual(['hold ended', 'step done']);
  });
  test.each<[string, Meaning]>([
    ['stand by', { kind: 'stand by' }],
    ['back', back],
    ['a correction', correction('24')],
    ['a reading', reading('24')],
    ['a question', { kind: 'question', question: { about: 'why' } }],
    ['disregard', disregard],
    ['affirm', affirm],
    ['held once more', held],
    ['handing over', { kind: 'hand over' }],
  ])('refuses %s, in few words', (_, meaning) => {
    const after = tell(carrying, meaning);
    expect(after.state).toEqual(carrying.state);
    expect(why(after)).toBe('You hold it. Next, help, or set down.');
  });
  test('says again only what is wanted now, and how it must be held', () =>
    expect(said(tell(carrying, { kind: 'say again' }))).toEqual(['Straight off. Ports up.']));
  test('goes on when the page is opened again, with its length from the beginning', () => {
    const reopened = tell(carrying, { kind: 'reopen' });
    expect(reopened.state.hold).toEqual(carrying.state.hold);
    expect(happened(tell(reopened, setDown))[0]).toEqual({ kind: 'hold ended', step: 'carry', seconds: 3 });
  });
  test('is looked at by its second person afterwards, where the step asks for it', () => {
    const witnessed = tell(atHold({ witness: true }), held, next, next, setDown);
    expect(kinds(witnessed)).toEqual(['hold ended', 'witness asked']);
    expect(kinds(tell(witnessed, { kind: 'witness says', agrees: true }))).toContain('step done');
  });
});

describe('the call for help', () => {
  const called = tell(carrying, help);
  test('is taken before and while a weight is held, and is recorded', () => {
    expect(happened(called)).toEqual([{ kind: 'help called', step: 'carry' }]);
    expect(kinds(tell(atHold(), help))).toEqual(['help called']);
  });
  test('names the second person, and is said again with every word until the weight is set down', () => {
    expect(said(called)).toEqual(['Help! Second person, to the load, now!']);
    const step = heldStep(called.state);
    expect(step && sayHoldTime(called.state, step, 30)).toBe(
      'Help! Second person, to the load, now! Thirty seconds. Ports up.',
    );
    expect(tell(called, setDown).state.helpCalled).toBe(false);
  });
  test('calls whoever is near where nobody is named', () => {
    const alone = tell(called, { kind: 'second person', name: null });
    expect(said(tell(alone, help))).toEqual(['Help! Somebody to the load, now!']);
  });
  test.each<[string, readonly Meaning[]]>([
    ['work stands by', [{ kind: 'stand by' }]],
    ['a warning is open', []],
  ])('is taken where %s', (_, before) => {
    const hazards = [{ signal: 'danger', consequence: 'person', text: 'Heavy.' }];
    expect(kinds(tell(atHold({ hazards }), ...before, help))).toEqual(['help called']);
  });
  test('is heard from one unsure word: to miss it costs more than to take it', () => {
    const unsure = [{ word: 'help', confidence: 0.5 }];
    expect(understand(unsure, situationOf(carrying.state))).toEqual({ kind: 'meant', meaning: help });
    expect(understand([{ word: 'next', confidence: 0.5 }], situationOf(carrying.state)).kind).toBe('nothing');
  });
  test('has no rival in "held", which sounds like it, once the weight is held', () => {
    expect(says(atHold(), 'held')).toEqual({ kind: 'meant', meaning: held });
    expect(says(carrying, 'held').kind).toBe('nothing');
    expect(says(carrying, 'help')).toEqual({ kind: 'meant', meaning: help });
  });
});

describe('the clock of a hold', () => {
  /** Seconds after the weight was taken. */
  const after = (seconds: number): string =>
    new Date(Date.parse(carrying.state.hold?.since ?? '') + seconds * 1000).toISOString();
  const due = (play: Play, seconds: number, quietFor: number, told = 0) =>
    dueWhileHeld(play.state, after(seconds), { quietFor, told });

  test('brings the next call after a pause, and none while somebody speaks', () => {
    expect(due(carrying, 5, CALL_PAUSE - 1)).toBeNull();
    expect(due(carrying, 5, CALL_PAUSE)).toEqual({ kind: 'call' });
  });
  test('tells the time at the interval of the step, once, and before a call', () => {
    expect(due(carrying, 29, CALL_PAUSE)).toEqual({ kind: 'call' });
    expect(due(carrying, 31, CALL_PAUSE)).toEqual({ kind: 'time', seconds: 30 });
    expect(due(carrying, 31, CALL_PAUSE, 30)).toEqual({ kind: 'call' });
    expect(due(carrying, 95, 600, 30)).toEqual({ kind: 'time', seconds: 90 });
  });
  test('brings nothing more after the last call but the time', () => {
    const all = tell(carrying, next, next);
    expect(due(all, 20, 60_000)).toBeNull();
    expect(due(all, 30, 60_000)).toEqual({ kind: 'time', seconds: 30 });
  });
  test('is still where nothing is held', () => expect(due(atHold(), 60, 60_000)).toBeNull());
  test('tells the time in whole words', () => {
    expect([1, 30, 60, 125].map(sayHeldFor)).toEqual([
      'one second',
      'thirty seconds',
      'one minute',
      'two minutes, five seconds',
    ]);
  });
});

describe('"help" is heard while somebody else has the weight', () => {
  const groups = [
    { name: 'lower', numbers: [2, 3] },
    { name: 'upper', numbers: [1] },
  ];
  const job = start(
    procedureOf([
      step('off', 'loosen', { pattern: 'three', stages: ['take off'], groups, heldBefore: 'last group' }),
      step('on', 'do', { handStart: ['three'] }),
      rest,
    ]),
  );
  const isHeard = (play: Play): boolean => says(play, 'help').kind === 'meant';

  test('from the word "held" to the last fastener that is freed', () => {
    const before = tell(job, next);
    expect(isHeard(before)).toBe(false);
    const asked = tell(before, next);
    expect([asked, tell(asked, held)].map(isHeard)).toEqual([true, true]);
    expect(kinds(tell(asked, held, help))).toEqual(['help called']);
  });
  test('and on refit until the fasteners that carry it are started', () => {
    const refit = tell(job, next, next, held, next);
    expect([refit, tell(refit, affirm)].map(isHeard)).toEqual([true, false]);
  });
});
