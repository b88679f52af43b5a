import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { currentCall, currentStep, pendingReading, standingReading } from '../../src/session/state.ts';
import {
  affirm,
  answer,
  back,
  click,
  correction,
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
  threeStuds,
  tighten,
  torquePass,
  turned,
  window,
  type Play,
} from './play.ts';

const two = { passes: [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')] };
const ring = (more: object = {}, procedure: object = {}): Play =>
  start(procedureOf([tighten('ring', more), step('clean', 'do')], procedure));
const called = ({ state }: Play): string | null => {
  const call = currentCall(state);
  return call && `${call.pass.index}: ${call.fastener}`;
};
const isAt = ({ state }: Play): string | undefined => currentStep(state)?.id;

describe('a reading', () => {
  const play = ring(two);

  test('is captured for the fastener that is called, in the unit of the tool, with its verdict', () => {
    expect(happened(tell(play, reading('12.50')))).toEqual([
      {
        kind: 'reading captured',
        step: 'ring',
        pass: 1,
        fastener: 1,
        evidence: 'read',
        reading: newtonMetres('12.50'),
        verdict: 'in',
        basis: {
          of: 'torque',
          tool: 'wrench',
          target: newtonMetres('12'),
          runningTorque: null,
          adapter: null,
          setting: newtonMetres('12'),
          window: { min: newtonMetres('11'), max: newtonMetres('13') },
          accepted: { min: newtonMetres('11'), max: newtonMetres('13') },
          judging: { rule: 'simple' },
        },
        corrects: null,
      },
    ]);
  });
  test('has in its record the whole rule it was judged by, and what that accepts of the window', () => {
    const judgedBy = (judging: object) =>
      happened(tell(ring({ passes: [torquePass('12', '11', '13')], judging }), reading('12')));
    expect(judgedBy({ rule: 'guard band', uncertainty: newtonMetres('0.25') })).toMatchObject([
      {
        basis: {
          accepted: { min: newtonMetres('11.25'), max: newtonMetres('12.75') },
          judging: { rule: 'guard band', uncertainty: newtonMetres('0.25'), factor: '1' },
        },
      },
    ]);
    expect(judgedBy({ rule: 'relative tool error', errorPercent: '20' })).toMatchObject([
      { basis: { accepted: null, judging: { rule: 'relative tool error', errorPercent: '20' } } }, // 13.75 to 10.83
    ]);
  });
  test('may name its fastener', () => expect(readings(tell(play, reading('12', 1)))).toEqual(['1: 12 captured']));
  test('of another fastener is out of order', () =>
    expect(refused(tell(play, reading('12', 2)))).toEqual({ code: 'out of order', offered: 2, expected: 1 }));
  test('of a fastener that does not exist is refused', () =>
    expect(refused(tell(play, reading('12', 11)))).toEqual({ code: 'no such fastener', offered: 11, expected: 1 }));
  test('is taken of every fastener in the order of the calls, pass after pass', () => {
    const calls: unknown[] = [];
    let at = play;
    for (const value of ['12', '12', '12', '24', '24', '24']) {
      calls.push(called(at));
      at = tell(at, reading(value), affirm);
    }
    expect(calls).toEqual(['1: 1', '1: 3', '1: 2', '2: 1', '2: 3', '2: 2']);
    expect(kinds(at)).toEqual(['reading confirmed', 'step done']);
  });
  test('is judged in its own unit where the manual has another', () => {
    const inches = { value: '50', unit: 'lbf·in' };
    const tool = { ...indicating, range: { min: inches, max: { value: '500', unit: 'lbf·in' } } };
    const taken = happened(tell(ring({}, { tools: [tool] }), reading('217')));
    // 217 lbf·in = 24.52 N·m (1 lbf·in = 0.112985 N·m, NIST SP 811)
    expect(taken).toMatchObject([{ reading: { value: '217', unit: 'lbf·in' }, verdict: 'in' }]);
  });

  test('is captured and confirmed exactly as said, whatever the target: nothing leans', () => {
    const decimal = fc
      .tuple(fc.integer({ min: 0, max: 999_999 }), fc.option(fc.stringMatching(/^\d{1,4}$/), { nil: null }))
      .map(([whole, places]) => (places === null ? `${whole}` : `${whole}.${places}`));
    const tenth = (value: number) => `${value / 10}`;
    const target = fc.integer({ min: 130, max: 590 });
    fc.assert(
      fc.property(decimal, target, fc.boolean(), (value, around, guarded) => {
        const judging = guarded ? { rule: 'guard band', uncertainty: newtonMetres('0.1') } : { rule: 'simple' };
        const passes = [torquePass(tenth(around), tenth(around - 5), tenth(around + 5))];
        const after = tell(ring({ passes, judging }), reading(value), affirm);
        expect(after.state.readings.map((taken) => [taken.reading, taken.status])).toEqual([
          [newtonMetres(value), 'confirmed'],
        ]);
      }),
    );
  });
});

describe('a reading that was read back', () => {
  const pending = tell(ring(two), reading('12'));

  test('is confirmed by "affirm"', () => {
    const after = tell(pending, affirm);
    expect(happened(after)).toEqual([{ kind: 'reading confirmed', of: 0 }]);
    expect(called(after)).toBe('1: 3');
  });
  test('is dropped by "negative": its fastener is called again', () => {
    const after = tell(pending, negative);
    expect(happened(after)).toEqual([{ kind: 'reading rejected', of: 0 }]);
    expect(readings(after)).toEqual(['1: 12 rejected']);
    expect(called(after)).toBe('1: 1');
  });
  test('is dropped by "disregard"', () => {
    const after = tell(pending, disregard);
    expect(happened(after)).toEqual([{ kind: 'reading disregarded', of: 0 }]);
    expect(called(after)).toBe('1: 1');
  });
  test.each([correction('12.5'), correction('12.5', 1), reading('12.5'), reading('12.5', 1)])(
    'gives way to another value of the same fastener: $kind',
    (meaning) => {
      const after = tell(pending, meaning);
      expect(readings(after)).toEqual(['1: 12 replaced', '1: 12.5 captured']);
      expect(happened(after)).toMatchObject([{ kind: 'reading captured', corrects: 0 }]);
    },
  );
  test.each([next, back, turned, click(), answer('reuse'), reading('12', 3), correction('12', 3), reading('12', 99)])(
    'comes before anything else: $kind',
    (meaning) => expect(refused(tell(pending, meaning))).toEqual({ code: 'confirm first', fastener: 1 }),
  );
});

describe('a reading outside its window', () => {
  test.each([
    ['22.9', 'under'],
    ['26.1', 'over'],
    ['2.45', 'under'],
    ['245', 'over'],
  ])('%s is captured as said and found %s', (value, verdict) => {
    const after = tell(ring(), reading(value));
    expect(happened(after)).toMatchObject([{ reading: newtonMetres(value), verdict }]);
  });
  test('stands when it is confirmed, and its fastener stays open until one inside is confirmed', () => {
    const out = tell(ring(), reading('30'), affirm);
    expect(readings(out)).toEqual(['1: 30 confirmed']);
    expect(called(out)).toBe('1: 1');
    const done = tell(out, reading('24'), affirm);
    expect(readings(done)).toEqual(['1: 30 confirmed', '1: 24 confirmed']);
    expect(called(done)).toBe('1: 3');
    expect(standingReading(done.state, 'ring', 1, 1)?.reading.value).toBe('24');
  });
  test('too near the limit for the tool is not provable, and leaves its fastener open', () => {
    const judging = { rule: 'guard band', uncertainty: newtonMetres('1') };
    const after = tell(ring({ judging }), reading('23.5'));
    expect(happened(after)).toMatchObject([{ verdict: 'not provable' }]);
    expect(called(tell(after, affirm))).toBe('1: 1');
    expect(called(tell(after, affirm, reading('24'), affirm))).toBe('1: 3');
  });
  test('as the last one does not end the step', () => {
    const after = tell(ring(), reading('24'), affirm, reading('24'), affirm, reading('30'), affirm);
    expect(kinds(after)).toEqual(['reading confirmed']);
    expect(isAt(after)).toBe('ring');
  });
});

describe('where going on confirms', () => {
  const play = ring({ confirm: 'by going on' });

  test('the next reading confirms the one before it', () => {
    const after = tell(play, reading('24'), reading('24.5'));
    expect(kinds(after)).toEqual(['reading confirmed', 'reading captured']);
    expect(readings(after)).toEqual(['1: 24 confirmed', '3: 24.5 captured']);
  });
  test('so does "next", and "affirm" as everywhere', () => {
    expect(kinds(tell(play, reading('24'), next))).toEqual(['reading confirmed']);
    expect(kinds(tell(play, reading('24'), affirm))).toEqual(['reading confirmed']);
  });
  test('the same fastener named again is that reading said anew', () =>
    expect(readings(tell(play, reading('24'), reading('25', 1)))).toEqual(['1: 24 replaced', '1: 25 captured']));
  test('a correction after a rejection is a new value for the fastener that is called again, never for another', () => {
    const rejected = tell(ring(), reading('24'), affirm, reading('25'), negative);
    const after = tell(rejected, correction('24.5'));
    expect(happened(after)).toMatchObject([
      { kind: 'reading captured', fastener: 3, reading: { value: '24.5' }, corrects: null },
    ]);
    expect(refused(tell(rejected, correction('24.5', 1)))).toMatchObject({
      code: 'out of order',
      offered: 1,
      expected: 3,
    });
  });
  test('a correction is about the reading that was read back', () =>
    expect(readings(tell(play, reading('24'), correction('25')))).toEqual(['1: 24 replaced', '1: 25 captured']));
  test('a fastener out of order confirms nothing', () => {
    const after = tell(play, reading('24'), reading('24', 2));
    expect(refused(after)).toEqual({ code: 'out of order', offered: 2, expected: 3 });
    expect(readings(after)).toEqual(['1: 24 captured']);
  });
  test.each([reading('24', 3), next, click()])(
    'a value outside its window wants "affirm" all the same: $kind',
    (meaning) => expect(refused(tell(play, reading('30'), meaning))).toEqual({ code: 'confirm first', fastener: 1 }),
  );
  test('a value without a fastener after one outside its window is that reading said anew', () =>
    expect(readings(tell(play, reading('30'), reading('25')))).toEqual(['1: 30 replaced', '1: 25 captured']));
  test('after the last fastener there is nothing to go on to but the end', () => {
    const last = tell(play, reading('24'), reading('24'), reading('24'));
    expect(refused(tell(last, reading('24')))).toEqual({ code: 'confirm first', fastener: 2 });
    expect(kinds(tell(last, next))).toEqual(['reading confirmed', 'step done']);
  });
  test('a reading does not go on to a fastener that takes none', () => {
    const angle = { kind: 'angle', angle: { value: '90', unit: '°' }, tolerance: { value: '5', unit: '°' } };
    const passes = [torquePass('24.5', '23', '26'), angle];
    const last = tell(ring({ confirm: 'by going on', passes }), reading('24'), reading('24'), reading('24'));
    expect(refused(tell(last, reading('24')))).toEqual({ code: 'no reading here' });
    expect(readings(last).at(-1)).toBe('2: 24 captured');
    expect(called(tell(last, next))).toBe('2: 1');
  });
  test('the correction of an earlier step is confirmed by a word, not by a reading of this one', () => {
    const steps = [tighten('first', { confirm: 'by going on' }), tighten('second', { confirm: 'by going on' })];
    const second = tell(start(procedureOf(steps)), reading('24'), reading('24'), reading('24'), next);
    expect(isAt(second)).toBe('second');
    const corrected = tell(second, correction('25'));
    expect(refused(tell(corrected, next))).toEqual({ code: 'confirm first', fastener: 2 });
    expect(refused(tell(corrected, reading('24', 1)))).toEqual({ code: 'confirm first', fastener: 2 });
    expect(readings(tell(corrected, affirm)).at(-1)).toBe('2: 25 confirmed');
  });
});

describe('a click', () => {
  const tools = { tools: [setting] };

  test('of a setting tool stands for the value it was set to', () =>
    expect(happened(tell(ring({}, tools), click()))).toMatchObject([
      { kind: 'reading captured', fastener: 1, evidence: 'click', reading: newtonMetres('24.5'), verdict: 'in' },
    ]));
  test('may name its fastener, and is refused out of order', () => {
    expect(readings(tell(ring({}, tools), click(1)))).toEqual(['1: 24.5 captured']);
    expect(refused(tell(ring({}, tools), click(3)))?.code).toBe('out of order');
    expect(refused(tell(ring({}, tools), click(9)))?.code).toBe('no such fastener');
  });
  test('of an indicating tool is no reading', () =>
    expect(refused(tell(ring(), click()))).toEqual({ code: 'not a setting tool' }));
  test('confirms the click before it where going on confirms', () =>
    expect(readings(tell(ring({ confirm: 'by going on' }, tools), click(), click()))).toEqual([
      '1: 24.5 confirmed',
      '3: 24.5 captured',
    ]));
  test('at a share of the final value carries no dust of binary fractions', () => {
    // 18.1 × 0.6 is 10.860000000000001 in binary.
    const final = { target: newtonMetres('18.1'), window: torquePass('18.1', '17', '19').window };
    const passes = [
      { kind: 'percent', percent: '60' },
      { kind: 'percent', percent: '100' },
    ];
    const fine = { ...setting, range: window('5', '30'), resolution: newtonMetres('0.01') };
    expect(readings(tell(ring({ final, passes }, { tools: [fine] }), click()))).toEqual(['1: 10.86 captured']);
  });
  test('that is corrected becomes a reading in the unit of the tool', () => {
    const tool = { ...setting, range: { min: { value: '3', unit: 'lbf·ft' }, max: { value: '40', unit: 'lbf·ft' } } };
    const after = tell(ring({}, { tools: [tool] }), click(), correction('18'));
    expect(happened(after)).toMatchObject([{ reading: { value: '18', unit: 'lbf·ft' }, evidence: 'read' }]);
  });
});

describe('a confirmed reading', () => {
  const one = tell(ring(two), reading('12'), affirm);

  test('is corrected, and stands until its correction is confirmed', () => {
    const corrected = tell(one, correction('12.5'));
    expect(readings(corrected)).toEqual(['1: 12 confirmed', '1: 12.5 captured']);
    expect(readings(tell(corrected, affirm))).toEqual(['1: 12 replaced', '1: 12.5 confirmed']);
    expect(readings(tell(corrected, negative))).toEqual(['1: 12 confirmed', '1: 12.5 rejected']);
  });
  test('is what a correction is about, also after corrections of it were rejected one after another', () => {
    const after = tell(one, correction('25'), correction('26'), negative, correction('25.5'));
    expect(happened(after)).toMatchObject([{ kind: 'reading captured', fastener: 1, corrects: 0 }]);
  });
  test('gives way to the correction of its correction', () => {
    const after = tell(one, correction('12.5'), correction('12.7'), affirm);
    expect(readings(after)).toEqual(['1: 12 replaced', '1: 12.5 replaced', '1: 12.7 confirmed']);
    expect(called(tell(after, disregard))).toBe('1: 1');
  });
  test('is the one of its fastener, if the correction names one', () => {
    expect(refused(tell(one, correction('12.5', 3)))).toEqual({ code: 'not the last reading', offered: 3, last: 1 });
    expect(kinds(tell(one, correction('12.5', 1)))).toEqual(['reading captured']);
  });
  test('is dropped by "disregard" while its step is under way; so is the one before it', () => {
    const both = tell(one, reading('12.5'), affirm, disregard);
    expect(readings(both)).toEqual(['1: 12 confirmed', '3: 12.5 disregarded']);
    expect(called(both)).toBe('1: 3');
    expect(called(tell(both, disregard))).toBe('1: 1');
    expect(refused(tell(both, disregard, disregard))).toEqual({ code: 'nothing to correct' });
  });
  test('that is corrected to a value outside opens its fastener again', () => {
    const after = tell(one, correction('20'), affirm);
    expect(called(after)).toBe('1: 1');
  });
  test('keeps the step from being gone back from', () =>
    expect(refused(tell(one, back))).toEqual({ code: 'readings stand' }));

  describe('of a step that is done', () => {
    const done = tell(
      start(procedureOf([tighten('ring'), step('clean', 'do'), step('fill', 'do'), step('count', 'do')])),
      ...[reading('24'), affirm, reading('24'), affirm, reading('24'), affirm],
      next,
    );
    test('is corrected within its window: the step stays done', () => {
      const after = tell(done, correction('25'), affirm);
      expect(kinds(after)).toEqual(['reading confirmed']);
      expect(isAt(after)).toBe('fill');
    });
    test('is corrected to a value outside: the step is taken back, with all that was done after it', () => {
      const after = tell(done, correction('30'), affirm);
      expect(kinds(after)).toEqual(['reading confirmed', 'step taken back']);
      expect([...after.state.doneSteps]).toEqual([]);
      expect(called(after)).toBe('1: 2');
      const mended = tell(after, reading('24'), affirm);
      expect(kinds(mended)).toEqual(['reading confirmed', 'step done']);
      expect(isAt(mended)).toBe('clean');
    });
    test('a step that was taken back is done again by a correction inside the window', () => {
      const mended = tell(done, correction('30'), affirm, correction('24'), affirm);
      expect(kinds(mended)).toEqual(['reading confirmed', 'step done']);
      expect(readings(mended).slice(2)).toEqual(['2: 24 replaced', '2: 30 replaced', '2: 24 confirmed']);
    });
    test('is not disregarded any more, nor gone back to', () => {
      expect(refused(tell(done, disregard))).toEqual({ code: 'nothing to correct' });
      expect(refused(tell(done, back, back))).toEqual({ code: 'readings stand' });
    });
    test('comes after the warnings of the step that follows it', () => {
      const hazards = [{ signal: 'warning', consequence: 'person', text: 'Oil under pressure.' }];
      const warned = tell(
        start(procedureOf([tighten('ring'), step('fill', 'do', { hazards })])),
        ...[reading('24'), affirm, reading('24'), affirm, reading('24'), affirm],
      );
      expect(refused(tell(warned, correction('25')))).toEqual({ code: 'warning first' });
      expect(kinds(tell(warned, affirm, correction('25')))).toEqual(['reading captured']);
    });
  });
});

test('fasteners outside a pass are out of order in it, not unknown', () => {
  const passes = [torquePass('12', '11', '13', { only: [1, 2] }), torquePass('24.5', '23', '26')];
  const play = ring({ passes }, { patterns: [threeStuds] });
  expect(refused(tell(play, reading('12', 3)))).toEqual({ code: 'out of order', offered: 3, expected: 1 });
  expect(pendingReading(tell(play, reading('12', 1)).state)?.fastener).toBe(1);
});
