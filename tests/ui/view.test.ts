/** What the work screen shows: a pure function of the state. */
import { describe, expect, test } from 'vitest';
import { prompt } from '../../src/language/prompt.ts';
import { workView } from '../../src/ui/view.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { currentStep } from '../../src/session/state.ts';
import { openly } from '../session/anything.ts';
import {
  affirm,
  back,
  demo,
  dial,
  doubted,
  fireBoat,
  indicating,
  negative,
  newtonMetres,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  torquePass,
  window,
  type Play,
} from '../session/play.ts';

function until(play: Play, id: string): Play {
  return currentStep(play.state)?.id === id ? play : until(tell(play, openly(play.state)), id);
}
const shown = (play: Play) => workView(play.state);

describe('a call', () => {
  const ropeway = until(start(demo()), 'tighten-ring');

  test('shows the stud, the pass, what to set, its window, why, and with which tool', () =>
    expect(shown(ropeway).call).toMatchObject({
      label: 'stud',
      fastener: 1,
      round: 'Pass 1 of 2: first',
      target: newtonMetres('12'),
      window: '11.0 to 13.0 N·m',
      why: 'target 12: pull to 12',
      tool: 'Indicating torque wrench, 5 to 60 N·m',
      left: 10,
      troubles: [],
    }));
  test('shows what the rule of judging accepts, where that is less than the window', () => {
    const by = (uncertainty: string) => {
      const judging = { rule: 'guard band', uncertainty: newtonMetres(uncertainty) };
      return shown(start(procedureOf([tighten('ring', { judging })]))).call?.window;
    };
    expect(by('0.55')).toBe('23.0 to 26.0 N·m; accepted 23.6 to 25.4 N·m (guard band)');
    expect(by('2')).toBe('23.0 to 26.0 N·m; nothing is accepted (guard band)');
  });
  test('explains the step as long as nothing of it is done', () => {
    expect(shown(ropeway).call?.plan).toBe(
      '10 fasteners in 2 passes: 12 N·m, then 24.5 N·m in the order of the manual.',
    );
    expect(shown(tell(ropeway, reading('12'), affirm)).call?.plan).toBeNull();
  });

  describe('of the fire pump', () => {
    const cover = until(start(fireBoat()), 'tighten-cover');

    test('asks for the running torque first, with its minimum and its tool', () =>
      expect(shown(cover).call).toMatchObject({
        fastener: 3,
        round: 'Running torque, before pass 1',
        target: null,
        instead: 'read it',
        window: null,
        minimum: '20 lbf·in',
        why: null,
        tool: 'Dial torque wrench, 5 to 75 lbf·in',
        left: 12,
      }));
    test('shows the setting at the wrench, its limits never rounded outwards', () => {
      const twelve = Array.from({ length: 12 });
      const snug = twelve.reduce<Play>((at) => tell(at, reading('22'), affirm), cover);
      const half = twelve.reduce<Play>((at) => tell(at, next), snug);
      // (82.5 + 22) × 0.904105 = 94.479 goes up to 95; (92.5 + 22) × 0.904105 = 103.520 goes down to 103.
      expect(shown(half).call).toMatchObject({
        round: 'Pass 2 of 4: half',
        target: { value: '99', unit: 'lbf·in' },
        window: '95 to 103 lbf·in',
        why: 'target 87.5, plus 22 running, times 0.904 for the adapter: set 99',
        tool: 'Setting torque wrench, 40 to 250 lbf·in',
      });
    });
    test('shows a nut that is worn as out, and calls it again', () => {
      const worn = tell(cover, reading('15'), affirm);
      expect(shown(worn).call?.fastener).toBe(3);
      expect(shown(worn).map?.positions.find(({ number }) => number === 3)?.standing).toBe('doubt');
    });
  });

  test('shows what is ordered until it is done, and the order that is asked about', () => {
    const onDeviation = [
      { what: 'over torque', text: 'Take the nut off.' },
      { what: 'damage', text: 'An inspector decides.' },
    ];
    const report = (what: 'damage' | 'takes no torque'): readonly Meaning[] => [
      { kind: 'report', what },
      { kind: 'reason', text: 'bent' },
      affirm,
    ];
    const toDo = (...meanings: readonly Meaning[]) =>
      shown(tell(start(procedureOf([tighten('ring', { onDeviation })])), ...meanings)).call?.toDo;
    const over = [reading('31'), affirm];
    expect(toDo()).toBeNull();
    expect([toDo(...over), toDo(...over, negative)]).toEqual(['Take the nut off.', 'Take the nut off.']);
    expect(toDo(...over, affirm)).toBeNull();
    expect(toDo(...report('damage'))).toBe('An inspector decides.');
    expect(toDo(...report('damage'), affirm, ...over)).toBe('Take the nut off.');
    expect(toDo(...over, affirm, ...report('takes no torque'))).toBe(
      'The procedure does not say what to do. Decide by the manual.',
    );
  });

  test('by hand has nothing to set', () => {
    const snug = start(procedureOf([tighten('ring', { passes: [{ kind: 'snug' }, torquePass('24.5', '23', '26')] })]));
    expect(shown(snug).call).toMatchObject({ target: null, instead: 'by hand', window: null, why: null, tool: null });
  });
  test('says what speaks against its tools, and whether it stops the work', () => {
    const troubles = (tool: object) =>
      shown(start(procedureOf([tighten('ring')], { tools: [tool, dial] }))).call?.troubles.map(({ stops }) => stops);
    expect(troubles(indicating)).toEqual([]);
    expect(troubles({ ...indicating, calibrationDue: undefined })).toEqual([false]);
    expect(troubles({ ...indicating, range: window('1', '20') })).toEqual([true]);
  });
});

describe('the load', () => {
  test('is shown at the first step and where the component is held', () => {
    const weight = 'The component weighs 43.2 lb, with 2.2 lb of sea water inside.';
    const play = start(fireBoat());
    expect(shown(play).load[0]).toBe(weight);
    expect(shown(until(play, 'drain')).load).toEqual([]);
    expect(shown(until(play, 'hold-cover')).load[0]).toBe(weight);
  });
  test('is shown with what the lifting equation does not cover', () =>
    expect(shown(start(fireBoat())).load).toContain(
      'The equation does not cover lifting on slippery ground; the true limit is lower.',
    ));
});

test('a check that stays open for its answer shows what that has done first', () => {
  const outcomes = [
    { id: 'affirm', text: 'Dry.', then: 'go on' },
    { id: 'negative', text: 'Stop the pump.', then: 'stay' },
  ];
  const check = start(procedureOf([step('run', 'check', { outcomes }), step('clean', 'do')]));
  const leaks = tell(check, negative);
  expect([check, leaks, tell(leaks, affirm)].map((play) => shown(play).ordered)).toEqual([
    null,
    'Stop the pump.',
    null,
  ]);
});

describe('a step that depends on the unit', () => {
  const conditions = [{ id: 'salt', question: 'Did it run in salt water?' }];
  const rinse = step('rinse', 'do', { title: 'Rinse', applies: { condition: 'salt', is: true } });
  const play = tell(start(procedureOf([step('drain', 'do'), rinse, step('lift', 'do')], { conditions })), next);

  test('is a question first', () => expect(shown(play).question).toBe('Did it run in salt water?'));
  test('is named as skipped where it does not apply, as long as the step after it is shown', () => {
    const skipped = tell(play, negative);
    expect(shown(skipped)).toMatchObject({ question: null, skipped: ['Rinse'], stepNumber: 3 });
    expect(shown(tell(play, affirm)).skipped).toEqual([]);
    expect(shown(start(procedureOf([step('lift', 'do')]))).skipped).toEqual([]);
  });
});

test('a point is shown with the work that it is about, as that is spoken before it, and not where the step does not apply', () => {
  const openings = [{ id: 'inlet', name: 'inlet port', closure: 'cap' }];
  const conditions = [{ id: 'salt', question: 'Did it run in salt water?' }];
  const rinse = step('rinse', 'do', { applies: { condition: 'salt', is: true } });
  const play = start(procedureOf([step('hose', 'open', { opening: 'inlet' }), rinse], { openings, conditions }));
  const [asked, work] = [shown(play).point?.question ?? '', currentStep(play.state)?.text ?? ''];
  expect(shown(play).point).toMatchObject({ work });
  const said = prompt(play.state, [{ kind: 'repeat asked' }]).join(' ');
  expect(said.indexOf(work)).toBeGreaterThanOrEqual(0);
  expect(said.indexOf(asked)).toBeGreaterThan(said.indexOf(work));
  // The cap that was fitted is accounted for in the last step, which is not worked.
  const account = tell(play, affirm, negative);
  expect(shown(account).point).toMatchObject({ question: expect.stringContaining('nlet port') as string, work: null });
});

test('a reading in doubt is shown with its question', () => {
  const said = { fastener: null, value: '42.5' };
  const ring = start(procedureOf([tighten('ring')]));
  const asked = tell(ring, { kind: 'reading', reading: said, doubts: ['digits swapped', 'not sure'] });
  expect(shown(asked).doubt).toBe('Check the order of the digits. Affirm, or say what the tool shows.');
  expect(shown(tell(ring, reading('24'))).doubt).toBeNull();
  // Who says the same value again has answered it: then it is asked whether it was heard rightly, as by voice.
  const again = tell(asked, { kind: 'reading', reading: said, doubts: ['digits swapped'] });
  expect(shown(again).doubt).toBeNull();
  const off = doubted('99', 'off the scale');
  expect(shown(tell(ring, off, off)).doubt).toBe(
    'That is off the scale of the tool. What does the tool show? Say it digit by digit.',
  );
});

test('a step that was taken back is told until anything else happens', () => {
  const undone = ({ state, events }: Play) => workView(state, events.at(-1)?.body).undone;
  const play = tell(start(procedureOf([step('clean', 'do'), step('drain', 'do')])), next, back);
  expect(undone(play)).toBe('Taken back: clean.');
  expect(undone(tell(play, next))).toBeNull();
});

describe('why something was not taken', () => {
  const why = ({ state, events }: Play) => workView(state, events.at(-1)?.body).refused;
  const ring = start(procedureOf([tighten('ring')]));
  const early = tell(ring, next);

  test('stands on the screen, in the words of the procedure', () => {
    expect(why(early)).toMatch(/^The reading of \w+ 1 was still to come$/);
    expect(why(tell(ring, reading('24', 2)))).toMatch(/^Out of order: \w+ 1 was next, not \w+ 2$/);
  });
  test('is gone as soon as something else has happened', () => expect(why(tell(early, reading('24')))).toBeNull());
  test('holds nothing of what was read, which a second person may not see', () =>
    expect(why(tell(ring, reading('24', 2)))).not.toContain('24'));
});

describe('what was asked', () => {
  const bolts = tell(start(procedureOf([tighten('ring')])), reading('24'), affirm);
  const about = (play: Play, about: 'left' | 'last readings' | 'why' | 'slowly'): Play =>
    tell(play, { kind: 'question', question: { about } });
  const answer = (play: Play) => workView(play.state, play.events.at(-1)?.body).answer;

  test('is answered on the screen, in figures, beside what is wanted', () => {
    const asked = about(bolts, 'last readings');
    expect(answer(asked)).toEqual(['Stud 1, pass 1, 24 N·m.']);
    expect(workView(asked.state, asked.events.at(-1)?.body).call).toEqual(shown(bolts).call);
  });
  test('stands there until the next question, or until anything else happens', () => {
    const asked = about(about(bolts, 'last readings'), 'left');
    expect(answer(asked)?.[0]).toMatch(/^In this pass, \d to do\.$/);
    for (const after of [next, reading('24'), { kind: 'stand by' } as const])
      expect(answer(tell(asked, after))).toBeNull();
  });
  test('holds no value that the second person has not read', () => {
    const blind = tell(start(procedureOf([tighten('ring', { confirm: 'witness each' })])), reading('24.5'));
    const asked = about(blind, 'why');
    expect(answer(asked)).toEqual([expect.stringMatching(/^Two people read the tool/)]);
    expect(answer(asked)?.join(' ')).not.toMatch(/\d/);
  });
  test('is no answer where what is wanted was to be said once more: that stands there', () => {
    expect(answer(about(bolts, 'slowly'))).toBeNull();
    expect(answer(tell(bolts, { kind: 'say again' }))).toBeNull();
  });
});
