/** Seals: nobody tightens a joint whose seal is not known to be good. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { fold } from '../../src/session/fold.ts';
import type { EventBody } from '../../src/session/event.ts';
import { pointKey } from '../../src/session/point.ts';
import { pointFact } from '../../src/session/point-words.ts';
import { unaccounted } from '../../src/session/account.ts';
import { workView } from '../../src/ui/view.ts';
import {
  affirm,
  answer,
  eventOf,
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
  threeStuds,
  tighten,
  turned,
  type Play,
} from './play.ts';
import { asked, told, stepOf, seal, about } from './points-play.ts';

describe('a seal', () => {
  const look = start(procedureOf([step('look', 'do', about('inspected')), step('end', 'do')], seal()));

  test('is looked at by one criterion after another, and may then be used again', () => {
    const sound = tell(look, affirm, affirm);
    expect([look, tell(look, affirm), sound].map(asked)).toEqual(['criterion:ring:1', 'criterion:ring:2', 'seal:ring']);
    expect(prompt(look.state)).toEqual(['Round seal: no cut. Is that true? Affirm or negative?']);
    expect(happened(tell(sound, answer('reuse')))).toEqual([
      { kind: 'point settled', step: 'look', point: 'seal:ring', answer: 'reuse' },
    ]);
  });

  test('that failed a criterion is not used again: it is replaced, with the reason and the part number', () => {
    const failed = tell(look, affirm, negative);
    expect(announce(failed.state, happened(failed))).toEqual([
      'Failed: the round seal, no flat spot.',
      'Round seal. It failed: no flat spot. New part: X-one two. Say replace.',
    ]);
    const reused = tell(failed, answer('reuse'));
    expect(told(reused)).toBe('The round seal cannot be used again: it failed: no flat spot. Say replace.');
    expect(happened(tell(reused, answer('replace')))).toEqual([
      {
        kind: 'point settled',
        step: 'look',
        point: 'seal:ring',
        answer: 'replace',
        part: 'new',
        replaced: { because: 'failed', failed: 'no flat spot', partNumber: 'X-12' },
      },
    ]);
  });

  test('that failed one is not asked about the others', () => expect(asked(tell(look, negative))).toBe('seal:ring'));

  test('that the manual never has used again cannot be, however sound', () => {
    const single = start(
      procedureOf([step('look', 'do', about('discarded')), step('end', 'do')], seal({ reuse: 'never', criteria: [] })),
    );
    const reused = tell(single, answer('reuse'));
    expect(told(reused)).toBe('The round seal cannot be used again: the manual forbids it. Say replace.');
    expect(happened(tell(single, answer('replace')))).toMatchObject([{ replaced: { because: 'never used again' } }]);
  });

  test('is decided about by a check that asks so itself, after its criteria', () => {
    const outcomes = [
      { id: 'reuse', text: 'Reuse it.', then: 'go on' },
      { id: 'replace', text: 'Replace it.', then: 'go on' },
    ];
    const check = start(
      procedureOf([step('look', 'check', { ...about('inspected'), outcomes }), step('end', 'do')], seal()),
    );
    expect(refused(tell(check, answer('reuse')))).toEqual({ code: 'point first', point: 'criterion:ring:1' });
    expect(kinds(tell(check, affirm, affirm, answer('reuse')))).toEqual(['point settled', 'answered', 'step done']);
    expect(refused(tell(check, negative, answer('reuse')))).toEqual({
      code: 'seal not reusable',
      seal: 'ring',
      failed: 'no cut',
    });
  });

  test('that failed a criterion is not passed by another answer of the check', () => {
    const outcomes = [
      { id: 'good', text: 'Go on.', then: 'go on' },
      { id: 'replace', text: 'Replace it.', then: 'go on' },
    ];
    const check = start(
      procedureOf([step('look', 'check', { ...about('inspected'), outcomes }), step('end', 'do')], seal()),
    );
    const failed = tell(check, negative);
    expect(refused(tell(failed, answer('good')))).toEqual({ code: 'point first', point: 'seal:ring' });
    expect(refused(tell(failed, answer('reuse')))?.code).toBe('seal not reusable');
    expect(stepOf(tell(failed, answer('replace'), affirm, affirm, answer('good')))).toBe('end');
  });

  test('that a step discards is not used again, even where one that is sound may be', () => {
    const discard = start(procedureOf([step('out', 'do', about('discarded')), step('end', 'do')], seal()));
    expect(refused(tell(discard, answer('reuse')))?.code).toBe('seal not reusable');
    expect(prompt(discard.state).join(' ')).toContain('Say replace.');
    expect(kinds(tell(discard, answer('replace'), next))).toEqual(['step done']);
  });

  describe('that took the place of another', () => {
    const taken = tell(look, affirm, negative, answer('replace'));
    const met = {
      kind: 'point settled',
      step: 'look',
      point: 'criterion:ring:1',
      answer: 'affirm',
      part: 'new',
    } as const satisfies EventBody;
    test('is looked at by all criteria itself, before the step is done', () => {
      expect(asked(taken)).toBe('criterion:ring:1');
      expect(announce(taken.state, happened(taken))).toEqual([
        'New round seal: no cut. Is that true? Affirm or negative?',
      ]);
      expect(refused(tell(taken, next))).toEqual({ code: 'point first', point: 'criterion:ring:1' });
      expect(happened(tell(taken, affirm))).toEqual([met]);
      expect(pointFact(taken.state, met)).toBe('New round seal, “no cut”: met');
      const good = tell(taken, affirm, affirm);
      expect([asked(good), kinds(tell(good, next))]).toEqual([null, ['step done']]);
    });
    test('and failed as well is replaced in its turn, and the next one is looked at', () => {
      const failed = tell(taken, negative);
      expect(asked(failed)).toBe('seal:ring');
      expect(announce(failed.state, happened(failed))).toContain('Failed: the new round seal, no cut.');
      expect(refused(tell(failed, answer('reuse')))).toEqual({
        code: 'seal not reusable',
        seal: 'ring',
        failed: 'no cut',
      });
      const third = tell(failed, answer('replace'));
      expect(happened(third)).toMatchObject([{ part: 'new', replaced: { because: 'failed', failed: 'no cut' } }]);
      expect(asked(third)).toBe('criterion:ring:1');
      expect(kinds(tell(third, affirm, affirm, next))).toEqual(['step done']);
    });
    test('is coated as the old one was, where its step has that done, and the check ends only then', () => {
      const outcomes = ['reuse', 'replace'].map((id) => ({ id, text: `${id}.`, then: 'go on' }));
      const check = step('look', 'check', { ...about('inspected', 'lubricated'), outcomes });
      const begun = start(procedureOf([check, step('end', 'do')], seal()));
      const coated = pointKey({ kind: 'coated', seal: 'ring' });
      let play = begun;
      while (asked(play) !== null) play = tell(play, affirm);
      play = tell(play, answer('replace'));
      const askedOfNew: (string | null)[] = [];
      while (stepOf(play) === 'look') {
        askedOfNew.push(asked(play));
        play = tell(play, affirm);
      }
      expect([...askedOfNew].sort()).toEqual([coated, 'criterion:ring:1', 'criterion:ring:2'].sort());
    });
    test('was not looked at in a record from before that was asked: there nothing is open', () => {
      const [body] = happened(taken);
      if (body?.kind !== 'point settled') throw new Error('Nothing was taken.');
      const { part, ...before } = body;
      expect(part).toBe('new');
      const failed = tell(look, affirm, negative);
      const old: Play = { ...failed, state: fold(failed.state, eventOf(before, failed.events.length)) };
      expect(asked(old)).toBeNull();
      expect(kinds(tell(old, next))).toEqual(['step done']);
    });
    test('by the answer to a check is looked at before the check is done, and the check ends with it', () => {
      const outcomes = [
        { id: 'reuse', text: 'Reuse it.', then: 'go on' },
        { id: 'replace', text: 'Replace it.', then: 'go on' },
      ];
      const check = start(
        procedureOf([step('look', 'check', { ...about('inspected'), outcomes }), step('end', 'do')], seal()),
      );
      const replaced = tell(check, affirm, negative, answer('replace'));
      expect([kinds(replaced), asked(replaced)]).toEqual([['point settled', 'answered'], 'criterion:ring:1']);
      expect(kinds(tell(replaced, affirm, affirm))).toEqual(['point settled', 'step done']);
      const bad = tell(replaced, affirm, negative);
      expect([kinds(bad), stepOf(bad)]).toEqual([['point settled'], 'look']);
      expect(refused(tell(bad, answer('reuse')))?.code).toBe('seal not reusable');
      expect(stepOf(tell(bad, answer('replace'), affirm, affirm))).toBe('end');
    });
  });

  test('that took the place of a failed one did not fail', () => {
    const twice = start(
      procedureOf([step('one', 'do', about('inspected')), step('two', 'do', about('inspected'))], seal()),
    );
    const fresh = tell(twice, negative, answer('replace'), affirm, affirm, next, affirm, affirm);
    expect(kinds(tell(fresh, answer('reuse')))).toEqual(['point settled']);
    expect(
      refused(tell(twice, negative, answer('replace'), affirm, affirm, next, negative, answer('reuse')))?.code,
    ).toBe('seal not reusable');
  });

  test('is not coated from what is past its day', () => {
    const oil = { consumables: [{ id: 'oil', name: 'clean gear oil', expires: true }] };
    const coat = start(
      procedureOf([step('coat', 'do', about('lubricated')), step('end', 'do')], {
        ...seal({ coatedFrom: 'oil' }),
        ...oil,
      }),
    );
    const enteredFor = (expires: string): Play => ({
      ...coat,
      state: fold(
        { ...coat.state, day: '2026-03-01' },
        eventOf({ kind: 'prepared', fact: { of: 'consumable', consumable: 'oil', expires } }, 0),
      ),
    });
    expect(told(tell(enteredFor('2026-02-28'), affirm))).toMatch(
      /^The clean gear oil expired on .*\. Fetch a fresh one, and enter on the screen what its packing says\.$/,
    );
    expect(kinds(tell(enteredFor('2026-03-01'), affirm))).toEqual(['point settled']);
  });

  test('is not replaced from what is used up, and its wrapper is accounted for', () => {
    const fresh = { consumables: [{ id: 'new', name: 'new seal', quantity: 1, counted: 'wrapper' }] };
    const twice = start(
      procedureOf([step('one', 'do', about('discarded')), step('two', 'do', about('discarded')), step('end', 'do')], {
        ...seal({ reuse: 'never', replacedBy: 'new' }),
        ...fresh,
      }),
    );
    const once = tell(twice, answer('replace'), next);
    expect(told(tell(once, answer('replace')))).toBe(
      'The new seal is used up. Fetch another, and enter on the screen what its packing says.',
    );
    expect(unaccounted(once.state).map(pointKey)).toEqual(['consumable:new']);
    expect(unaccounted(twice.state)).toEqual([]);
  });
});

describe('a joint is not tightened', () => {
  const clamping = { patterns: [{ ...threeStuds, seal: 'ring' }], ...seal() };

  test('before its seal is seated', () => {
    const early = start(procedureOf([tighten('tighten'), step('seat', 'do', about('seated'))], clamping));
    const refusal = tell(early, reading('24.5'));
    expect(told(refusal)).toBe('Do not tighten: the round seal is not seated. Go back and seat it, or stop and ask.');
    expect(workView(early.state).call?.troubles[0]).toMatchObject({ stops: true });
    const late = start(procedureOf([step('seat', 'do', about('seated')), tighten('tighten')], clamping));
    expect(kinds(tell(late, affirm, next, reading('24.5')))).toEqual(['reading captured']);
  });

  test('before each seating that comes before it, where one refit has two', () => {
    const seat = (id: string) => step(id, 'do', about('seated'));
    const twice = start(procedureOf([seat('one'), tighten('a'), seat('two'), tighten('b')], clamping));
    const tightened = ['24.5', '24.5', '24.5'].flatMap((value) => [reading(value), affirm]);
    const second = tell(twice, affirm, next, ...tightened);
    expect(stepOf(second)).toBe('two');
    expect(kinds(tell(second, affirm, next, reading('24.5')))).toEqual(['reading captured']);
    // A record that came past the second seating without it: nothing is tightened.
    const without = { ...second, state: { ...second.state, at: second.state.at + 1 } };
    expect(refused(tell(without, reading('24.5')))?.code).toBe('seal not seated');
  });

  test('nor snugged or turned', () => {
    const passes = [{ kind: 'snug' }];
    const early = start(procedureOf([tighten('tighten', { passes }), step('seat', 'do', about('seated'))], clamping));
    expect(refused(tell(early, next))?.code).toBe('seal not seated');
    expect(refused(tell(early, turned))?.code).toBe('no such answer');
  });

  test('before all its fasteners are started by hand, where the procedure has them started', () => {
    const early = start(procedureOf([tighten('tighten'), step('start', 'do', { handStart: ['three'] })]));
    expect(told(tell(early, reading('24.5')))).toBe(
      'Do not run down: not all studs of Three studs are started by hand. Go back and start them, or stop and ask.',
    );
    expect(kinds(tell(start(procedureOf([tighten('tighten')])), reading('24.5')))).toEqual(['reading captured']);
  });

  test('but a step that does not apply to the unit is not waited for', () => {
    const seat = { ...about('seated'), handStart: ['three'], applies: { condition: 'sealed', is: true } };
    const conditions = [{ id: 'sealed', question: 'Is it sealed?' }];
    const unsealed = start(procedureOf([step('seat', 'do', seat), tighten('tighten')], { ...clamping, conditions }));
    expect(kinds(tell(unsealed, negative, reading('24.5')))).toEqual(['reading captured']);
  });

  test('but a joint that is checked before it is taken off waits for nothing of its refit', () => {
    const job = start(
      procedureOf([
        tighten('check'),
        step('off', 'loosen', { pattern: 'three' }),
        step('start', 'do', { handStart: ['three'] }),
        tighten('tighten'),
      ]),
    );
    expect(kinds(tell(job, reading('24.5')))).toEqual(['reading captured']);
  });
});
