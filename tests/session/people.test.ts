/** Who works, and how that changes in the course of a job. */
import { describe, expect, test } from 'vitest';
import { openWarning } from '../../src/session/state.ts';
import { speakerOf, witnessIn } from '../../src/session/people.ts';
import {
  affirm,
  continue_,
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
} from './play.ts';

const handOver = { kind: 'hand over' } as const;
const takeOver = (name: string) => ({ kind: 'take over', name }) as const;
const joins = (name: string | null) => ({ kind: 'second person', name }) as const;
const hazards = [{ signal: 'warning', consequence: 'person', text: 'It is heavy.' }];
const play = start(procedureOf([step('lift', 'do', { hazards }), tighten('ring'), step('clean', 'do')]));

describe('a handover', () => {
  test('stands by until the one who comes in has said who they are', () => {
    const leaving = tell(play, handOver);
    expect(kinds(leaving)).toEqual(['handover begun']);
    expect(refused(tell(leaving, next))).toEqual({ code: 'standing by' });
    const taken = tell(leaving, takeOver(' Third person '));
    expect(happened(taken)).toEqual([{ kind: 'handed over', from: 'Mechanic', to: 'Third person' }]);
    expect(taken.state.people).toEqual({ mechanic: 'Third person', second: 'Second person' });
    expect(taken.state.phase).toBe('working');
  });
  test('has the warnings of the step acknowledged anew: the one who comes in has heard none', () => {
    const warned = tell(play, affirm);
    expect(openWarning(warned.state)).toBeNull();
    expect(openWarning(tell(warned, handOver, takeOver('Third person')).state)?.text).toBe('It is heavy.');
  });
  test('is called off by going on', () => {
    const on = tell(play, handOver, continue_);
    expect(on.state.people.mechanic).toBe('Mechanic');
    expect(refused(tell(on, takeOver('Third person')))).toEqual({ code: 'not handing over' });
  });
  test.each([
    ['', 'no name'],
    ['  MECHANIC ', 'same mechanic'],
  ])('to “%s” is refused', (name, code) => expect(refused(tell(play, handOver, takeOver(name)))).toEqual({ code }));
  test('to the second person leaves nobody to witness', () => {
    const taken = tell(play, handOver, takeOver('Second person'));
    expect(kinds(taken)).toEqual(['second person left', 'handed over']);
    expect(witnessIn(taken.state)).toBeNull();
  });
  test('is made between two steps, not within one', () => {
    const ring = tell(play, affirm, next);
    expect(kinds(tell(ring, handOver))).toEqual(['handover begun']);
    expect(refused(tell(ring, reading('24'), handOver))).toEqual({ code: 'between steps' });
    expect(refused(tell(ring, reading('24'), affirm, handOver))).toEqual({ code: 'between steps' });
    const done = tell(ring, ...[1, 2, 3].flatMap(() => [reading('24'), affirm]));
    expect(kinds(tell(done, handOver))).toEqual(['handover begun']);
  });
});

test('whoever was the mechanic never witnesses in this session, under whatever spelling', () => {
  const taken = tell(play, handOver, takeOver('Third person'));
  expect(refused(tell(taken, joins(' MECHANIC')))).toEqual({ code: 'doer is no witness' });
  const back = tell(taken, handOver, takeOver('Second person'));
  expect(witnessIn(back.state)).toBeNull();
  expect(refused(tell(back, joins('third  person')))).toEqual({ code: 'doer is no witness' });
});

test('a name is kept in one spelling, well-formed and no longer than names are', () => {
  const joined = tell(play, joins(' Zoe\u0308 \ud800  von  Dort '.padEnd(500, 'x')));
  expect(joined.state.people.second).toMatch(/^Zo\u00eb \ufffd von Dort x*$/);
  expect(joined.state.people.second).toHaveLength(60);
});

describe('a second person', () => {
  test('joins under a name, in place of the one before', () => {
    const joined = tell(play, joins('Third person'));
    expect(happened(joined)).toEqual([
      { kind: 'second person left', name: 'Second person' },
      { kind: 'second person joined', name: 'Third person' },
    ]);
    expect(witnessIn(joined.state)).toBe('Third person');
  });
  test('leaves at any time, also while work stands by', () =>
    expect(happened(tell(play, { kind: 'stand by' }, joins(null)))).toEqual([
      { kind: 'second person left', name: 'Second person' },
    ]));
  test('is never the mechanic under another spelling', () =>
    expect(refused(tell(play, joins('mechanic ')))).toEqual({ code: 'doer is no witness' }));
  test('has a name', () => expect(refused(tell(play, joins(' ')))).toEqual({ code: 'no name' }));
  test('cannot leave where there is none', () =>
    expect(refused(tell(play, joins(null), joins(null)))).toEqual({ code: 'no second person' }));
});

describe('an entry is', () => {
  const { state } = play;
  test('of the mechanic who does the work', () => expect(speakerOf(state, affirm)).toBe('Mechanic'));
  test('of the second person where it is a witness’s word', () => {
    expect(speakerOf(state, { kind: 'witness says', agrees: true })).toBe('Second person');
    expect(speakerOf(state, { kind: 'witness', reading: { fastener: null, value: '24' } })).toBe('Second person');
  });
  test('of the one who takes over where they say so', () =>
    expect(speakerOf(state, takeOver('Third person'))).toBe('Third person'));
});
