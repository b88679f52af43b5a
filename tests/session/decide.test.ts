import { describe, expect, test } from 'vitest';
import { currentCall, currentStep, openWarning, pendingReading } from '../../src/session/state.ts';
import {
  affirm,
  answer,
  back,
  continue_,
  correction,
  disregard,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
  torquePass,
  turned,
} from './play.ts';

const hazard = (signal: string) => ({ signal, consequence: 'person', text: `A ${signal}.` });
const stepOf = (play: ReturnType<typeof start>) => currentStep(play.state)?.id;

describe('a step that is done', () => {
  const play = start(procedureOf([step('drain', 'do'), step('lift', 'do'), step('clean', 'do')]));

  test('leads to the next on "next"', () => {
    const after = tell(play, next);
    expect(happened(after)).toEqual([{ kind: 'step done', step: 'drain' }]);
    expect(stepOf(after)).toBe('lift');
  });
  test('can be gone back to', () => {
    const after = tell(play, next, next, back);
    expect(happened(after)).toEqual([{ kind: 'step taken back', step: 'lift' }]);
    expect(stepOf(after)).toBe('lift');
    expect([...after.state.doneSteps]).toEqual(['drain']);
  });
  test('there is nothing before the first', () => expect(refused(tell(play, back))).toEqual({ code: 'first step' }));
  test('the last one closes the session', () => {
    const after = tell(play, next, next, next);
    expect(kinds(after)).toEqual(['step done', 'closed']);
    expect(after.state.phase).toBe('closed');
  });
  test.each([next, affirm, back, reading('24'), { kind: 'say again' } as const, { kind: 'reopen' } as const])(
    'a closed session takes nothing more: $kind',
    (meaning) => expect(refused(tell(play, next, next, next, meaning))).toEqual({ code: 'session closed' }),
  );
  test.each([affirm, negative, answer('reuse')])('there is nothing to confirm with $kind', (meaning) =>
    expect(refused(tell(play, meaning))).toEqual({ code: 'nothing to confirm' }),
  );
  test.each([reading('24'), { kind: 'click', fastener: null } as const])('takes no $kind', (meaning) =>
    expect(refused(tell(play, meaning))).toEqual({ code: 'no reading here' }),
  );
  test.each([correction('24'), disregard])('there is no reading for a $kind', (meaning) =>
    expect(refused(tell(play, meaning))).toEqual({ code: 'nothing to correct' }),
  );
});

describe('the warnings of a step', () => {
  const hazards = ['notice', 'warning', 'caution', 'danger'].map(hazard);
  const play = start(procedureOf([step('lift', 'do', { hazards }), step('clean', 'do')]));

  test('are acknowledged one by one before the step; cautions and notices are not', () => {
    const first = tell(play, affirm);
    expect(happened(first)).toEqual([{ kind: 'warning acknowledged', step: 'lift', index: 1 }]);
    expect(openWarning(first.state)?.signal).toBe('danger');
    const second = tell(first, affirm);
    expect(happened(second)).toEqual([{ kind: 'warning acknowledged', step: 'lift', index: 3 }]);
    expect(openWarning(second.state)).toBeNull();
    expect(kinds(tell(second, next))).toEqual(['step done']);
  });
  test.each([next, negative, back, disregard, reading('24'), correction('24'), turned, answer('reuse')])(
    'come before anything else: $kind',
    (meaning) => expect(refused(tell(play, meaning))).toEqual({ code: 'warning first' }),
  );
  test('are asked for again when the step is gone back to', () => {
    const again = tell(play, affirm, affirm, next, back);
    expect(stepOf(again)).toBe('lift');
    expect(openWarning(again.state)?.signal).toBe('warning');
  });
});

describe('a check', () => {
  const outcomes = [
    { id: 'reuse', text: 'Reuse it.', then: 'go on' },
    { id: 'negative', text: 'Look again.', then: 'stay' },
  ];
  const play = start(procedureOf([step('inspect', 'check', { outcomes }), step('fit', 'do')]));

  test('goes on with an outcome that says so', () => {
    const after = tell(play, answer('reuse'));
    expect(happened(after)).toEqual([
      { kind: 'answered', step: 'inspect', outcome: 'reuse' },
      { kind: 'step done', step: 'inspect' },
    ]);
  });
  test('stays with one that says so, and can be answered again', () => {
    const after = tell(play, negative);
    expect(happened(after)).toEqual([{ kind: 'answered', step: 'inspect', outcome: 'negative' }]);
    expect(stepOf(after)).toBe('inspect');
    expect(stepOf(tell(after, answer('reuse')))).toBe('fit');
  });
  test('wants an answer, not "next"', () => expect(refused(tell(play, next))).toEqual({ code: 'answer first' }));
  test.each([answer('replace'), affirm, turned])('takes only its own outcomes, not $kind', (meaning) =>
    expect(refused(tell(play, meaning))).toEqual({ code: 'no such answer' }),
  );
});

describe('at any time', () => {
  // Opened again, so that the day is known: nothing but that changes with it.
  const play = tell(start(procedureOf([tighten('ring'), step('clean', 'do')])), { kind: 'reopen' });

  test('"say again" changes nothing', () => {
    const after = tell(play, { kind: 'say again' });
    expect(kinds(after)).toEqual(['repeat asked']);
    expect(after.state).toEqual(play.state);
  });
  test('a page that is opened again says so and changes nothing', () => {
    const after = tell(play, { kind: 'reopen' });
    expect(kinds(after)).toEqual(['reopened']);
    expect(after.state).toEqual(play.state);
  });
  test('"stand by" stops everything until "continue"', () => {
    const waiting = tell(play, { kind: 'stand by' });
    for (const meaning of [next, affirm, reading('24'), { kind: 'stand by' } as const])
      expect(refused(tell(waiting, meaning))).toEqual({ code: 'standing by' });
    expect(kinds(tell(waiting, { kind: 'say again' }))).toEqual(['repeat asked']);
    expect({ ...tell(waiting, continue_).state, lastAt: play.state.lastAt }).toEqual(play.state);
  });
  test('"stand by" keeps a reading that waits for its confirmation', () => {
    const waiting = tell(play, reading('24'), { kind: 'stand by' }, continue_);
    expect(pendingReading(waiting.state)?.reading.value).toBe('24');
  });
  test('"continue" without "stand by" is refused', () =>
    expect(refused(tell(play, continue_))).toEqual({ code: 'not standing by' }));
  test('what is unclear is asked, never taken', () => {
    const several = [
      { fastener: 1, value: '24' },
      { fastener: null, value: '124' },
    ];
    const after = tell(play, { kind: 'unclear', doubt: 'several readings', readings: several });
    expect(refused(after)).toEqual({ code: 'unclear', doubt: 'several readings', readings: several });
    expect(after.state).toEqual(play.state);
  });
  test.each(['', '024', '-5', '1e3', '24,5', 'abc', '9'.repeat(400)])('"%s" is no value of any scale', (value) => {
    expect(refused(tell(play, reading(value)))?.code).toBe('unclear');
    expect(refused(tell(play, reading('24'), affirm, correction(value)))?.code).toBe('unclear');
  });
});

describe('fasteners without a value', () => {
  const called = (play: ReturnType<typeof start>) => {
    const call = currentCall(play.state);
    return call && `${call.pass.index}: ${call.fastener}`;
  };

  test('are loosened in stages, in reverse of the tightening order, on the word of the mechanic', () => {
    let play = start(
      procedureOf([step('release', 'loosen', { pattern: 'three', stages: ['a turn', 'off'] }), step('lift', 'do')]),
    );
    const calls: unknown[] = [];
    while (stepOf(play) === 'release') {
      calls.push(called(play));
      play = tell(play, next);
    }
    expect(calls).toEqual(['1: 2', '1: 3', '1: 1', '2: 2', '2: 3', '2: 1']);
    expect(kinds(play)).toEqual(['fastener done', 'step done']);
  });
  test('take no reading', () => {
    const snug = start(procedureOf([tighten('ring', { passes: [{ kind: 'snug' }, torquePass('24', '23', '25')] })]));
    expect(refused(tell(snug, reading('24')))).toEqual({ code: 'no reading here' });
    expect(called(tell(snug, next, next, next))).toBe('2: 1');
    expect(refused(tell(snug, next, next, next, next))).toEqual({ code: 'reading first', fastener: 1 });
  });
  test('of a step that was gone back to need not be said again', () => {
    const play = start(
      procedureOf([step('release', 'loosen', { pattern: 'three', stages: ['off'] }), step('lift', 'do')]),
    );
    const again = tell(play, next, next, next, back);
    expect(stepOf(again)).toBe('release');
    expect(kinds(tell(again, next))).toEqual(['step done']);
  });

  describe('a circular check', () => {
    const final = { target: { value: '24.5', unit: 'N·m' }, window: torquePass('24.5', '23', '26').window };
    const play = start(
      procedureOf([
        tighten('ring', { final, passes: [{ kind: 'snug' }, { kind: 'circular check' }] }),
        step('clean', 'do'),
      ]),
    );
    const checking = tell(play, next, next, next);

    test('goes round the ring once where no nut turns', () => {
      expect(called(checking)).toBe('2: 1');
      const after = tell(checking, next, next, next);
      expect(kinds(after)).toEqual(['fastener done', 'step done']);
    });
    test('goes round again, whole, until no nut turns', () => {
      const first = tell(checking, next, turned, next);
      expect(kinds(first)).toEqual(['fastener done']);
      expect(called(first)).toBe('2: 1');
      const second = tell(first, next, next, turned);
      expect(called(second)).toBe('2: 1');
      expect(stepOf(tell(second, next, next, next))).toBe('clean');
    });
    test('takes no reading: it is about turning', () =>
      expect(refused(tell(checking, reading('24')))).toEqual({ code: 'no reading here' }));
    test('a nut can turn only in a check for it', () =>
      expect(refused(tell(play, turned))).toEqual({ code: 'no such answer' }));
    test('a re-check is worked in the same way', () => {
      const passes = [{ kind: 'snug' }, { kind: 're-check', afterHours: '4' }];
      const later = tell(
        start(procedureOf([tighten('ring', { final, passes })])),
        next,
        next,
        next,
        turned,
        next,
        next,
      );
      expect(called(later)).toBe('2: 1');
      expect(tell(later, next, next, next).state.phase).toBe('closed');
    });
  });
});
