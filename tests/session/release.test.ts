/** Fasteners that are freed in groups, and the load that they hold until then. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { currentCall } from '../../src/session/state.ts';
import { affirm, happened, kinds, next, procedureOf, refused, start, step, tell, tighten, type Play } from './play.ts';
import { held, asked, told, stepOf } from './points-play.ts';

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

  test('goes on in reverse, and it is held in place, set down as it may be, until the last ones off are started', () => {
    const off = tell(start(release({ groups, heldBefore: 'last group' })), next, next, next, next, next, held, next);
    const one = tell(off, affirm);
    expect([off, one].map(({ state }) => prompt(state).join(' '))).toEqual([
      'Hold it in place. Upper, stud one: started by hand? Affirm or negative?',
      'Lower, studs three and two: started by hand? Affirm or negative?',
    ]);
    expect(stepOf(tell(one, affirm, next))).toBe('tighten');
  });
});
