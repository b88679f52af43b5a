/** Events as lines of the record. */
import { expect, test } from 'vitest';
import { describe as line } from '../../src/ui/describe.ts';
import {
  affirm,
  correction,
  dial,
  indicating,
  negative,
  newtonMetres,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  type Play,
} from '../session/play.ts';

const lines = ({ events }: Play): readonly string[] => events.map(line);

test('a running torque is named as one, with its minimum', () => {
  const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
  const play = start(procedureOf([tighten('ring', { runDown })], { tools: [indicating, dial] }));
  expect(lines(tell(play, reading('2.5'), affirm, reading('1.5')))).toEqual([
    'Number 1, running torque: 2.5 N·m, in (minimum 2 N·m)',
    'Confirmed: entry 0',
    'Number 3, running torque: 1.5 N·m, nut worn (minimum 2 N·m)',
  ]);
});

test('a reading is told with the window it was judged by', () =>
  expect(lines(tell(start(procedureOf([tighten('ring')])), reading('27'), correction('24')))).toEqual([
    'Number 1, pass 1: 27 N·m, over (window 23.0 to 26.0 N·m)',
    'Number 1, pass 1: 24 N·m, in (window 23.0 to 26.0 N·m), instead of entry 0',
  ]));

test('a step that was skipped is told with the answer it was skipped for', () => {
  const rinse = step('rinse', 'do', { applies: { condition: 'salt', is: true } });
  const conditions = [{ id: 'salt', question: 'Salt water?' }];
  expect(lines(tell(start(procedureOf([rinse, step('lift', 'do')], { conditions })), negative))).toEqual([
    'Condition salt: no',
    'Step skipped: rinse, because salt is no',
  ]);
});
