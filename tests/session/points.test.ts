/** Points of a step: each is answered before the step goes on, and the record stays open for what nobody has accounted for. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import type { EventBody } from '../../src/session/event.ts';
import { pointKey, pointOf, pointsOf } from '../../src/session/point.ts';
import { unaccounted } from '../../src/session/account.ts';
import { openings } from '../../src/session/openings.ts';
import { openingsLine, workView } from '../../src/ui/view.ts';
import { goOpenly, mostAnswers } from './anything.ts';
import {
  affirm,
  answer,
  back,
  demo,
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
  tighten,
} from './play.ts';
import { asked, told, stepOf, lines, seal, about } from './points-play.ts';

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
      'Find it first: plug of the oil inlet. The record stays open until then.',
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
