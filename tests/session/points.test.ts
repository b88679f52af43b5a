/** Points of a step: each is answered before the step goes on, and the record stays open for what nobody has accounted for. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import type { EventBody } from '../../src/session/event.ts';
import { fold } from '../../src/session/fold.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { pointKey, pointOf, pointsOf } from '../../src/session/point.ts';
import { unaccounted } from '../../src/session/account.ts';
import { openings } from '../../src/session/openings.ts';
import { currentPoint } from '../../src/session/points.ts';
import { currentCall, currentStep } from '../../src/session/state.ts';
import { openingsLine, workView } from '../../src/ui/view.ts';
import { goOpenly, mostAnswers } from './anything.ts';
import {
  affirm,
  answer,
  back,
  demo,
  eventOf,
  fireBoat,
  happened,
  indicating,
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

const held: Meaning = { kind: 'held' };

const asked = ({ state }: Play): string | null => {
  const point = currentPoint(state);
  return point && pointKey(point);
};
/** What a mechanic is told who was just refused. */
const told = (play: Play): string => {
  const refusal = refused(play);
  if (!refusal) throw new Error('Nothing was refused.');
  return sayRefusal(play.state, refusal);
};
const stepOf = ({ state }: Play): string | undefined => currentStep(state)?.id;

const lines = {
  openings: [
    { id: 'inlet', name: 'oil inlet', closure: 'plug' },
    { id: 'outlet', name: 'oil outlet', closure: 'cap' },
  ],
};
const seal = (more: object = {}) => ({
  seals: [
    {
      id: 'ring',
      name: 'round seal',
      partNumber: 'X-12',
      fluid: 'clean gear oil',
      reuse: 'if it passes inspection',
      criteria: ['no cut', 'no flat spot'],
      ...more,
    },
  ],
});
const about = (...works: readonly string[]) => ({ seals: works.map((is) => ({ seal: 'ring', is })) });

describe('the keys of points', () => {
  test.each([demo(), fireBoat()])('stand for their points again', (procedure) => {
    const all = procedure.steps.flatMap((each) => pointsOf(procedure, each));
    expect(all.length).toBeGreaterThan(9);
    for (const point of all) expect(pointOf(pointKey(point))).toEqual(point);
  });
  test('that stand for nothing are none', () => expect(pointOf('lid:x')).toBeNull());
});

describe('openings', () => {
  const open = start(
    procedureOf(
      [
        step('open', 'do', { opens: ['inlet', 'outlet'] }),
        step('work', 'do'),
        step('close-inlet', 'close', { opening: 'inlet' }),
        step('close-outlet', 'close', { opening: 'outlet' }),
        step('end', 'do'),
      ],
      lines,
    ),
  );
  const capped = tell(open, affirm, affirm, next);

  test('are asked for their cap or plug one by one, at once', () => {
    expect(prompt(open.state, [{ kind: 'opened' } as EventBody])).toEqual([
      'Text of open. Oil inlet: is its plug in? Affirm or negative?',
    ]);
    const one = tell(open, affirm);
    expect(happened(one)).toEqual([{ kind: 'point settled', step: 'open', point: 'capped:inlet', answer: 'affirm' }]);
    expect(announce(one.state, happened(one))).toEqual(['Oil outlet: is its cap on? Affirm or negative?']);
    expect(stepOf(tell(one, affirm))).toBe('open');
    expect(stepOf(capped)).toBe('work');
  });

  test('are not passed by "next": what is wanted is said', () => {
    const refusal = tell(open, next);
    expect(refused(refusal)).toEqual({ code: 'point first', point: 'capped:inlet' });
    expect(told(refusal)).toBe('Not yet. Oil inlet: is its plug in? Affirm or negative?');
  });

  test('stay asked for while they stand open', () => {
    const no = tell(open, negative);
    expect(asked(no)).toBe('capped:inlet');
    expect(announce(no.state, happened(no))[0]).toBe('See to it first.');
    expect(asked(tell(no, affirm))).toBe('capped:outlet');
  });

  test('are counted on the screen at all times', () => {
    const counts = [open, tell(open, affirm), capped].map(({ state }) => openingsLine(state));
    expect(counts).toEqual(['0 openings capped, 2 open', '1 opening capped, 1 open', '2 openings capped, 0 open']);
    const closed = tell(capped, next, affirm, affirm);
    expect(openingsLine(closed.state)).toBe('All openings connected');
    expect(openingsLine(start(procedureOf([step('a', 'do')])).state)).toBeNull();
    expect(workView(capped.state).openings).toBe('2 openings capped, 0 open');
  });

  test('are taken back with their step, and asked for again', () => {
    const again = tell(open, affirm, back);
    expect(happened(again)).toEqual([{ kind: 'step taken back', step: 'open' }]);
    expect(asked(again)).toBe('capped:inlet');
    expect(openings(again.state).get('inlet')).toBe('open');
  });

  test('stay known where their steps are taken back, and then skipped by another answer', () => {
    const applies = { condition: 'lined', is: true };
    const job = start(
      procedureOf(
        [
          step('first', 'do'),
          step('open', 'open', { opening: 'inlet', applies }),
          step('close', 'close', { opening: 'inlet', applies }),
          step('end', 'do'),
        ],
        { ...lines, conditions: [{ id: 'lined', question: 'Is it lined?' }] },
      ),
    );
    const opened = tell(job, next, affirm, affirm);
    expect(openings(opened.state).get('inlet')).toBe('capped');
    const skipped = tell(opened, back, back, next, negative);
    expect(stepOf(skipped)).toBe('end');
    expect(refused(tell(skipped, next))?.code).toBe('point first');
    expect(asked(skipped)).toBe('connected:inlet');
    expect(tell(skipped, affirm, affirm, next).state.phase).toBe('closed');
  });

  test('a step that is one opening is done when it is answered', () =>
    expect(kinds(tell(capped, next, affirm))).toEqual(['point settled', 'step done']));

  test('their caps and plugs are accounted for before the record is closed, and each that is not is named', () => {
    const end = tell(capped, next, affirm, affirm);
    expect(asked(end)).toBe('closure:inlet');
    const refusal = tell(end, next);
    expect(told(refusal)).toBe('Not yet. Not accounted for: plug of the oil inlet; cap of the oil outlet. One by one.');
    const lost = tell(end, negative);
    expect(announce(lost.state, happened(lost))[0]).toBe(
      'Find it first: plug of the oil inlet. Nothing is closed before.',
    );
    expect(tell(end, affirm, affirm, next).state.phase).toBe('closed');
  });

  test('that no step connects again keep the record open all the same', () => {
    const left = start(procedureOf([step('open', 'open', { opening: 'inlet' }), step('end', 'do')], lines));
    const end = tell(left, affirm);
    expect(unaccounted(end.state).map(pointKey)).toEqual(['connected:inlet', 'closure:inlet']);
    expect(refused(tell(end, next))).toEqual({ code: 'point first', point: 'connected:inlet' });
    expect(tell(end, affirm, affirm, next).state.phase).toBe('closed');
  });

  test('keep it open too where the last step turns out not to apply', () => {
    const wet = { conditions: [{ id: 'wet', question: 'Is it wet?' }] };
    const job = start(
      procedureOf(
        [step('open', 'open', { opening: 'inlet' }), step('dry', 'do', { applies: { condition: 'wet', is: true } })],
        { ...lines, ...wet },
      ),
    );
    const no = tell(job, affirm, negative);
    expect(kinds(no)).toEqual(['condition answered']);
    expect(asked(no)).toBe('connected:inlet');
    expect(refused(tell(no, next))?.code).toBe('point first');
    const end = tell(no, affirm, affirm);
    expect(kinds(end)).toEqual(['point settled', 'step skipped', 'closed']);
  });
});

describe('a seal', () => {
  const look = start(procedureOf([step('look', 'do', about('inspected')), step('end', 'do')], seal()));

  test('is looked at by one criterion after another, and may then be used again', () => {
    const sound = tell(look, affirm, affirm);
    expect([look, tell(look, affirm), sound].map(asked)).toEqual(['criterion:ring:1', 'criterion:ring:2', 'seal:ring']);
    expect(prompt(look.state)).toEqual(['Round seal: no cut. Affirm if it is so, else negative.']);
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
    expect(told(reused)).toBe('The round seal cannot be used again: the manual never has it used again. Say replace.');
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
    expect(stepOf(tell(failed, answer('replace'), answer('good')))).toBe('end');
  });

  test('that a step discards is not used again, even where one that is sound may be', () => {
    const discard = start(procedureOf([step('out', 'do', about('discarded')), step('end', 'do')], seal()));
    expect(refused(tell(discard, answer('reuse')))?.code).toBe('seal not reusable');
    expect(prompt(discard.state).join(' ')).toContain('Say replace.');
    expect(kinds(tell(discard, answer('replace'), next))).toEqual(['step done']);
  });

  test('that took the place of a failed one did not fail', () => {
    const twice = start(
      procedureOf([step('one', 'do', about('inspected')), step('two', 'do', about('inspected'))], seal()),
    );
    const fresh = tell(twice, negative, answer('replace'), next, affirm, affirm);
    expect(kinds(tell(fresh, answer('reuse')))).toEqual(['point settled']);
    expect(refused(tell(twice, negative, answer('replace'), next, negative, answer('reuse')))?.code).toBe(
      'seal not reusable',
    );
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
      /^The clean gear oil was good until .*\. Fetch a fresh one, and enter what stands on it on the screen\.$/,
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
      'The new seal is used up. Fetch another, and enter what stands on it on the screen.',
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

describe('a release in groups', () => {
  const release = (more: object) =>
    procedureOf([
      step('off', 'loosen', { pattern: 'three', stages: ['crack', 'take off'], ...more }),
      step('on', 'do', { handStart: ['three'] }),
      tighten('tighten'),
    ]);
  const groups = [
    { name: 'lower', numbers: [2, 3] },
    { name: 'upper', numbers: [1] },
  ];
  const called = ({ state }: Play): string => {
    const call = currentCall(state);
    return call ? `${call.pass.index}: ${call.fastener}` : '';
  };

  test('goes group by group in each stage, within a group in reverse of tightening', () => {
    const order = [0, 1, 2, 3, 4, 5].map((count) =>
      called(tell(start(release({ groups })), ...Array<Meaning>(count).fill(next))),
    );
    expect(order).toEqual(['1: 2', '1: 3', '1: 1', '2: 2', '2: 3', '2: 1']);
  });

  test.each(['last fastener', 'last group'])('frees its %s only after "held"', (heldBefore) => {
    const before = tell(start(release({ groups, heldBefore })), next, next, next, next, next);
    expect(asked(before)).toBe('held:three');
    const refusal = tell(before, next);
    expect(told(refusal)).toBe('Not yet. Does somebody hold the weight? Say held.');
    expect(refused(tell(before, affirm))?.code).toBe('point first');
    const after = tell(before, held);
    expect(called(after)).toBe('2: 1');
    expect(announce(after.state, happened(after))).toEqual(['Stud one.']);
    expect(kinds(tell(after, next))).toEqual(['fastener done', 'step done']);
  });

  test('goes on in reverse, and the weight is held until the last ones off are started', () => {
    const off = tell(start(release({ groups, heldBefore: 'last group' })), next, next, next, next, next, held, next);
    const one = tell(off, affirm);
    expect([off, one].map(({ state }) => prompt(state).join(' '))).toEqual([
      'Keep holding. Upper, stud one: started by hand? Affirm or negative?',
      'Lower, studs three, two: started by hand? Affirm or negative?',
    ]);
    expect(stepOf(tell(one, affirm, next))).toBe('tighten');
  });
});

describe('the demonstrations', () => {
  test.each([demo(), fireBoat()])('close with nothing unaccounted for', (procedure) => {
    const { state } = goOpenly(start(procedure), mostAnswers(procedure));
    expect(state.phase).toBe('closed');
    expect(unaccounted(state)).toEqual([]);
    expect(new Set(openings(state).values())).toEqual(new Set(['connected']));
  });
});

test('counted tools are accounted for at the step that says so, and at the last one no more', () => {
  const tools = [{ ...indicating, counted: true }];
  const job = start(procedureOf([step('count', 'do', { reconciles: true }), step('run', 'do')], { tools }));
  expect(refused(tell(job, next))).toEqual({ code: 'unaccounted', points: ['tool:wrench'] });
  expect(told(tell(job, next))).toBe('Not yet. Not accounted for: Indicating wrench. One by one.');
  expect(tell(job, affirm, next, next).state.phase).toBe('closed');
});

describe('what is used again after it was accounted for is accounted for once more', () => {
  test('a tool', () => {
    const tools = [{ ...indicating, counted: true }];
    const job = start(
      procedureOf([step('count', 'do', { reconciles: true }), tighten('tighten'), step('run', 'do')], { tools }),
    );
    const tightened = tell(job, affirm, next, ...[1, 2, 3].flatMap(() => [reading('24'), affirm]));
    expect(refused(tell(tightened, next))).toEqual({ code: 'unaccounted', points: ['tool:wrench'] });
    expect(tell(tightened, affirm, next).state.phase).toBe('closed');
  });

  test('the plug of an opening', () => {
    const both = (n: number) => [
      step(`open-${n}`, 'open', { opening: 'inlet' }),
      step(`close-${n}`, 'close', { opening: 'inlet' }),
    ];
    const job = start(
      procedureOf([...both(1), step('count', 'do', { reconciles: true }), ...both(2), step('run', 'do')], lines),
    );
    const again = tell(job, affirm, affirm, affirm, next, affirm, affirm);
    expect(refused(tell(again, next))).toEqual({ code: 'unaccounted', points: ['closure:inlet'] });
    expect(tell(again, affirm, next).state.phase).toBe('closed');
  });

  test('the wrapper of a new seal', () => {
    const fresh = { consumables: [{ id: 'new', name: 'new seal', counted: 'wrapper' }] };
    const out = about('discarded');
    const job = start(
      procedureOf([step('one', 'do', { ...out, reconciles: true }), step('two', 'do', out), step('run', 'do')], {
        ...seal({ reuse: 'never', replacedBy: 'new' }),
        ...fresh,
      }),
    );
    const again = tell(job, answer('replace'), affirm, next, answer('replace'), next);
    expect(refused(tell(again, next))).toEqual({ code: 'unaccounted', points: ['consumable:new'] });
    expect(tell(again, affirm, next).state.phase).toBe('closed');
  });
});
