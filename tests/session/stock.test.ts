/** A consumable that is past its day or used up when it is wanted: no more is taken of it, and a fresh one is entered. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { unaccounted } from '../../src/session/account.ts';
import { decide } from '../../src/session/decide.ts';
import { fold } from '../../src/session/fold.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { pointKey } from '../../src/session/point.ts';
import { describe as describeEvent } from '../../src/ui/describe.ts';
import { workView } from '../../src/ui/view.ts';
import {
  affirm,
  answer,
  back,
  eventOf,
  happened,
  kinds,
  next,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
  type Play,
} from './play.ts';

const discarded = (id: string) => step(id, 'do', { seals: [{ seal: 'ring', is: 'discarded' }] });
const procedure = procedureOf(
  [
    discarded('one'),
    tighten('tighten'),
    discarded('two'),
    step('count', 'do', { reconciles: true }),
    step('end', 'do'),
  ],
  {
    seals: [{ id: 'ring', name: 'round seal', reuse: 'never', replacedBy: 'new' }],
    consumables: [{ id: 'new', name: 'new seal', expires: true, quantity: 1, counted: 'wrapper' }],
  },
);

const fresh = (more: Partial<Extract<Meaning, { kind: 'fresh consumable' }>> = {}): Meaning => ({
  ...{ kind: 'fresh consumable', consumable: 'new', batch: ' B  7 ', expires: '2027-01-31', quantity: '2' },
  ...more,
});

/** On the first of March 2026, with what was entered before the work. */
function begun(expires: string): Play {
  const play = start(procedure);
  const fact = { of: 'consumable', consumable: 'new', expires } as const;
  return { ...play, state: fold({ ...play.state, day: '2026-03-01' }, eventOf({ kind: 'prepared', fact }, 0)) };
}
const told = (play: Play): string => {
  const reason = refused(play);
  return reason === null ? '' : sayRefusal(play.state, reason);
};
const good = begun('2026-12-31');
const expired = begun('2026-02-28');
const usedUp = tell(
  good,
  answer('replace'),
  next,
  ...['24.5', '24.5', '24.5'].flatMap((each) => [reading(each), affirm]),
);

describe('what may not be taken when it is wanted', () => {
  test('is refused with the way on, whatever speaks against it', () => {
    expect(told(tell(expired, answer('replace')))).toMatch(
      /^The new seal expired on .*\. Fetch a fresh one, and enter on the screen what its packing says\.$/,
    );
    expect(told(tell(usedUp, answer('replace')))).toBe(
      'The new seal is used up. Fetch another, and enter on the screen what its packing says.',
    );
  });

  test('stands on the screen with what is to be entered, as long as it is asked for', () => {
    expect(workView(good.state).spent).toBeNull();
    for (const play of [expired, usedUp])
      expect(workView(play.state).spent).toMatchObject({
        consumable: 'new',
        name: 'new seal',
        wantsExpiry: true,
        wantsQuantity: true,
      });
    expect(workView(tell(expired, fresh()).state).spent).toBeNull();
  });
});

describe('a fresh packing', () => {
  test('is an event with what stands on it, said back, and the point is asked again', () => {
    const play = tell(expired, fresh());
    const [event] = happened(play);
    expect(happened(play)).toEqual([
      { kind: 'consumable fetched', consumable: 'new', batch: 'B 7', expires: '2027-01-31', quantity: 2 },
    ]);
    expect(announce(play.state, happened(play)).join(' ')).toMatch(/^Logged\. New seal, use by .* Say replace\.$/);
    expect(event && describeEvent({ body: event }, play.state)).toBe(
      'Fetched in the work, new seal: batch B 7, use by 2027-01-31, 2 of it',
    );
  });

  test.each([
    ['past its day', expired],
    ['used up', usedUp],
  ])('lets the work go on where what there was is %s', (_, play) => {
    expect(kinds(tell(play, fresh(), answer('replace')))).toEqual(['point settled']);
  });

  test('that is past its day as well is refused, and one until today is not', () => {
    const refusal = tell(expired, fresh({ expires: '2026-02-28' }));
    expect(refused(refusal)).toEqual({ code: 'consumable expired', consumable: 'new', expires: '2026-02-28' });
    expect(told(refusal)).toContain('Fetch a fresh one');
    expect(kinds(tell(expired, fresh({ expires: '2026-03-01' })))).toEqual(['consumable fetched']);
  });

  test.each([
    ['no day', { expires: '' }, /use-by date of the fresh new seal.*fetch another/],
    ['a day that is none', { expires: '31.1.2027' }, /use-by date/],
    ['no count', { quantity: ' ' }, /How many of the new seal are there now\? Type a whole number/],
    ['none of it', { quantity: '0' }, /How many/],
    ['another consumable', { consumable: 'x' }, /no such consumable/],
  ])('with %s is refused in words', (_, more, words) => expect(told(tell(expired, fresh(more)))).toMatch(words));

  test('is used up in its turn: its count is from when it came', () => {
    const twice = tell(usedUp, fresh({ quantity: '1' }), answer('replace'), back, back);
    expect(refused(tell(twice, answer('replace')))?.code).toBe('consumable used up');
  });

  test('waits for a reading to be confirmed, and is not wanted once all steps are done', () => {
    const pending = tell(good, answer('replace'), next, reading('24.5'), fresh());
    expect(refused(pending)?.code).toBe('confirm first');
  });
});

describe('a new seal that was taken in a step which is taken back', () => {
  const back1 = tell(good, answer('replace'), back);
  test('is taken all the same: the next one is another', () =>
    expect(refused(tell(back1, answer('replace')))).toEqual({ code: 'consumable used up', consumable: 'new' }));
  test('leaves a wrapper that is accounted for', () =>
    expect(unaccounted(back1.state).map(pointKey)).toEqual(['consumable:new']));
  test('after its wrapper was counted wants it counted again', () => {
    const counted = tell(usedUp, fresh(), answer('replace'), next, affirm);
    expect(unaccounted(counted.state)).toEqual([]);
    // Back to the second seal, and a third is taken.
    const again = tell(counted, back, back);
    expect(unaccounted(tell(again, answer('replace')).state).map(pointKey)).toEqual(['consumable:new']);
  });
});

test('midnight passes while the work goes on: a day that is past since then is refused, and a fresh one is asked for', () => {
  const lastDay = begun('2026-03-01');
  const after = { utc: '2026-03-02T00:20:00.000Z', monotonic: 1, day: '2026-03-02' };
  const replaced = decide(lastDay.state, { meaning: answer('replace'), at: after });
  expect(replaced).toMatchObject({ kind: 'refused', reason: { code: 'consumable expired' } });
});

describe('a check about two seals', () => {
  const two = procedureOf(
    [
      step('look', 'check', {
        seals: [
          { seal: 'ring', is: 'inspected' },
          { seal: 'other', is: 'inspected' },
        ],
        outcomes: [
          { id: 'reuse', text: 'Reuse', say: ['reuse'], then: 'go on' },
          { id: 'replace', text: 'Replace', say: ['replace'], then: 'go on' },
        ],
      }),
      step('end', 'do'),
    ],
    {
      seals: [
        { id: 'ring', name: 'round seal', reuse: 'if it passes inspection', replacedBy: 'new' },
        { id: 'other', name: 'other seal', reuse: 'if it passes inspection', replacedBy: 'new' },
      ],
      consumables: [{ id: 'new', name: 'new seal', quantity: 1 }],
    },
  );
  test('takes no two new ones out of a stock of one', () =>
    expect(refused(tell(start(two), answer('replace')))).toMatchObject({ code: 'consumable used up' }));
});
