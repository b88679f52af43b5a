/** What the one pedal means at each moment. */
import { expect, test } from 'vitest';
import { situationOf } from '../../src/language/situation.ts';
import { forwardMeaning } from '../../src/ui/forward.ts';
import {
  affirm,
  answer,
  continue_,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from '../session/play.ts';

const forward = ({ state }: Play) => forwardMeaning(state, situationOf(state));
const press = (play: Play): Play => tell(play, forward(play));
const again = { kind: 'say again' } as const;
const standBy = { kind: 'stand by' } as const;
const ring = start(procedureOf([tighten('ring')]));
const byHand = start(procedureOf([tighten('ring', { passes: [{ kind: 'snug' }, torquePass('24.5', '23', '26')] })]));
const warned = start(
  procedureOf([step('lift', 'do', { hazards: [{ signal: 'warning', consequence: 'person', text: 'Mind.' }] })]),
);

test('a step is done', () => expect(forward(start(procedureOf([step('drain', 'do')])))).toEqual(next));
test('a fastener that takes no value is done', () => expect(forward(byHand)).toEqual(next));
test('a warning is acknowledged', () => expect(forward(warned)).toEqual(affirm));

test('a value that is wanted is asked for, not passed over', () => {
  const pressed = press(ring);
  expect(pressed.last).toMatchObject({ kind: 'refused', reason: { code: 'reading first' } });
  expect(pressed.state).toEqual(ring.state);
});
test('a read-back inside its window is confirmed', () => {
  const readBack = tell(ring, reading('24.5'));
  expect(forward(readBack)).toEqual(affirm);
  expect(press(readBack).state.readings.at(-1)?.status).toBe('confirmed');
});
test.each(['22.9', '26.1'])('a read-back outside its window is only said again: %s N·m', (value) => {
  const readBack = tell(ring, reading(value));
  expect(forward(readBack)).toEqual(again);
  expect(press(readBack).state).toEqual(readBack.state);
});

test('a read-back in doubt is only said again, though it lies inside its window', () => {
  const inDoubt = tell(ring, {
    kind: 'reading',
    reading: { fastener: null, value: '24.25' },
    doubts: ['between marks'],
  });
  expect(forward(inDoubt)).toEqual(again);
  expect(press(inDoubt).state).toEqual(inDoubt.state);
});

test.each(['24.5', '27'])('a reading that awaits its witness is not given away, in or out: %s N·m', (value) => {
  const awaiting = tell(start(procedureOf([tighten('ring', { confirm: 'witness each' })])), reading(value));
  expect(press(awaiting).last).toEqual({ kind: 'refused', reason: { code: 'witness first', fastener: 1 } });
});

const outcomes = (affirmed: string, denied: string) => [
  { id: 'affirm', text: 'Affirmed.', then: affirmed },
  { id: 'negative', text: 'Denied.', then: denied },
];
test('a check that "affirm" passes is affirmed', () => {
  const check = start(procedureOf([step('clean', 'check', { outcomes: outcomes('go on', 'stay') })]));
  expect(forward(check)).toEqual(affirm);
});
test('a check that "affirm" does not pass is only said again: a foot finds no crack', () => {
  const check = start(procedureOf([step('cracked', 'check', { outcomes: outcomes('stay', 'go on') })]));
  expect(forward(check)).toEqual(again);
});
test('a check with answers of its own is only said again: a foot must not choose', () => {
  const own = [
    { id: 'reuse', text: 'Reuse it.', then: 'go on' },
    { id: 'replace', text: 'Replace it.', then: 'stay' },
  ];
  const check = start(procedureOf([step('seal', 'check', { outcomes: own }), step('close', 'do')]));
  expect(forward(check)).toEqual(again);
  expect(forward(tell(check, answer('reuse')))).toEqual(next);
});
test('a question about the unit is only said again: a foot knows nothing of it', () => {
  const conditions = [{ id: 'salt', question: 'Salt water?' }];
  const rinse = step('rinse', 'do', { applies: { condition: 'salt', is: true } });
  expect(forward(start(procedureOf([rinse], { conditions })))).toEqual(again);
});

test.each([
  ['a step', start(procedureOf([step('drain', 'do')]))],
  ['a warning', warned],
  ['a read-back inside its window', tell(ring, reading('24.5'))],
  ['a read-back outside its window', tell(ring, reading('27'))],
])('work that stands by goes on, at %s', (_, play) => {
  const standing = tell(play, standBy);
  expect(forward(standing)).toEqual(continue_);
  expect(press(standing).state.phase).toBe('working');
});
test('after the end it is refused, and so it is answered', () => {
  const closed = tell(start(procedureOf([step('drain', 'do')])), next);
  expect(closed.state.phase).toBe('closed');
  expect(press(closed).last).toEqual({ kind: 'refused', reason: { code: 'session closed' } });
});
