/** What is out of the ordinary is reported with a reason, and stays listed whatever becomes of the fastener. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { answerTo } from '../../src/language/answer.ts';
import { WRITTEN } from '../../src/language/say.ts';
import { openPoints } from '../../src/session/deviations.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { pointFact } from '../../src/session/point-words.ts';
import { currentPoint } from '../../src/session/points.ts';
import { currentCall, currentStep } from '../../src/session/state.ts';
import {
  affirm,
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
  start,
  step,
  tell,
  tighten,
  torquePass,
  turned,
  window,
  type Play,
} from './play.ts';
import { sayWhyRefused } from '../../src/ui/describe-refusal.ts';
import { mapView } from '../../src/ui/view/map.ts';

const damage = { kind: 'report', what: 'damage' } as const;
const over = { kind: 'report', what: 'over torque' } as const;
const leaveOpen = { kind: 'leave open' } as const;
const because = (text: string) => ({ kind: 'reason', text }) as const;
const last = step('clean', 'do');
const twoPasses = { passes: [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')] };
const ring = (more: object = {}): Play => start(procedureOf([tighten('ring', more), last]));
const tighteningOf = ({ state }: Play): Step => {
  const step = currentStep(state);
  if (!step) throw new Error('All steps are done.');
  return step;
};
const points = ({ state }: Play): readonly string[] =>
  openPoints(state).flatMap((point) => {
    if (point.of !== 'fastener') return [];
    const { fastener, pass, what, reason, leftOpen } = point;
    return [
      `${fastener}/${pass}: ${what}`,
      ...(reason === null ? [] : [reason]),
      ...(leftOpen ? ['left open'] : []),
    ].join(', ');
  });

describe('a report', () => {
  const reported = tell(ring(), damage);

  test('is of the fastener that is called, in its pass', () =>
    expect(happened(reported)).toEqual([
      { kind: 'deviation reported', step: 'ring', pass: 1, fastener: 1, what: 'damage', reading: null },
    ]));
  test('names the reading that stands for it', () =>
    expect(happened(tell(ring(), reading('30'), affirm, over))).toMatchObject([{ what: 'over torque', reading: 0 }]));
  test.each([reading('24'), affirm, negative, next, leaveOpen, damage])('wants its reason before $kind', (meaning) =>
    expect(refused(tell(reported, meaning))).toEqual({ code: 'reason first' }),
  );
  test('keeps the reason in the words in which it was said, once they are confirmed', () => {
    const given = tell(reported, because('thread is torn'));
    expect(happened(given)).toEqual([{ kind: 'reason given', of: 0, text: 'thread is torn' }]);
    expect(kinds(tell(given, affirm))).toEqual(['reason confirmed']);
    expect(points(tell(given, affirm))).toEqual(['1/1: damage, thread is torn']);
  });
  test('asks for the reason again where it was not heard rightly', () => {
    const again = tell(reported, because('bread is torn'), negative, because('thread is torn'), affirm);
    expect(points(again)).toEqual(['1/1: damage, thread is torn']);
  });
  test('takes no empty reason', () => expect(refused(tell(reported, because('  ')))).toEqual({ code: 'reason first' }));
  test('is dropped by "disregard", and nothing is left of it but the record', () => {
    const dropped = tell(reported, disregard);
    expect(kinds(dropped)).toEqual(['deviation disregarded']);
    expect(points(dropped)).toEqual([]);
    expect(dropped.events).toHaveLength(2);
  });
  test('is not made while a reading waits', () =>
    expect(refused(tell(ring(), reading('24'), damage))?.code).toBe('confirm first'));
  test('is made of nothing where no fastener is called', () =>
    expect(refused(tell(start(procedureOf([last])), damage))).toEqual({ code: 'nothing to report on' }));
  test('of a torque is not made where fasteners are freed; of damage it is', () => {
    const free = start(procedureOf([step('free', 'loosen', { pattern: 'three' })]));
    expect(refused(tell(free, over))).toEqual({ code: 'nothing to report on' });
    expect(kinds(tell(free, damage))).toEqual(['deviation reported']);
  });
});

describe('damage that is reported once more', () => {
  const once = tell(ring({ ...twoPasses, onDeviation: [{ what: 'damage', text: 'Look.' }] }), damage, because('cut'));
  const twice = tell(once, affirm, damage, because('a crack too'), affirm);
  const first = openPoints(twice.state)[0]?.seq ?? -1;
  const newest = ({ state }: Play): number => state.deviations.at(-1)?.seq ?? -1;

  test('is logged with its reason, and said to be noted', () => {
    const again = tell(once, affirm, damage);
    expect(happened(again)).toMatchObject([{ kind: 'deviation reported', what: 'damage', again: first }]);
    expect(announce(again.state, happened(again))).toContain(
      'Noted: it is reported already. One decision is for both.',
    );
  });
  test('is one point to decide about, with both reasons, left open with either', () => {
    expect(points(twice)).toEqual(['1/1: damage, cut; a crack too']);
    expect(points(tell(twice, affirm, leaveOpen))).toEqual(['1/1: damage, cut; a crack too, left open']);
  });
  test('has what the procedure says done once, with its newest report', () => {
    const asked = ({ state }: Play) => currentPoint(state);
    expect(asked(twice)).toEqual({ kind: 'ordered', of: newest(twice) });
    expect(asked(tell(twice, affirm))).toBeNull();
    const thrice = tell(twice, damage, because('bent too'), affirm);
    expect(asked(thrice)).toEqual({ kind: 'ordered', of: newest(thrice) });
    expect(asked(tell(thrice, affirm))).toBeNull();
  });
  test('after that was done has it done again: it is about the new part', () => {
    const changed = tell(once, affirm, affirm);
    expect(currentPoint(changed.state)).toBeNull();
    const torn = tell(changed, damage, because('the new one is torn'), affirm);
    expect(currentPoint(torn.state)).toEqual({ kind: 'ordered', of: newest(torn) });
    expect(refused(tell(torn, reading('12')))?.code).toBe('point first');
    expect(currentPoint(tell(torn, affirm).state)).toBeNull();
    expect(currentPoint(tell(torn, disregard).state)).toBeNull();
  });
  test('of the same part in a later pass is the same; of another part, or of another kind, it is not', () => {
    const worked = tell(once, affirm, affirm, reading('12'), affirm);
    const other = tell(worked, damage, because('bent'), affirm);
    expect(points(other)).toHaveLength(2);
    const later = tell(other, affirm, ...['12', '12'].flatMap((value) => [reading(value), affirm]));
    expect(currentCall(later.state)).toMatchObject({ fastener: 1, pass: { index: 2 } });
    expect(happened(tell(later, damage))).toMatchObject([{ again: first }]);
    expect(happened(tell(later, over))[0]).not.toHaveProperty('again');
  });
  test('stands where it is left open, also where that is a later pass than that of its first report', () => {
    const later = tell(once, affirm, affirm, ...['12', '12', '12'].flatMap((value) => [reading(value), affirm]));
    const left = tell(later, damage, because('torn'), affirm, affirm, leaveOpen);
    expect(points(left)).toEqual(['1/2: damage, cut; torn, left open']);
    expect(openPoints(left.state)[0]?.seq).toBe(first);
  });
  test('stands alone where its first report is disregarded or decided about', () => {
    const dropped = tell(ring(), damage, disregard, damage);
    expect(happened(dropped)[0]).not.toHaveProperty('again');
    const end = tell(ring(), damage, because('cut'), affirm, leaveOpen, reading('24'), affirm, reading('24'), affirm);
    const anew = tell(end, next, { kind: 'dispose', of: first, what: 'worked again', by: 'Ada', note: '' });
    expect(happened(tell(anew, damage))[0]).not.toHaveProperty('again');
  });
});

describe('a fastener with a stated deviation', () => {
  const stated = tell(ring(twoPasses), damage, because('thread is torn'), affirm);

  test('is called again', () => expect(currentCall(stated.state)).toMatchObject({ fastener: 1, pass: { index: 1 } }));
  test('is worked like any other, and stays listed', () => {
    const worked = tell(stated, reading('12'), affirm);
    expect(currentCall(worked.state)?.fastener).toBe(3);
    expect(points(worked)).toEqual(['1/1: damage, thread is torn']);
  });
  test('is passed over by its own word only', () => {
    expect(refused(tell(stated, next))?.code).toBe('reading first');
    const left = tell(stated, leaveOpen);
    expect(kinds(left)).toEqual(['left open']);
    expect(currentCall(left.state)?.fastener).toBe(3);
    expect(points(left)).toEqual(['1/1: damage, thread is torn, left open']);
  });
  test('that was passed over is not tightened in the next pass either: somebody decides first', () => {
    const round = tell(stated, leaveOpen, reading('12'), affirm, reading('12'), affirm);
    expect(currentCall(round.state)).toMatchObject({ fastener: 3, pass: { index: 2 } });
    expect(mapView(round.state, tighteningOf(round), currentCall(round.state))?.positions[0]).toMatchObject({
      number: 1,
      standing: 'doubt',
    });
    const worked = tell(round, reading('24'), affirm, reading('24'), affirm);
    expect(kinds(worked)).toEqual(['reading confirmed', 'step done']);
  });
  test('that is the last of all that were passed over ends the step', () => {
    const leave = (play: Play): Play => tell(play, damage, because('bent'), affirm, leaveOpen);
    expect(kinds(leave(leave(tell(stated, leaveOpen))))).toEqual(['left open', 'step done']);
  });
  test('that could not be freed is called again in the next stage', () => {
    const free = start(procedureOf([step('free', 'loosen', { pattern: 'three', stages: ['crack', 'take off'] })]));
    const first = currentCall(free.state)?.fastener;
    const round = tell(free, damage, because('bent'), affirm, leaveOpen, next, next);
    expect(currentCall(round.state)).toMatchObject({ fastener: first, pass: { index: 2 } });
  });
  test('that is the last one lets the step be done, with the deviation standing', () => {
    const alone = tell(
      ring(),
      reading('24'),
      affirm,
      reading('24'),
      affirm,
      damage,
      because('bent'),
      affirm,
      leaveOpen,
    );
    expect(kinds(alone)).toEqual(['left open', 'step done']);
    expect(currentStep(alone.state)?.id).toBe('clean');
    expect(points(tell(alone, next))).toEqual(['2/1: damage, bent, left open']);
  });
});

describe('a fastener that was left open', () => {
  test('without its running torque is called in no pass: its value could not be worked out', () => {
    const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
    const procedure = procedureOf([tighten('ring', { runDown }), last], { tools: [indicating, dial] });
    const worn = tell(start(procedure), reading('1.5'), affirm, damage, because('worn'), affirm, leaveOpen);
    const first = tell(worn, reading('2.5'), affirm, reading('2.5'), affirm);
    expect(currentCall(first.state)).toMatchObject({ fastener: 3, pass: { index: 1 } });
  });
  test('does not end a round in which another one turned', () => {
    const final = { target: newtonMetres('24.5'), window: window('23', '26') };
    const play = ring({ final, passes: [{ kind: 'circular check' }] });
    const again = tell(play, turned, next, damage, because('bent'), affirm, leaveOpen);
    expect(kinds(again)).toEqual(['left open']);
    expect(currentCall(again.state)?.fastener).toBe(1);
    expect(kinds(tell(again, next, next))).toEqual(['fastener done', 'step done']);
  });
  test('is open again by "disregard", and no other reading is touched', () => {
    const left = tell(ring(), reading('24'), affirm, damage, because('bent'), affirm, leaveOpen);
    const dropped = tell(left, disregard);
    expect(kinds(dropped)).toEqual(['deviation disregarded']);
    expect(currentCall(dropped.state)?.fastener).toBe(3);
    expect(readings(dropped)).toEqual(['1: 24 confirmed']);
  });
});

test('"disregard" after a value that is gone is not about the one before it', () =>
  expect(refused(tell(ring(), reading('24'), affirm, reading('25'), negative, disregard))).toEqual({
    code: 'nothing to correct',
  }));

test('a reason is well-formed, and no longer than anybody dictates', () => {
  const { state } = tell(ring(), damage, because(`\ud800${'🔧'.repeat(600)}`));
  const [...letters] = state.deviations[0]?.reason ?? '';
  expect(letters).toHaveLength(500);
  expect(letters.slice(0, 2)).toEqual(['\ufffd', '🔧']);
});

test('no fastener is passed over of which nothing is reported', () =>
  expect(refused(tell(ring(), leaveOpen))).toEqual({ code: 'report first' }));

describe('a value over its window', () => {
  test('that was confirmed stays listed, though the nut was backed out and read again', () =>
    expect(points(tell(ring(), reading('30'), affirm, reading('24'), affirm))).toEqual(['1/1: over torque']));
  test('that was misheard is not listed', () =>
    expect(points(tell(ring(), reading('30'), affirm, correction('24'), affirm))).toEqual([]));
  test('is listed once, with its reason, where it was reported', () =>
    expect(points(tell(ring(), reading('30'), affirm, over, because('wrench slipped'), affirm))).toEqual([
      '1/1: over torque, wrench slipped',
    ]));
});

describe('what the procedure has done about it', () => {
  const onDeviation = [
    { what: 'over torque', text: 'Take the nut off.' },
    { what: 'damage', text: 'An inspector decides.' },
  ];
  const ordered = ring({ onDeviation });
  const tooMuch = tell(ordered, reading('30'), affirm);
  const asks = (play: Play): boolean => currentPoint(play.state)?.kind === 'ordered';

  test('is asked about before another value is taken: the nut stays open until it is done', () => {
    for (const meaning of [reading('24'), next, { kind: 'click', fastener: null } as const])
      expect(refused(tell(tooMuch, meaning))?.code).toBe('point first');
    expect(asks(tell(tooMuch, negative))).toBe(true);
    const done = tell(tooMuch, affirm);
    expect(kinds(done)).toEqual(['point settled']);
    expect(readings(tell(done, reading('24'), affirm))).toEqual(['1: 30 confirmed', '1: 24 confirmed']);
  });
  test('is said and asked in one breath', () => {
    const says = (play: Play) => announce(play.state, happened(play));
    expect(says(tooMuch)).toEqual([
      'Logged.',
      'Stud one is over. Stop. Decide by the manual.',
      'Stud one. Take the nut off. Is it done? Affirm or negative?',
    ]);
    expect(says(tell(tooMuch, negative))[0]).toBe('See to it first.');
    const [why] = says(tell(tooMuch, over, because('slipped'), affirm)).slice(-1);
    expect(why).toBe('Stud one. Take the nut off. Is it done? Affirm or negative, or leave open?');
  });
  test('stands in the record as it was ordered', () => {
    const done = tell(tooMuch, affirm);
    const [settled] = happened(done);
    if (settled?.kind !== 'point settled') throw new Error('nothing was answered');
    expect(pointFact(done.state, settled)).toBe(
      'What the procedure has done about stud 1, 30 N·m, “Take the nut off.”: done',
    );
  });
  test('is named by its fastener where something else is refused for it', () => {
    const sayWhy = (play: Play) => {
      const reason = refused(tell(play, next));
      return reason && sayWhyRefused(reason, play.state);
    };
    expect(sayWhy(tooMuch)).toBe('It was not answered yet: what the procedure has done about stud 1, 30 N·m');
    expect(sayWhy(tell(ordered, damage, because('bent'), affirm))).toBe(
      'It was not answered yet: what the procedure has done about stud 1, damage',
    );
  });
  test('is asked once of a reading that is reported as well, and again of the next that is over', () => {
    const reported = tell(tooMuch, affirm, over, because('slipped'), affirm);
    expect(asks(reported)).toBe(false);
    expect(asks(tell(reported, reading('31'), affirm))).toBe(true);
  });
  test('is still asked where something else is reported before it is answered: the reading first', () => {
    const asked = (play: Play) => currentPoint(play.state);
    const bent = tell(tooMuch, damage, because('bent'), affirm);
    expect(asked(bent)).toEqual({ kind: 'ordered', of: 0 });
    const decided = tell(bent, affirm);
    expect(asked(decided)).toEqual({ kind: 'ordered', of: bent.state.deviations[0]?.seq });
    expect(asked(tell(decided, affirm))).toBeNull();
    // Of this one the procedure says nothing.
    const soft = tell(tooMuch, { kind: 'report', what: 'takes no torque' }, because('soft'), affirm);
    expect(refused(tell(soft, reading('24')))?.code).toBe('point first');
    const both = tell(bent, { kind: 'report', what: 'takes no torque' }, because('soft'), affirm);
    expect(asks(tell(both, affirm))).toBe(true);
    expect(asks(tell(both, affirm, affirm))).toBe(false);
  });
  test('is asked of a stated deviation, once its reason is confirmed', () => {
    const given = tell(ordered, damage, because('bent'));
    expect([given, tell(given, affirm), tell(given, affirm, affirm)].map(asks)).toEqual([false, true, false]);
  });
  test('is the answer to "explain", and no value, until it is done', () => {
    const why = ({ state }: Play) => answerTo(state, { about: 'why' }, WRITTEN);
    const bent = tell(ordered, damage);
    expect(why(bent)).toEqual(['Whoever decides about it after the work reads why it is so.']);
    const orderedOf = (what: string, order: string) => [
      `Stud 1: ${what}. Before it is worked again, the procedure has this done: ${order}`,
    ];
    expect(why(tell(bent, because('bent'), affirm))).toEqual(orderedOf('damage', 'An inspector decides.'));
    expect(why(tooMuch)).toEqual(orderedOf('over torque', 'Take the nut off.'));
    expect(why(tell(tooMuch, affirm))).toEqual(['Target 24.5: pull to 24.5.']);
  });
  test('is asked of the fastener that follows before going on to it confirms a correction', () => {
    const going = tell(ring({ onDeviation, confirm: 'by going on' }), reading('24'), next);
    const corrected = tell(going, damage, because('bent'), affirm, correction('25'));
    const after = tell(corrected, reading('24'));
    expect(refused(after)).toEqual({ code: 'confirm first', fastener: 1 });
    expect(readings(after)).toEqual(['1: 24 confirmed', '1: 25 captured']);
    expect(asks(tell(after, next))).toBe(true);
  });
  test('is asked before a correction stands in for a value that was rejected', () => {
    const bent = tell(ordered, reading('25'), negative, damage, because('bent'), affirm);
    expect(refused(tell(bent, correction('24')))?.code).toBe('point first');
    expect(readings(tell(bent, affirm, correction('24'), affirm))).toEqual(['1: 25 rejected', '1: 24 confirmed']);
  });
  test('does not keep from leaving it open, nor from taking back what was misheard', () => {
    expect(kinds(tell(tooMuch, over, because('slipped'), affirm, leaveOpen))).toEqual(['left open']);
    expect(asks(tell(tooMuch, correction('24'), affirm))).toBe(false);
    expect(asks(tell(tooMuch, disregard))).toBe(false);
  });
});
