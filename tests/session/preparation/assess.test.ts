/** What stops a job before its first step, and what only warns: each rule broken once, in the words a mechanic reads. */
import { describe, expect, test } from 'vitest';
import {
  demo,
  dial,
  fireBoat,
  indicating,
  newtonMetres,
  procedureOf,
  setting,
  step,
  tighten,
  torquePass,
} from '../play.ts';
import { findings, TODAY, TOMORROW, YESTERDAY } from './entering.ts';

const sure = { class: 'B' };
/** A small job with everything in order but what a test changes. */
const job = (more: object = {}, steps: readonly object[] = [tighten('ring')]) =>
  procedureOf(steps, {
    tools: [
      { ...indicating, ...sure },
      { ...dial, ...sure },
    ],
    ...more,
  });

describe('a job in order', () => {
  test('is prepared: nothing is found about it', () => expect(findings(job())).toEqual([]));
  test.each([
    ['ropeway', demo()],
    ['fire boat', fireBoat()],
  ])('such as the %s, with its sling', (_, procedure) => expect(findings(procedure)).toEqual([]));
});

describe('people', () => {
  test('nobody named', () =>
    expect(findings(job(), { mechanic: '  ' })).toEqual([
      'stops: Nobody is named as mechanic. Type the name: the record says by whom the work was done.',
    ]));
  test('one name in both roles, however it is written', () =>
    expect(findings(job(), { mechanic: 'Ada', second: ' ADA ' })).toEqual([
      'stops: The second person must be somebody else: nobody can witness their own work.',
    ]));
  test('fewer than the procedure needs', () =>
    expect(findings(job({ persons: 3 }))).toEqual([
      'stops: The procedure needs 3 people, and 2 are named. Name the others, or wait for them.',
    ]));
  test('helpers count, and nobody counts twice', () => {
    expect(findings(job({ persons: 3 }), { helpers: 'Bo' })).toEqual([]);
    expect(findings(job({ persons: 4 }), { helpers: 'Bo, bo , ,' })).toHaveLength(1);
  });
  test('a second person who is wanted later and not named yet', () =>
    expect(findings(job({}, [step('look', 'witness', { what: 'all' })]), { second: '' })).toEqual([
      'warns: “look” needs a second person, and none is named. One can join during the work; until then it stops there.',
    ]));
});

describe('approved data', () => {
  test('nobody said that it is current', () =>
    expect(findings(demo(), { isCurrentData: false })).toEqual([
      'stops: Nobody has confirmed yet that Invented manual TM-R-41, chapter 7, revision C of 2026-02-10, is the current approved data. Compare it with the register; if it is not, do not work by it.',
    ]));
});

describe('calibration', () => {
  const labelled = (due: string) => findings(job(), { calibrations: new Map([['wrench', due]]) });

  test('that ended yesterday', () =>
    expect(labelled(YESTERDAY)).toEqual([
      'stops: Indicating wrench: its calibration ended on 2026-11-25, and today is 2026-11-26. Take another of the same kind and enter the date on its label.',
      'warns: Indicating wrench: the label says 2026-11-25, the procedure file says 2031-03-31. The label counts.',
    ]));
  test('that ends today still holds', () =>
    expect(labelled(TODAY)).toEqual([expect.stringMatching(/^warns: .*The label counts/)]));
  test('whose label is a day that is none', () =>
    expect(labelled('2027-02-30')).toEqual([
      'stops: Calibration of Indicating wrench: “2027-02-30” is no day: write it as 2027-01-31.',
    ]));
  test.each([
    ['where the file has a date', indicating],
    ['where it has none', { ...indicating, calibrationDue: undefined }],
  ])('whose label nobody has read, %s', (_, tool) =>
    expect(findings(job({ tools: [{ ...tool, ...sure }] }), { calibrations: new Map([['wrench', ' ']]) })).toEqual([
      'stops: Indicating wrench: its calibration date is not entered. Read it off the label; where none stands there, take one that has it.',
    ]),
  );
  test('of a tool of a step that does not apply is nobody’s concern', () => {
    const only = { applies: { condition: 'wet', is: true } };
    const some = job({ conditions: [{ id: 'wet', question: 'Is it wet?' }] }, [
      step('do', 'do'),
      tighten('ring', only),
    ]);
    const late = { calibrations: new Map([['wrench', YESTERDAY]]) };
    expect(findings(some, late)).toHaveLength(2);
    expect(findings(some, { ...late, conditions: new Map([['wet', false]]) })).toEqual([]);
  });
});

describe('range and accuracy of a tool', () => {
  const three = (...targets: readonly [string, string, string][]) =>
    tighten('ring', { title: 'Tighten the ring', passes: targets.map((each) => torquePass(...each)) });
  const rising = three(['24', '23', '25'], ['48', '46', '50'], ['72', '68', '76']);

  test('a pass above its full scale', () =>
    expect(findings(job({}, [rising]))).toEqual([
      'stops: wrench reaches 60 N·m; pass 3 of “Tighten the ring” needs 72 N·m. Take a tool that can, and have the procedure name it.',
    ]));
  test('a pass below a fifth of its full scale, in the unit of the tool', () => {
    const pass = torquePass('8', '7', '9');
    expect(findings(job({}, [tighten('ring', { passes: [pass] })]))).toEqual([
      'stops: wrench is accurate from 12 N·m; pass 1 of “ring” needs 8 N·m. Take a tool that can, and have the procedure name it.',
    ]);
  });
  test('a setting tool without a mark in the window', () =>
    expect(
      findings(
        job({ tools: [{ ...setting, ...sure, resolution: newtonMetres('2') }] }, [
          tighten('ring', { passes: [torquePass('25', '24.5', '25.5')] }),
        ]),
      ),
    ).toContainEqual(
      'stops: wrench has a mark every 2 N·m; pass 1 of “ring” needs 25 N·m. No mark of the tool is inside the window. Take a tool that can, and have the procedure name it.',
    ));
  test('marks that are too coarse', () =>
    expect(findings(job({ tools: [{ ...indicating, ...sure, resolution: newtonMetres('5') }] }))).toEqual([
      "warns: wrench: pass 1 of “ring” needs 24.5 N·m. The tool's marks, 5 N·m apart, are too coarse for 24.5 N·m.",
    ]));
  test('an error, by its class, that fills the window', () =>
    expect(findings(job({}, [tighten('ring', { passes: [torquePass('24.5', '24', '25')] })]))).toEqual([
      'warns: Indicating wrench: its error of ±4 % is more than the window of pass 1 of “ring” leaves. A value that reads inside may be outside; take a finer tool where there is one.',
    ]));
  test('neither class nor error', () =>
    expect(findings(job({ tools: [indicating] }))).toEqual([
      'warns: Indicating wrench: neither class nor error is stated, so nothing says how far to trust it.',
    ]));
  test('with the least running torque added, where it is known', () => {
    const drag = { runDown: { used: true, minimum: newtonMetres('3'), tool: 'dial' }, title: 'Tighten the ring' };
    const passes = [torquePass('58', '57', '59')];
    const error = { maximumError: '1' };
    const exact = {
      tools: [
        { ...indicating, ...error },
        { ...dial, ...error },
      ],
    };
    expect(findings(job(exact, [tighten('ring', { passes })]))).toEqual([]);
    expect(findings(job(exact, [tighten('ring', { passes, ...drag })]))).toEqual([
      'stops: wrench reaches 60 N·m; pass 1 of “Tighten the ring” needs 61 N·m. Take a tool that can, and have the procedure name it.',
    ]);
  });
  test('running torque that its tool cannot show', () =>
    expect(
      findings(job({}, [tighten('ring', { runDown: { used: true, minimum: newtonMetres('0.5'), tool: 'dial' } })])),
    ).toContainEqual(
      expect.stringMatching(/^stops: dial is to measure the running torque in “ring”\. .*0\.5 N·m is below 2 N·m/),
    ));
  test('a wide range of tools is judged in the unit of each', () => {
    const inches = {
      ...indicating,
      ...sure,
      range: { min: { value: '40', unit: 'lbf·in' }, max: { value: '250', unit: 'lbf·in' } },
      resolution: { value: '1', unit: 'lbf·in' },
    };
    expect(findings(job({ tools: [inches] }, [tighten('ring', { passes: [torquePass('30', '28', '32')] })]))).toEqual([
      expect.stringMatching(/^stops: wrench reaches 250 lbf·in; pass 1 of “ring” needs 265\.522 lbf·in/),
    ]);
  });
  test('with its adapter, at the wrench', () => {
    const crow = {
      adapters: [
        { id: 'crow', name: 'Crowfoot', length: { value: '100', unit: 'mm' }, angle: { value: '180', unit: '°' } },
      ],
      tools: [{ ...indicating, ...sure, lever: { value: '300', unit: 'mm' } }],
    };
    expect(findings(job(crow, [tighten('ring', { adapter: 'crow', passes: [torquePass('45', '42', '48')] })]))).toEqual(
      [expect.stringMatching(/^stops: wrench reaches 60 N·m; pass 1 of “ring” needs 67\.5 N·m on the wrench/)],
    );
  });
});

describe('an adapter', () => {
  const crowfoot = (length: string) => findings(fireBoat(), { adapters: new Map([['crowfoot', length]]) });

  test('that was not measured', () =>
    expect(crowfoot('')).toEqual([
      'warns: Crowfoot adapter, 9/16 in, set at 45 degrees: not measured, so settings take the 1.5 in of the procedure file. Measure from the middle of the drive to the middle of the fastener.',
    ]));
  test('a millimetre apart is what a rule is read to', () => expect(crowfoot('1.53')).toEqual([]));
  test('more than a millimetre apart: said, with what it changes', () =>
    expect(crowfoot('1.8')).toEqual([
      // 10 / (10 + 1.8 · cos 45°) = 0.8871 instead of 10 / (10 + 1.5 · cos 45°) = 0.9041, of 87.5 + 20 and 175 + 20.
      'warns: Crowfoot adapter, 9/16 in, set at 45 degrees measures 1.8 in; the procedure file says 1.5 in, 7.6 mm apart. Settings follow the measured length: pass 2 95.4 lbf·in instead of 97.2 lbf·in; pass 3 173 lbf·in instead of 176.3 lbf·in; pass 4 173 lbf·in instead of 176.3 lbf·in.',
    ]));
  test('of quite another length: a slip, or another adapter', () =>
    expect(crowfoot('15')).toEqual([
      'stops: Crowfoot adapter, 9/16 in, set at 45 degrees measures 15 in; the procedure file says 1.5 in. That is another adapter, or a slip: measure again, and take the one that the procedure names.',
    ]));
  test.each([
    ['1,5', /has a comma: write it with a point/],
    ['one', /is no plain number/],
    ['-1', /not above zero/],
    ['0', /not above zero/],
    ['1e9', /is no plain number/],
    ['1234567890123', /is no plain number/],
  ])('of a length written as %j', (text, why) => {
    const [found, ...more] = crowfoot(text);
    expect(found).toMatch(/^stops/);
    expect(found).toMatch(why);
    expect(more).toEqual([]);
  });
});

describe('a consumable', () => {
  const oil = (day: string) =>
    findings(demo(), {
      expiries: new Map([
        ['gear-oil', day],
        ['new-seal', TOMORROW],
      ]),
    });

  test('that expired yesterday', () =>
    expect(oil(YESTERDAY)).toEqual([
      'stops: clean gear oil: it expired on 2026-11-25, and today is 2026-11-26. Throw it away and fetch a fresh one.',
    ]));
  test('whose last day is today may be used', () => expect(oil(TODAY)).toEqual([]));
  test('whose date was not read', () =>
    expect(oil('')).toEqual([
      'stops: clean gear oil: its use-by date is not entered. Read it off the packing; if it has none, fetch another.',
    ]));
  test('whose date is none', () => expect(oil('soon')).toEqual([expect.stringMatching(/^stops: .*“soon” is no day/)]));
  test('that does not expire is not asked for', () => {
    expect(demo().consumables.map(({ id, expires }) => [id, expires])).toContainEqual(['lint-free-cloth', false]);
    expect(oil(TOMORROW)).toEqual([]);
  });
});

describe('the container', () => {
  const pan = (capacity: string) => findings(demo(), { capacity });

  test('that is too small for what drains, with its margin', () =>
    expect(pan('7')).toEqual([
      'stops: The container is too small: it holds 7.0 L, but 7.2 L may be needed: 6.0 L and a margin of 20 %. Put a larger one under it and enter what it holds.',
    ]));
  test('that holds it just so', () => expect(pan('7.2')).toEqual([]));
  test('of a size with a comma', () =>
    expect(pan('7,5')).toEqual([expect.stringMatching(/^stops: Container: “7,5” has a comma/)]));
  test('that nobody names', () => {
    const component = { name: 'Cooler', dryMass: { value: '10', unit: 'kg' }, drains: { value: '3', unit: 'L' } };
    expect(findings(job({ component }))).toEqual([
      'warns: 3.0 L may drain, and no container is named. Enter what the one in place holds.',
    ]);
    expect(findings(job({ component }), { capacity: '4' })).toEqual([]);
    expect(findings(job({ component }), { capacity: '3.5' })).toHaveLength(1);
  });
});

describe('hazards', () => {
  test('each is acknowledged by itself', () => {
    const all = findings(demo(), { hazards: new Set() });
    expect(all).toEqual(['stops: 5 hazards are not acknowledged yet. Read each one and acknowledge it.']);
  });
  test('one is left', () => {
    const mind = { hazards: [{ signal: 'warning', consequence: 'person', text: 'Mind.' }] };
    expect(findings(job({}, [step('do', 'do', mind)]), { hazards: new Set() })).toEqual([
      'stops: One hazard is not acknowledged yet. Read each one and acknowledge it.',
    ]);
  });
  test('the same words in two steps are acknowledged once, and of steps that do not apply not at all', () => {
    const mind = { hazards: [{ signal: 'caution', consequence: 'person', text: 'Mind.' }] };
    const rain = {
      hazards: [{ signal: 'danger', consequence: 'person', text: 'Rain.' }],
      applies: { condition: 'wet', is: true },
    };
    const some = job({ conditions: [{ id: 'wet', question: 'Is it wet?' }] }, [
      step('a', 'do', mind),
      step('b', 'do', mind),
      step('c', 'do', rain),
    ]);
    expect(findings(some, { hazards: new Set() })[0]).toMatch(/^stops: 2 hazards/);
    expect(findings(some, { hazards: new Set(), conditions: new Map([['wet', false]]) })[0]).toMatch(
      /^stops: One hazard/,
    );
    expect(findings(some, { hazards: new Set(['a/0']), conditions: new Map([['wet', false]]) })).toEqual([]);
  });
});

describe('the microphone', () => {
  const microphones = [{ person: 'Ada', fitness: 'do not start by voice', at: '2026-11-26T08:00:00.000Z' }] as const;
  test('that does not hear somebody well enough warns: the work is done without it', () =>
    expect(findings(job(), {}, { microphones })).toEqual([
      'warns: Ada was not heard well enough at the microphone check: the job starts muted, and pedal, keys and touch do the work.',
    ]));
});
