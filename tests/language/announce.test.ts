import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { readNumber } from '../../src/language/numbers/index.ts';
import { sayName } from '../../src/language/say.ts';
import type { EventBody } from '../../src/session/event.ts';
import { currentCall } from '../../src/session/state.ts';
import { workView } from '../../src/ui/view.ts';
import { job } from '../session/anything.ts';
import {
  affirm,
  answer,
  back,
  click,
  continue_,
  correction,
  disregard,
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
  turned,
  window,
  type Play,
} from '../session/play.ts';
import { spoken } from './spoken.ts';

const opened: EventBody = {
  kind: 'opened',
  format: 1,
  app: '',
  people: { mechanic: '', second: null },
  procedureHash: '',
  procedure: {},
};
const hazard = (signal: string, text: string) => ({ signal, consequence: 'person', text });
const outcomes = [
  { id: 'reuse', text: 'Reuse it.', then: 'go on' },
  { id: 'negative', text: 'Look again.', then: 'stay' },
];
const two = {
  passes: [torquePass('12', '11', '13', { name: 'first' }), torquePass('24.5', '23', '26', { name: 'final' })],
};
const clean = step('clean', 'do', { say: 'Clean it.' });
const ring = (more: object = two, procedure: object = {}): Play =>
  start(procedureOf([tighten('ring', { say: 'Tighten the ring.', ...more }), clean], procedure));

describe('a session', () => {
  test('begins with its procedure, its source, and what is wanted first', () =>
    expect(announce(ring().state, [opened])).toEqual([
      'Small procedure. Invented manual, revision A.',
      'Demonstration only. All values are invented.',
      'The component weighs one zero kilograms.',
      'Tighten the ring. Three fasteners in two passes: one two newton metres, then two four point five newton metres in the order of the manual. Pass one of two, first. Stud one, one two newton metres.',
    ]));
  test('says nothing of invention where nothing is invented', () =>
    expect(announce(ring(two, { invented: false }).state, [opened])).not.toContain(
      'Demonstration only. All values are invented.',
    ));
  test('that was opened again says where it stands', () =>
    expect(spoken(tell(ring(), reading('12'), affirm, { kind: 'reopen' }))).toEqual([
      'Going on where the record stops.',
      'In pass one, done: stud one. Two to do, and one more pass.',
      'Tighten the ring. Pass one of two, first. Stud three, one two newton metres.',
    ]));
  test('stands by, and goes on in full', () => {
    const waiting = tell(ring(), { kind: 'stand by' });
    expect(spoken(waiting)).toEqual(['Standing by.']);
    expect(spoken(tell(waiting, { kind: 'say again' }))).toEqual(['Standing by. Say continue.']);
    expect(spoken(tell(waiting, continue_))).toEqual([
      'Tighten the ring. Pass one of two, first. Stud one, one two newton metres.',
    ]);
  });
  test('ends', () =>
    expect(spoken(tell(start(procedureOf([clean])), next))).toEqual([
      'All steps are done. The record is closed.',
      'It is on this device only. Save it.',
    ]));
});

describe('a step', () => {
  const hazards = [
    hazard('caution', 'Keep the ports up.'),
    hazard('warning', 'Oil under pressure.'),
    hazard('notice', 'Use the long hose.'),
    hazard('danger', 'Hot oil.'),
  ];
  const play = start(procedureOf([step('drain', 'do', { hazards, say: 'Drain it.' }), clean]));

  test('has its warnings first, one by one, then its cautions and its text', () => {
    expect(prompt(play.state)).toEqual(['Warning. Oil under pressure. Say affirm.']);
    expect(spoken(tell(play, affirm))).toEqual(['Danger. Hot oil. Say affirm.']);
    expect(spoken(tell(play, affirm, affirm))).toEqual([
      'Caution. Keep the ports up. Notice. Use the long hose.',
      'Drain it.',
    ]);
  });
  test('is followed by the next one', () => {
    expect(spoken(tell(play, affirm, affirm, next))).toEqual(['Clean it.']);
    expect(spoken(tell(play, affirm, affirm, next, back))).toEqual(['Taken back: drain.', ...prompt(play.state)]);
  });
  test('is said as it is written where it has no short form', () =>
    expect(prompt(start(procedureOf([step('drain', 'do')])).state)).toEqual(['Text of drain.']));
  test('that is a check says what its answer leads to, and asks again where it stays', () => {
    const checking = start(procedureOf([step('inspect', 'check', { outcomes, say: 'Reuse?' }), clean]));
    expect(spoken(tell(checking, negative))).toEqual(['Look again.', 'Reuse?']);
    expect(spoken(tell(checking, negative, { kind: 'say again' }))).toEqual(['Look again.', 'Reuse?']);
    expect(spoken(tell(checking, answer('reuse')))).toEqual(['Reuse it.', 'Clean it.']);
  });
  test('of loosening names each fastener', () => {
    const release = step('release', 'loosen', { pattern: 'three', say: 'Free the nuts.', stages: ['a turn', 'off'] });
    const play = start(procedureOf([release, clean]));
    expect(prompt(play.state, [opened])).toEqual(['Free the nuts. Pass one of two, a turn. Stud two.']);
    expect(spoken(tell(play, next))).toEqual(['Stud three.']);
    expect(spoken(tell(play, next, next, next))).toEqual(['Pass two of two, off. Stud two.']);
    expect(spoken(tell(play, next, next, next, next, next, next))).toEqual(['Clean it.']);
  });
});

describe('a fastener', () => {
  test('is called with its value; the pass and the unit when they are new', () => {
    const pass = tell(ring(), ...[1, 2, 3].flatMap(() => [reading('12'), affirm]));
    expect(spoken(tell(ring(), reading('12'), affirm))).toEqual(['Logged.', 'Stud three, one two.']);
    expect(spoken(pass)).toEqual(['Logged.', 'Pass two of two, final. Stud one, two four point five newton metres.']);
    expect(spoken(tell(pass, reading('24'), affirm))).toEqual(['Logged.', 'Stud three, two four point five.']);
  });
  test('is called in full on "say again"', () =>
    expect(spoken(tell(ring(), reading('12'), affirm, { kind: 'say again' }))).toEqual([
      'Tighten the ring. Pass one of two, first. Stud three, one two newton metres.',
    ]));
  test('in the only pass of its step is called without the pass', () =>
    expect(prompt(ring({}).state, [{ kind: 'repeat asked' }])).toEqual([
      'Tighten the ring. Stud one, two four point five newton metres.',
    ]));
  test('in a circular check is asked whether it turns, and the round is made again', () => {
    const final = { target: newtonMetres('24.5'), window: window('23', '26') };
    const checking = ring({ final, passes: [{ kind: 'snug' }, { kind: 'circular check' }] });
    const round = tell(checking, next, next, next);
    expect(spoken(round)).toEqual([
      'Pass two of two, circular check. Stud one, two four point five newton metres. Say next if it does not turn, turned if it does.',
    ]);
    expect(spoken(tell(round, next))).toEqual(['Stud two.']);
    expect(spoken(tell(round, next, turned, next))).toEqual(['One stud turned. Go round once more.', ...spoken(round)]);
  });
  test('at a share of the final value is called without the dust of binary fractions', () => {
    // 18.1 × 0.6 is 10.860000000000001 in binary.
    const final = { target: newtonMetres('18.1'), window: window('17', '19') };
    const passes = [
      { kind: 'percent', percent: '60' },
      { kind: 'percent', percent: '100' },
    ];
    const fine = { ...indicating, range: window('5', '30'), resolution: newtonMetres('0.01') };
    expect(prompt(ring({ final, passes }, { tools: [fine] }).state)).toEqual([
      'Pass one of two, six zero per cent. Stud one, one zero point eight six newton metres.',
    ]);
  });
});

describe('a reading', () => {
  test('is read back digit by digit, and asked about without the wanted answer', () =>
    expect(spoken(tell(ring(), reading('12.50')))).toEqual(['Stud one, one two point five zero. Is that correct?']));
  test('outside its window is read back as said, and what to do comes with its confirmation', () => {
    const under = tell(ring(), reading('10'));
    expect(spoken(under)).toEqual(['Stud one, one zero. That is under the window. Is that correct?']);
    expect(spoken(tell(under, affirm))).toEqual([
      'Logged.',
      'Stud one is under. Tighten further and read again.',
      'Stud one, one two.',
    ]);
    const over = tell(ring(), reading('14'));
    expect(spoken(over)).toEqual(['Stud one, one four. That is over the window. Is that correct?']);
    expect(spoken(tell(over, affirm))[1]).toBe('Stud one is over. Stop. Decide by the manual.');
    const judging = { rule: 'guard band', uncertainty: newtonMetres('0.5') };
    const near = tell(ring({ judging }), reading('23.2'));
    expect(spoken(near)).toEqual([
      'Stud one, two three point two. That is too near the limit to prove. Is that correct?',
    ]);
    expect(spoken(tell(near, affirm))[1]).toBe('Stud one cannot be proved. Read it again or decide by the manual.');
  });
  test('by click says so', () =>
    expect(spoken(tell(ring(two, { tools: [setting] }), click()))).toEqual([
      'Stud one, click at one two. Is that correct?',
    ]));
  test('that was wrong is called again, shortly', () => {
    expect(spoken(tell(ring(), reading('12'), negative))).toEqual(['Not logged.', 'Stud one, one two.']);
    expect(spoken(tell(ring(), reading('12'), disregard))).toEqual([
      'Disregarded: stud one, pass one.',
      'Stud one, one two.',
    ]);
  });
  describe('whose correction comes to nothing', () => {
    const counts = tell(ring(), reading('12'), affirm);
    const stands = 'Stud one stands at one two, as before.';
    const undone = ({ state, events }: Play) => workView(state, events.at(-1)?.body).undone;

    test('is said and shown to stand, where it counted', () => {
      const rejected = tell(counts, correction('13'), negative);
      expect(spoken(rejected)).toEqual(['Not logged.', stands, 'Stud three, one two.']);
      expect(undone(rejected)).toBe('Stud 1 stands at 12 N·m, as before.');
      expect(undone(tell(rejected, { kind: 'say again' }))).toBeNull();
      const dropped = tell(counts, correction('13'), disregard);
      expect(spoken(dropped)).toEqual(['Disregarded: stud one, pass one.', stands, 'Stud three, one two.']);
    });
    test('is said to be outside its window, where it is', () =>
      expect(spoken(tell(ring(), reading('10'), affirm, correction('12'), negative)).slice(1, 3)).toEqual([
        'Stud one stands at one zero, as before.',
        'Stud one is under. Tighten further and read again.',
      ]));
    test('is asked for anew, where it never counted', () => {
      for (const word of [negative, disregard]) {
        const play = tell(ring(), reading('12'), correction('13'), word);
        expect(spoken(play)[1]).toBe('Stud one, one two.');
        expect(undone(play)).toBeNull();
        expect(currentCall(play.state)?.fastener).toBe(1);
      }
    });
    test('stands however often it is corrected in vain, and no longer once a correction counts', () =>
      fc.assert(
        fc.property(fc.array(fc.constantFrom('11', '11.5', '12.5', '13'), { minLength: 1 }), (values) => {
          const corrected = tell(counts, ...values.map((value) => correction(value)));
          expect(spoken(tell(corrected, negative))[1]).toBe(stands);
          const counted = tell(corrected, affirm);
          expect(spoken(tell(counted, disregard)).join(' ')).not.toContain('as before');
        }),
      ));
  });
  test('that is corrected is read back anew', () =>
    expect(spoken(tell(ring(), reading('12'), correction('12.5')))).toEqual([
      'Stud one, one two point five. Is that correct?',
    ]));
  test('that waits is read back on "say again"', () =>
    expect(spoken(tell(ring(), reading('12'), { kind: 'say again' }))).toEqual([
      'Stud one, one two. Is that correct?',
    ]));
  test('that goes on names the next fastener instead of asking, and is read back once', () => {
    const play = ring({ confirm: 'by going on' });
    expect(spoken(tell(play, reading('24')))).toEqual(['Stud one, two four. Next, stud three.']);
    expect(spoken(tell(play, reading('24'), reading('25')))).toEqual([
      'Logged.',
      'Stud three, two five. Next, stud two.',
    ]);
    expect(spoken(tell(play, reading('24'), reading('25'), reading('24')))).toEqual([
      'Logged.',
      'Stud two, two four. Is that correct?',
    ]);
    expect(spoken(tell(play, reading('30')))).toEqual([
      'Stud one, three zero. That is over the window. Is that correct?',
    ]);
  });
  test('that goes on to a new pass says its value', () =>
    expect(
      spoken(tell(ring({ ...two, confirm: 'by going on' }), reading('12'), reading('12'), reading('12'))).at(-1),
    ).toBe('Stud two, one two. Next: Pass two of two, final. Stud one, two four point five newton metres.'));

  test('whatever it is, its read-back read as a number is the same value', () => {
    const decimal = fc
      .tuple(fc.nat(999_999), fc.option(fc.stringMatching(/^\d{1,4}$/), { nil: null }))
      .map(([whole, places]) => (places === null ? `${whole}` : `${whole}.${places}`));
    fc.assert(
      fc.property(decimal, fc.constantFrom('each', 'by going on'), (value, confirm) => {
        const [text = ''] = spoken(tell(ring({ confirm }), reading(value)));
        const words = /^Stud one, ([^.]*)\./.exec(text)?.[1] ?? '';
        expect(readNumber(words.split(' ')).map(({ digits }) => digits)).toEqual([value]);
      }),
    );
  });
});

test('names are spoken in words, marks are left alone', () => {
  expect(sayName('30 %')).toBe('three zero per cent');
  expect(sayName('24.5 N·m')).toBe('two four point five newton metres');
  expect(sayName('90°')).toBe('nine zero degrees');
  expect(sayName('round 1 of 8')).toBe('round one of eight');
  expect(sayName('re-check after 4 h')).toBe('re-check after four hours');
  expect(sayName('M10 studs')).toBe('M10 studs');
  expect(sayName('a turn each')).toBe('a turn each');
});

test('whatever happens, there are words for it: sentences that begin with a capital and end', () => {
  fc.assert(
    fc.property(job, (play) => {
      for (const text of spoken(play)) expect(text).toMatch(/^\p{Lu}.*[.?!]$/u);
      if (play.state.phase !== 'closed') expect(spoken(tell(play, { kind: 'say again' }))).not.toEqual([]);
    }),
  );
});
