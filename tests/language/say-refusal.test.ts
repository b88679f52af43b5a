import { describe, expect, test } from 'vitest';
import {
  affirm,
  back,
  click,
  continue_,
  correction,
  disregard,
  doubted,
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
import { spoken } from './spoken.ts';

const hazard = (signal: string, text: string) => ({ signal, consequence: 'person', text });
const outcomes = [
  { id: 'reuse', text: 'Reuse it.', then: 'go on' },
  { id: 'negative', text: 'Look again.', then: 'stay' },
];
const two = {
  passes: [torquePass('12', '11', '13', { name: 'first' }), torquePass('24.5', '23', '26', { name: 'final' })],
};
const clean = step('clean', 'do', { say: 'Clean it.' });
const ring = (more: object = two, procedure: object = {}): Play =>
  start(procedureOf([tighten('ring', { say: 'Tighten the ring.', ...more }), clean], procedure));

describe('a refusal', () => {
  const step1 = tell(ring(), reading('12'), affirm);
  const checking = start(procedureOf([step('inspect', 'check', { outcomes }), clean]));
  const warned = start(procedureOf([step('drain', 'do', { hazards: [hazard('warning', 'Hot oil.')] })]));
  const doing = start(procedureOf([clean, clean].map((each, i) => ({ ...each, id: `clean-${i}` }))));
  const unclear = (doubt: 'several readings' | 'not sure' | 'other unit') =>
    ({ kind: 'unclear', doubt, readings: [] }) as const;

  test.each<[string, Play, string]>([
    ['standing by', tell(doing, { kind: 'stand by' }, next), 'Standing by. Say continue first.'],
    ['not standing by', tell(doing, continue_), 'Not standing by.'],
    ['session closed', tell(doing, next, next, next), 'The record is closed.'],
    ['warning first', tell(warned, back), 'Acknowledge the warning first: say affirm.'],
    ['confirm first', tell(step1, reading('12'), next), 'Stud three is not confirmed. Say affirm or negative.'],
    [
      'in doubt',
      tell(step1, doubted('99', 'off the scale'), affirm),
      'Stud three cannot be confirmed like that. Say the value again, or negative.',
    ],
    ['unclear', tell(step1, doubted('99', 'off the scale'), unclear('not sure')), 'That was not clear. Say again.'],
    ['nothing to confirm', tell(doing, affirm), 'There is nothing to confirm.'],
    ['nothing to correct', tell(doing, disregard), 'There is no reading to correct.'],
    [
      'not the last reading',
      tell(step1, correction('12', 2)),
      'The last reading is of stud one. Only that one can be corrected.',
    ],
    ['answer first', tell(checking, next), 'This check needs an answer.'],
    ['no such answer', tell(checking, affirm), 'That is no answer here.'],
    ['no reading here', tell(doing, reading('12')), 'No reading is taken here.'],
    ['reading first', tell(ring(), next), 'Stud one needs a reading.'],
    ['out of order', tell(ring(), reading('12', 2)), 'Stud two is out of order. Next is stud one.'],
    ['no such fastener', tell(ring(), reading('12', 12)), 'There is no stud one two. Next is stud one.'],
    ['not a setting tool', tell(ring(), click()), 'This tool shows a value. Say the value.'],
    ['first step', tell(doing, back), 'This is the first step.'],
    ['readings stand', tell(step1, back), 'Readings stand here. Say correction and the right value.'],
    [
      'unclear',
      tell(ring(), unclear('several readings')),
      'That can be understood in more than one way. Say stud, its number, at, and the value.',
    ],
    ['unclear', tell(ring(), unclear('not sure')), 'That was not clear. Say again.'],
    ['unclear', tell(ring(), unclear('other unit')), 'The tool reads newton metres. Say the value that it shows.'],
  ])('%s', (code, play, text) => {
    expect(play.last).toMatchObject({ kind: 'refused', reason: { code } });
    expect(spoken(play)).toEqual([text]);
  });

  test('of a correction names the fasteners of its own step', () => {
    const bolts = {
      id: 'bolts',
      name: 'Bolts',
      fastener: 'bolt',
      layout: { shape: 'ring', count: 1 },
      order: { kind: 'circular' },
    };
    const three = {
      id: 'three',
      name: 'Studs',
      fastener: 'stud',
      layout: { shape: 'ring', count: 3 },
      order: { kind: 'circular' },
    };
    const steps = [tighten('first', { pattern: 'bolts' }), tighten('second')];
    const second = tell(start(procedureOf(steps, { patterns: [bolts, three] })), reading('24'), affirm);
    expect(spoken(tell(second, correction('25'), next))).toEqual([
      'Bolt one is not confirmed. Say affirm or negative.',
    ]);
  });
});
