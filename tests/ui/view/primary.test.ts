/** Which button is filled: the answer that is wanted, and none where there is a choice. */
import { describe, expect, test } from 'vitest';
import type { Meaning } from '../../../src/session/intent.ts';
import { workView } from '../../../src/ui/view.ts';
import { primaryOf } from '../../../src/ui/view/primary.ts';
import { about, held, seal } from '../../session/points-play.ts';
import {
  affirm,
  answer,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  threeStuds,
  tighten,
  type Play,
} from '../../session/play.ts';

const filled = ({ state }: Play) => primaryOf(workView(state));
const setDown: Meaning = { kind: 'set down' };
const end = step('end', 'do');

test('is next where a step is worked, affirm to a warning and a good reading, and none while a value is wanted', () => {
  const hazards = [{ signal: 'warning', consequence: 'person', text: 'It is hot.' }];
  const job = start(procedureOf([step('drain', 'do', { hazards }), tighten('ring')]));
  expect(filled(job)).toBe('affirm');
  expect(filled(tell(job, affirm))).toBe('next');
  const called = tell(job, affirm, next);
  expect(filled(called)).toBeNull();
  expect(filled(tell(called, reading('24.5')))).toBe('affirm');
  expect(filled(tell(called, reading('30')))).toBeNull();
  expect(filled(tell(called, { kind: 'stand by' }))).toBe('continue');
});

describe('under a weight', () => {
  const atHold = start(procedureOf([step('carry', 'hold', { calls: ['Straight off', 'Down'] }), end]));
  test('it is held, then the next call, and after the last one set down', () => {
    expect(filled(atHold)).toBe('held');
    expect(filled(tell(atHold, held))).toBe('next');
    const down = tell(atHold, held, next);
    expect(filled(down)).toBe('set down');
    expect(filled(tell(down, setDown))).toBe('next');
  });
  test('it is held before the last nut comes off', () => {
    const release = start(
      procedureOf(
        [
          step('release', 'loosen', { pattern: 'three', stages: ['take off'], heldBefore: 'last fastener' }),
          step('carry', 'hold'),
        ],
        { patterns: [threeStuds] },
      ),
    );
    expect(filled(release)).toBe('next');
    expect(filled(tell(release, next, next))).toBe('held');
  });
});

describe('about a seal', () => {
  const outcomes = [
    { id: 'reuse', text: 'Reuse it.', then: 'go on' },
    { id: 'replace', text: 'Fit a new one.', then: 'go on' },
  ];
  const look = (kind: 'do' | 'check') =>
    start(
      procedureOf([step('look', kind, { ...about('inspected'), ...(kind === 'check' && { outcomes }) }), end], seal()),
    );

  test.each(['do', 'check'] as const)('none is where it may be used again and may be replaced: %s', (kind) => {
    const sound = tell(look(kind), affirm, affirm);
    expect(filled(sound)).toBeNull();
    expect(workView(sound.state).mustReplace).toBeNull();
  });
  test.each(['do', 'check'] as const)('it is the answer that is left after a criterion failed: %s', (kind) => {
    const failed = tell(look(kind), affirm, negative);
    // Not another answer of the check, should there be one.
    expect(filled(failed)).toBe('replace');
    const { point, mustReplace } = workView(failed.state);
    // Why, and what to do, stand on the screen.
    expect(point?.question ?? mustReplace).toBe('Round seal. It failed: no flat spot. New part: X-12. Say replace.');
    expect(workView(tell(failed, answer('replace')).state).mustReplace).toBeNull();
  });
});
