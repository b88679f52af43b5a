/** Events as lines of the record. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { EventBodySchema } from '../../src/record/event-schema.ts';
import type { EventBody, SessionEvent } from '../../src/session/event.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { describe as line } from '../../src/ui/describe.ts';
import { showMoment, zonesOf } from '../../src/ui/moment.ts';
import { workView } from '../../src/ui/view.ts';
import { openedBy } from '../record/sealed.ts';
import {
  affirm,
  answer,
  click,
  continue_,
  correction,
  demo,
  dial,
  disregard,
  eventOf,
  indicating,
  negative,
  newtonMetres,
  next,
  people,
  procedureOf,
  reading,
  setting,
  start,
  step,
  tell,
  tighten,
  turned,
  type Play,
  window,
} from '../session/play.ts';

/** Each event told with the state after it. */
function lines({ events, state: { procedure } }: Play): readonly string[] {
  let state = begin(procedure, people);
  return events.map((event: SessionEvent) => {
    state = fold(state, event);
    return line(event, state);
  });
}
const ring = (more: object = {}, tools: readonly object[] = [indicating, dial]): Play =>
  start(procedureOf([tighten('ring', more), step('clean', 'do', { title: 'Clean the face' })], { tools }));

const read = tell(ring(), reading('24.5')).events[0]?.body;
if (read?.kind !== 'reading captured') throw new Error('Nothing was read.');
const captured = read;

describe('a reading', () => {
  test('is told with its fastener, its pass, its verdict in words and the window it was judged by', () =>
    expect(lines(tell(ring(), reading('24.5'), reading('27'), reading('22')))).toEqual([
      'Stud 1, pass 1: 24.5 N·m, inside the window 23.0 to 26.0 N·m',
      'Stud 1, pass 1: 27 N·m, over the window 23.0 to 26.0 N·m. It stands in for stud 1, pass 1, 24.5 N·m',
      'Stud 1, pass 1: 22 N·m, under the window 23.0 to 26.0 N·m. It stands in for stud 1, pass 1, 27 N·m',
    ]));
  test('in doubt is told with its doubts', () =>
    expect(
      lines(tell(ring(), { kind: 'reading', reading: { fastener: null, value: '24.25' }, doubts: ['between marks'] })),
    ).toEqual(['Stud 1, pass 1: 24.25 N·m, inside the window 23.0 to 26.0 N·m. In doubt: between marks']));
  test('that was asked about is told as a question', () =>
    expect(
      lines(
        tell(
          ring(),
          { kind: 'question', question: { about: 'logged', fastener: 4 } },
          { kind: 'question', question: { about: 'left' } },
        ),
      ),
    ).toEqual(['Asked: what is logged for number 4', 'Asked: what is left to do']));
  test('that nobody answered is told as asked again', () =>
    expect(lines(tell(ring(), reading('24.5'), { kind: 'silence' }))[1]).toBe(
      'No answer, asked again: stud 1, pass 1, 24.5 N·m',
    ));
  test('is named again by whatever became of it', () =>
    expect(
      lines(tell(ring(), reading('24.5'), negative, reading('24'), affirm, correction('25'), disregard)).filter(
        (each) => !each.startsWith('Stud'),
      ),
    ).toEqual([
      'Rejected: stud 1, pass 1, 24.5 N·m',
      'Confirmed: stud 1, pass 1, 24 N·m',
      'Disregarded: stud 1, pass 1, 25 N·m',
    ]));
  test('that a tool cannot prove says so', () => {
    const judging = { rule: 'guard band', uncertainty: newtonMetres('1') };
    expect(lines(tell(ring({ judging }), reading('23.5')))[0]).toBe(
      'Stud 1, pass 1: 23.5 N·m, too near a limit of the window 23.0 to 26.0 N·m for this tool to prove',
    );
  });
  test('taken by the click of a setting tool says so', () =>
    expect(lines(tell(ring({}, [setting]), click()))[0]).toMatch(
      /^Stud 1, pass 1: 24\.5 N·m by the click of the wrench, /,
    ));
  test('of running torque is named as one, with its minimum; the window then is at the wrench', () => {
    const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
    const play = tell(ring({ runDown }), reading('2.5'), affirm, reading('1.5'), negative, reading('3'), affirm);
    const all = lines(tell(play, reading('3'), affirm, reading('27')));
    expect(all[0]).toBe('Stud 1, running torque: 2.5 N·m, not below the minimum 2 N·m');
    expect(all[1]).toBe('Confirmed: stud 1, running torque, 2.5 N·m');
    expect(all[2]).toBe('Stud 3, running torque: 1.5 N·m, below the minimum 2 N·m: the nut is worn');
    expect(all.at(-1)).toBe('Stud 1, pass 1: 27 N·m, inside the window 25.5 to 28.5 N·m at the wrench');
  });
});

describe('a step', () => {
  test('is told by its title, and a warning by its text', () => {
    const play = tell(start(demo()), affirm, affirm, next, { kind: 'back' });
    const [first] = play.state.procedure.steps;
    expect(lines(play)[0]).toBe(`Warning acknowledged: ${first?.hazards[0]?.text ?? ''}`);
    expect(lines(play)).toContain(`Step done: ${first?.title ?? ''}`);
    for (const { id } of play.state.procedure.steps) expect(lines(play).join('\n')).not.toContain(id);
  });
  test('that was skipped is told with the question and the answer it was skipped for', () => {
    const rinse = step('rinse', 'do', { title: 'Rinse it', applies: { condition: 'salt', is: true } });
    const conditions = [{ id: 'salt', question: 'Salt water?' }];
    expect(lines(tell(start(procedureOf([rinse, step('lift', 'do')], { conditions })), negative))).toEqual([
      'Salt water? No',
      'Step skipped, it does not apply: Rinse it (Salt water? No)',
    ]);
  });
  test('of checking is told with the answer and what it means', () => {
    const outcomes = [
      { id: 'reuse', text: 'The seal goes in again.', then: 'go on' },
      { id: 'replace', say: ['new one'], text: 'Fit a new seal.', then: 'go on' },
    ];
    const seal = start(procedureOf([step('seal', 'check', { title: 'The seal', outcomes }), step('lift', 'do')]));
    expect(lines(tell(seal, answer('reuse')))[0]).toBe('The seal, answered “reuse”: The seal goes in again.');
    expect(lines(tell(seal, answer('replace')))[0]).toBe('The seal, answered “new one”: Fit a new seal.');
  });
  test('by hand is told fastener by fastener', () => {
    const loosen = start(procedureOf([step('free', 'loosen', { pattern: 'three', stages: ['half a turn'] })]));
    expect(lines(tell(loosen, next))[0]).toBe('Stud 2, pass 1 (half a turn): done');
    const final = { target: newtonMetres('24.5'), window: window('23', '26') };
    const passes = [{ kind: 'torque', ...final }, { kind: 'circular check' }];
    const check = start(procedureOf([tighten('ring', { final, passes })]));
    const checked = lines(tell(check, ...['1', '3', '2'].flatMap(() => [reading('24.5'), affirm]), next, turned));
    expect(checked.slice(-2)).toEqual([
      'Stud 1, pass 2 (circular check): did not turn',
      'Stud 2, pass 2 (circular check): turned',
    ]);
  });
});
describe('a refusal', () => {
  const refusal = (play: Play): string | undefined => lines(play).at(-1);
  test.each<[string, Play]>([
    [
      'Refused: reading “24” for number 2. Out of order: stud 3 was next, not stud 2',
      tell(ring(), reading('24'), affirm, reading('24', 2)),
    ],
    ['Refused: reading “24” for number 9. There is no stud 9; stud 1 was next', tell(ring(), reading('24', 9))],
    ['Refused: “next”. The reading of stud 1 was still to come', tell(ring(), next)],
    ['Refused: “affirm”. There was nothing to confirm', tell(ring(), affirm)],
    ['Refused: click. The tool shows a value, so a click is no reading', tell(ring(), click())],
    ['Refused: “next”. The warning was not acknowledged yet', tell(start(demo()), negative, next)],
    ['Refused: “next”. The work was stopped, standing by', tell(ring(), { kind: 'stand by' }, next)],
    ['Refused: “continue”. The work was not stopped', tell(ring(), continue_)],
  ])('%s', (words, play) => expect(refusal(play)).toBe(words));
  test('of a tool says what speaks against it', () => {
    const old = { ...indicating, calibrationDue: '2020-01-01' };
    const opened = fold(ring({}, [old]).state, eventOf({ kind: 'reopened' }, 0));
    const play = tell({ ...ring(), state: opened }, reading('24'));
    const event = play.events.at(-1);
    expect(event && line(event, play.state)).toMatch(
      /^Refused: reading “24”\. Indicating wrench: may not be used here\. /,
    );
  });
});

test('a report tells what was read, and the entry that it repeats', () => {
  const damage = { kind: 'report', what: 'damage' } as const;
  const because = { kind: 'reason', text: 'bent' } as const;
  const over = tell(ring(), reading('27'), affirm);
  const reports = (play: Play) => lines(play).filter((each) => each.startsWith('Deviation'));
  expect(reports(tell(ring(), damage, because, affirm, damage))).toEqual([
    'Deviation reported: stud 1, pass 1, damage',
    'Deviation reported once more: stud 1, pass 1, damage, as in entry 0',
  ]);
  expect(reports(tell(over, damage, because, affirm, damage))).toEqual([
    'Deviation reported: stud 1, pass 1, damage, read as stud 1, pass 1, 27 N·m',
    'Deviation reported once more: stud 1, pass 1, damage, read as stud 1, pass 1, 27 N·m, as in entry 2',
  ]);
});

test('the opening names the procedure, its source and the people', async () => {
  const { state } = ring();
  expect(line({ body: await openedBy({}) }, state)).toBe(
    'Session opened: Small procedure, by Invented manual, revision A. All values are invented. Mechanic Mechanic, second person Second person',
  );
});

test('an event that names what the procedure does not have is told by what it names', () => {
  const { state } = ring();
  const told = (body: SessionEvent['body']): string => line({ body }, state);
  expect(told({ kind: 'step done', step: 'elsewhere' })).toBe('Step done: elsewhere');
  expect(told({ kind: 'reading confirmed', of: 7 })).toBe('Confirmed: entry 7, which is not a reading');
  expect(told({ kind: 'warning acknowledged', step: 'elsewhere', index: 0 })).toBe(
    'Warning 1 of step elsewhere acknowledged',
  );
});

test('no event that the schema lets in stops the telling, whatever it names', () => {
  const names = fc.constantFrom('ring', 'clean', 'elsewhere', '');
  const numbers = fc.constantFrom(0, 1, 2, 3, 99);
  const about = fc.record({ step: names, pass: numbers, fastener: numbers });
  const body: fc.Arbitrary<EventBody> = fc.oneof(
    fc.record({ kind: fc.constantFrom('step done' as const, 'step taken back' as const), step: names }),
    fc.record({ kind: fc.constant('warning acknowledged' as const), step: names, index: numbers }),
    fc.record({ kind: fc.constant('condition answered' as const), condition: names, is: fc.boolean() }),
    fc.record({ kind: fc.constant('step skipped' as const), step: names, condition: names, is: fc.boolean() }),
    fc.record({ kind: fc.constant('answered' as const), step: names, outcome: names }),
    about.map((place) => ({ kind: 'fastener done' as const, ...place })),
    fc.record({
      kind: fc.constantFrom('reading confirmed' as const, 'reading rejected' as const, 'reading disregarded' as const),
      of: numbers,
    }),
    fc
      .tuple(about, fc.constantFrom('in' as const, 'over' as const, 'nut worn' as const), fc.option(numbers))
      .map(([place, verdict, corrects]) => ({ ...captured, ...place, verdict, corrects })),
    fc.constantFrom<EventBody>({ kind: 'stood by' }, { kind: 'continued' }, { kind: 'closed' }),
  );
  const first = ring();
  fc.assert(
    fc.property(fc.array(body, { maxLength: 12 }), (bodies) => {
      bodies.map(eventOf).reduce((state, event) => {
        expect(v.safeParse(EventBodySchema, event.body).success).toBe(true);
        const after = fold(state, event);
        expect(line(event, after)).not.toBe('');
        workView(after);
        return after;
      }, first.state);
    }),
  );
});

describe('a moment', () => {
  test('has its day, and the hour after midnight is 00', () =>
    expect(showMoment('2026-03-01T00:05:10.000Z', 'UTC')).toBe('2026-03-01 00:05:10'));
  test('is told in local time, day and all', () =>
    expect(showMoment('2026-03-01T23:05:10.000Z', 'Europe/Zurich')).toBe('2026-03-02 00:05:10'));
  test('is in a zone that is told once, and again where clocks were put back', () => {
    const night = ['2026-10-24T23:30:00.000Z', '2026-10-25T00:59:59.000Z', '2026-10-25T01:00:00.000Z'];
    expect(zonesOf(night, 'Europe/Zurich')).toEqual([
      { utc: night[0], zone: 'UTC+02:00' },
      { utc: night[2], zone: 'UTC+01:00' },
    ]);
    expect(zonesOf(night, 'UTC').map(({ zone }) => zone)).toEqual(['UTC+00:00']);
    expect(zonesOf(night, 'America/St_Johns').map(({ zone }) => zone)).toEqual(['UTC-02:30']);
  });
});
