/** The form for a fresh consumable: what of it is at fault. */
import { expect, test } from 'vitest';
import type { Meaning } from '../../../src/session/intent.ts';
import { workView } from '../../../src/ui/view.ts';
import { about } from '../../session/points-play.ts';
import { answer, procedureOf, start, step, tell, type Play } from '../../session/play.ts';

const usedUp = tell(
  start(
    procedureOf([step('one', 'do', about('discarded')), step('two', 'do', about('discarded')), step('end', 'do')], {
      seals: [{ id: 'ring', name: 'round seal', reuse: 'never', replacedBy: 'new' }],
      consumables: [{ id: 'new', name: 'new seal', expires: true, quantity: 1 }],
    }),
  ),
  answer('replace'),
  { kind: 'next' },
);
const fresh = (more: object = {}): Meaning => ({
  kind: 'fresh consumable',
  consumable: 'new',
  batch: 'B 7',
  expires: '2031-01-31',
  quantity: '1',
  ...more,
});
const faultAfter = (meaning: Meaning) => {
  const { state, events }: Play = tell(usedUp, meaning);
  return workView(state, events.at(-1)?.body).spent?.fault;
};

test('names the field at fault, and why, until anything else happens', () => {
  for (const [wrong, field, why] of [
    [{ expires: '' }, 'expires', /^Type the use-by date/],
    [{ quantity: 'two' }, 'quantity', /whole number/],
  ] as const) {
    const fault = faultAfter(fresh(wrong));
    expect(fault?.field).toBe(field);
    expect(fault?.why).toMatch(why);
  }
  expect(faultAfter(answer('replace'))).toBeNull();
  expect(faultAfter({ kind: 'stand by' })).toBeUndefined();
});

test('of a second packing with the same batch is another one, from which another seal is taken', () => {
  const first = tell(usedUp, fresh());
  const taken = tell(first, answer('replace'), { kind: 'back' });
  expect(workView(first.state).spent).toBeNull();
  expect(workView(taken.state).spent).toMatchObject({ consumable: 'new', fault: null });
  const second = tell(taken, fresh());
  expect(workView(second.state).spent).toBeNull();
  expect(second.state.fetched.get('new')).not.toBe(first.state.fetched.get('new'));
});
