import { describe, expect, test } from 'vitest';
import { recordSheet } from '../../src/record/record-sheet.ts';
import type { SessionEvent } from '../../src/session/event.ts';
import type { Meaning } from '../../src/session/intent.ts';
import type { PreparedFact } from '../../src/session/preparation/fact.ts';
import { affirm, correction, eventOf, happened, negative, next, reading, tell, type Play } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { demoEntries } from '../../src/cli/demo-session.ts';
import { opening, recordIn, rehashed, sealAll } from './sealed.ts';

const OPTIONS = {
  timeZone: 'Europe/Berlin',
  made: '2026-04-01T10:00:00.000Z',
  root: 'a'.repeat(64),
  thumbprint: 'thumbprint',
};

/**
 * A small session, checked by hand. One entry a second from 2026-03-01 00:00:00 UTC: 0 opened, 1 step "Fit" done, 2 bolt 1
 * read 15 (over), 3 rejected, 4 read 12, 5 confirmed, 6 bolt 3 read 11, 7 confirmed, 8 corrected to 12.5, 9 confirmed,
 * 10 standing by, 11 gone on with. Bolt 2 and step "Look" are never done.
 */
const play: Play = tell(
  await opening(smallProcedure),
  next,
  ...[reading('15'), negative, reading('12'), affirm],
  ...[reading('11'), affirm, correction('12.5'), affirm],
  ...[{ kind: 'stand by' } as const, { kind: 'continue' } as const],
);
const played = await demoEntries();
const demo = await recordIn(played, played[0]?.session);
const recorded = async (events: readonly SessionEvent[]) => recordIn(await sealAll(events));
const record = await recorded(play.events);
const sheet = recordSheet(record, OPTIONS);

describe('the sound around readings', () => {
  const soundOf = async (sound: 'agreed' | 'not agreed' | undefined) => {
    const events = play.events.map((event): SessionEvent => {
      const { body } = event;
      return body.kind === 'opened' && sound !== undefined ? { ...event, body: { ...body, sound } } : event;
    });
    return recordSheet(await recorded(events), OPTIONS).sound;
  };
  test('stands with who agreed to it, and when', async () => {
    const { mechanic, second } = play.state.people;
    expect(await soundOf('agreed')).toBe(
      `It was entered that ${mechanic}${second === null ? '' : ` and ${second}`} agree (2026-03-01 00:00:00Z) that a few seconds of sound around each reading are kept.`,
    );
  });
  test('stands with that not everybody agreed', async () =>
    expect(await soundOf('not agreed')).toBe('That everybody agrees to keep sound was not entered: none was kept.'));
  test('is not spoken of where nobody was asked', async () => expect(await soundOf(undefined)).toBeNull());
});

describe('the record sheet of a small session', () => {
  test('is of the session that is described here', () =>
    expect(record.entries.map(({ body }) => body.kind)).toEqual([
      'opened',
      'step done',
      'reading captured',
      'reading rejected',
      'reading captured',
      'reading confirmed',
      'reading captured',
      'reading confirmed',
      'reading captured',
      'reading confirmed',
      'stood by',
      'continued',
    ]));
  test('names the approved data and the component', () => {
    expect(sheet.title).toBe('Small cover');
    expect(sheet.approvedData).toEqual([
      ['Document', 'Invented sheet 1'],
      ['Revision', 'A'],
      ['Issued', 'not stated'],
      ['Procedure file', 'small-cover'],
    ]);
    expect(sheet.isInvented).toBe(true);
    expect(sheet.component).toEqual([
      ['Component', 'Small cover'],
      ['Part number', 'not stated'],
      ['Dry mass', '2 kg'],
    ]);
  });
  test('says whether the record is whole, and that the work was not closed', () => {
    expect(sheet).toMatchObject({ isIntact: true, isClosed: false });
    expect(sheet.verification).toBe('Intact: 12 entries, each linked to the one before.');
  });
  test('has a line for each fastener with every value that was read, and what became of each', () => {
    const [table, ...more] = sheet.tables;
    expect(more).toEqual([]);
    expect(table?.heading).toEqual([
      'Cover, three bolts',
      'Tool: Indicating wrench, 5 to 60 N·m',
      'Judged by: the window as stated',
    ]);
    expect(
      table?.lines.map(({ fastener, pass, target, window, verdict, values }) => [
        fastener,
        pass,
        target,
        window,
        verdict,
        values.map(({ entry, value, verdict, fate, by }) => `${entry}: ${value}, ${verdict}, ${fate}, ${by}`),
      ]),
    ).toEqual([
      [
        1,
        '1 final',
        '12 N·m',
        '11.0 to 13.0 N·m',
        'inside',
        ['2: 15 N·m, OVER, rejected at its read-back, Mechanic', '4: 12 N·m, inside, stands, Mechanic'],
      ],
      [2, '1 final', '12 N·m', '', 'OPEN', []],
      [
        3,
        '1 final',
        '12 N·m',
        '11.0 to 13.0 N·m',
        'inside',
        ['6: 11 N·m, inside, corrected, Mechanic', '8: 12.5 N·m, inside, stands, Mechanic'],
      ],
    ]);
  });
  test('has the tool with its calibration, and that it held on the day of use', () =>
    expect(sheet.tools).toEqual([
      {
        name: 'Indicating wrench, 5 to 60 N·m',
        id: 'wrench',
        range: '5 N·m to 60 N·m, marks of 0.5 N·m',
        accuracy: 'indicating',
        calibrationDue: '2031-03-31',
        used: '2026-03-01; calibration held',
      },
    ]));
  test('has each step with its standing, by whom and when', () =>
    expect(sheet.steps.map(({ number, title, standing, by, at }) => [number, title, standing, by, at?.utc])).toEqual([
      [1, 'Fit', 'done', 'Mechanic', '2026-03-01 00:00:01Z'],
      [2, 'Tighten', 'begun', '', undefined],
      [3, 'Look', 'not done', '', undefined],
    ]));
  test('says what is left open', () =>
    expect(sheet.openPoints).toEqual(['Step 2, Tighten: BEGUN', 'Step 3, Look: NOT DONE']));
  test('has people and interruptions, in UTC and in local time with its offset', () => {
    const from = { utc: '2026-03-01 00:00:00Z', local: '2026-03-01 01:00:00 +01:00' };
    expect(sheet.people).toEqual([
      { name: 'Mechanic', role: 'mechanic', from, to: null },
      { name: 'Second person', role: 'second person', from, to: null },
    ]);
    expect(sheet.interruptions.map(({ what, from, to }) => [what, from.utc, to?.utc])).toEqual([
      ['standing by', '2026-03-01 00:00:10Z', '2026-03-01 00:00:11Z'],
    ]);
    expect(sheet.made.local).toBe('2026-04-01 12:00:00 +02:00');
  });
  test('ends with the work, and the page stood since the work, also where sounds were deleted later', async () => {
    const { length } = play.events;
    const deleted = eventOf({ kind: 'sounds deleted', sounds: ['a'.repeat(64)] }, length);
    const reopened = eventOf({ kind: 'reopened' }, length + 1);
    const of = async (...more: readonly SessionEvent[]) =>
      recordSheet(await recorded([...play.events, ...more]), OPTIONS);
    expect((await of(deleted)).ended).toEqual(sheet.ended);
    expect((await of(deleted, reopened)).interruptions.at(-1)?.from).toEqual(sheet.ended);
  });
  test('has the hashes by which it is told from any other', () => {
    const hashes = new Map(sheet.hashes);
    const [first] = record.entries;
    expect(hashes.get('Head: hash of the last entry (SHA-256)')).toBe(record.entries.at(-1)?.hash);
    expect(hashes.get('Procedure (SHA-256)')).toBe(
      first?.body.kind === 'opened' ? first.body.procedureHash : undefined,
    );
    expect(hashes.get('Merkle root over the entries (RFC 6962)')).toBe(OPTIONS.root);
    expect(hashes.get('Key of the seal: thumbprint (RFC 7638)')).toBe('thumbprint');
  });
});

describe('the record sheet', () => {
  test('of a broken record says where it is broken, and has nothing of what comes after', async () => {
    const entries = [...record.entries];
    const sixth = entries[6];
    if (!sixth) throw new Error('The record is too short.');
    entries[6] = await rehashed(sixth, { person: 'Somebody else' });
    const broken = recordSheet(await recordIn(entries), OPTIONS);
    expect(broken.isIntact).toBe(false);
    expect(broken.verification).toMatch(/^NOT INTACT at entry 7: .* Of 12 entries, only what comes before it \(7\)/);
    expect(broken.tables[0]?.lines[2]?.values.map(({ entry }) => entry)).toEqual([6]);
  });
  test('says of what is done by hand who did it last, and when, as of a value', async () => {
    const [fit, ring, look] = smallProcedure.steps;
    if (ring?.kind !== 'tighten' || !fit || !look) throw new Error('The small procedure has other steps.');
    const passes = [{ kind: 'snug' as const, name: 'snug' }, ...ring.passes];
    const { events } = tell(
      await opening({ ...smallProcedure, steps: [fit, { ...ring, passes }, look] }),
      next,
      next,
      next,
    );
    const [table] = recordSheet(await recorded(events), OPTIONS).tables;
    expect(
      table?.lines.map(({ fastener, pass, verdict, done }) => [
        fastener,
        pass,
        verdict,
        done?.by,
        done?.at.utc,
        done?.entry,
      ]),
    ).toEqual([
      [1, '1 snug', 'by hand', 'Mechanic', '2026-03-01 00:00:02Z', 2],
      [1, '2 final', 'OPEN', undefined, undefined, undefined],
      [2, '1 snug', 'OPEN', undefined, undefined, undefined],
      [2, '2 final', 'OPEN', undefined, undefined, undefined],
      [3, '1 snug', 'by hand', 'Mechanic', '2026-03-01 00:00:03Z', 3],
      [3, '2 final', 'OPEN', undefined, undefined, undefined],
    ]);
  });
  test('says of a calibration that had run out on the day of use', async () => {
    const procedure = structuredClone(smallProcedure);
    for (const tool of procedure.tools) tool.calibrationDue = '2026-03-05';
    const used = tell(await opening(procedure), next, reading('12'), affirm);
    const late = used.events.map((event) => ({ ...event, at: { ...event.at, utc: '2026-03-06T08:00:00.000Z' } }));
    expect(recordSheet(await recorded(late), OPTIONS).tools[0]?.used).toBe('2026-03-06; CALIBRATION HAD RUN OUT');
  });
  test('has what was found before the work, by whom and when; the label of a tool goes before the file', async () => {
    expect(sheet.preparation).toEqual([]);
    const facts: readonly PreparedFact[] = [
      { of: 'helper', name: 'Helper' },
      { of: 'tool', tool: 'wrench', calibrationDue: '2027-01-31', from: 'label' },
      { of: 'warning', sentence: 'Mind the step.' },
    ];
    const [opened] = (await opening(smallProcedure)).events;
    if (!opened) throw new Error('It was not opened.');
    const found = facts.map((fact, i) => eventOf({ kind: 'prepared', fact }, i + 1));
    const made = recordSheet(await recorded([opened, ...found]), OPTIONS);
    expect(made.preparation.map(({ what, isWarning, by }) => [what, isWarning, by])).toEqual([
      ['Helper helps', false, 'Mechanic'],
      ['Indicating wrench, 5 to 60 N·m: calibration due 2027-01-31, read off its label', false, 'Mechanic'],
      ['Begun despite this warning: Mind the step.', true, 'Mechanic'],
    ]);
    expect(made.preparation[0]?.at.utc).toBe('2026-03-01 00:00:01Z');
    expect(made.tools[0]?.calibrationDue).toBe('2027-01-31, read off its label');
    expect(made.people.map(({ name, role }) => [name, role])).toContainEqual(['Helper', 'helper']);
  });
  test('tells who took over, who joined and who left', async () => {
    const begun = await opening(smallProcedure);
    const bodies = [
      { kind: 'second person left', name: 'Second person' },
      { kind: 'handover begun' },
      { kind: 'handed over', from: 'Mechanic', to: 'Another' },
      { kind: 'second person joined', name: 'Third person' },
    ] as const;
    const { people, interruptions } = recordSheet(
      await recorded([...begun.events, ...bodies.map((body, i) => eventOf(body, i + 1))]),
      OPTIONS,
    );
    expect(people.map(({ name, role, from, to }) => [name, role, from.utc.slice(-3), to?.utc.slice(-3)])).toEqual([
      ['Mechanic', 'mechanic', '00Z', '03Z'],
      ['Second person', 'second person', '00Z', '01Z'],
      ['Another', 'mechanic', '03Z', undefined],
      ['Third person', 'second person', '04Z', undefined],
    ]);
    expect(interruptions.map(({ what }) => what)).toEqual(['handover']);
  });
});

describe('the steps on a record sheet', () => {
  const dirty: Meaning = { kind: 'answer', outcome: 'dirty' };
  const clean: Meaning = { kind: 'answer', outcome: 'clean' };
  const looks = {
    ...smallProcedure,
    steps: [
      {
        id: 'look',
        kind: 'check' as const,
        title: 'Look',
        text: 'Is it clean?',
        outcomes: [
          { id: 'clean', text: 'It is clean.', then: 'go on' as const },
          { id: 'dirty', text: 'Clean it.', then: 'stay' as const },
        ],
      },
      { id: 'end', kind: 'witness' as const, title: 'End', text: 'Look.', what: 'the cover' },
    ],
  };
  test('show each answer and each word of the second person, the first “no” too', async () => {
    const saysNo = { kind: 'witness says', agrees: false } as const;
    const { events } = tell(await opening(looks), ...[dirty, clean, { kind: 'back' } as const, clean, saysNo]);
    expect(recordSheet(await recorded(events), OPTIONS).steps.map(({ state }) => state)).toEqual([
      [
        'answered: Clean it. (ANSWERED ANEW)',
        'answered: It is clean. (ANSWERED ANEW)',
        'done 2026-03-01 00:00:03Z',
        'taken back 2026-03-01 00:00:04Z',
        'answered: It is clean.',
        'done 2026-03-01 00:00:06Z',
      ],
      ['not done', 'NOT AGREED TO by Second person'],
    ]);
  });
  test('say which of them no longer stand, also where a step far before was taken back', async () => {
    const [rest, ring] = smallProcedure.steps;
    const [look, end] = looks.steps;
    if (!ring || !rest || !look || !end) throw new Error('The small procedure has other steps.');
    const says = (agrees: boolean): Meaning => ({ kind: 'witness says', agrees });
    const values: readonly Meaning[] = ['12', '12', '12'].flatMap((value) => [reading(value), affirm]);
    const done = tell(
      await opening({ ...looks, steps: [ring, look, end, rest] }),
      ...values,
      ...[clean, says(false), says(true)],
    );
    const back = tell(done, correction('20'), affirm);
    expect(happened(back).at(-1)).toEqual({ kind: 'step taken back', step: 'tighten' });
    const states = async ({ events }: Play) =>
      recordSheet(await recorded(events), OPTIONS).steps.map(({ state }) =>
        state.map((each) => each.replace(/ [0-9: -]+Z$/, '')),
      );
    const no = 'NOT AGREED TO by Second person (ANSWERED ANEW)';
    expect(await states(done)).toEqual([
      ['done'],
      ['done', 'answered: It is clean.'],
      ['done', no, 'witnessed by Second person'],
      ['not done'],
    ]);
    expect(await states(back)).toEqual([
      ['done', 'taken back', 'begun'],
      ['answered: It is clean. (STEP TAKEN BACK)', 'done', 'taken back', 'not done'],
      [no, 'witnessed by Second person (STEP TAKEN BACK)', 'done', 'taken back', 'not done'],
      ['not done'],
    ]);
    expect((await states(tell(back, correction('12'), affirm, dirty)))[1]).toEqual([
      'answered: It is clean. (ANSWERED ANEW)',
      'done',
      'taken back',
      'answered: Clean it.',
      'not done',
    ]);
  });
});

describe('the points on a record sheet', () => {
  const opens = {
    ...smallProcedure,
    openings: [{ id: 'inlet', name: 'oil inlet', closure: 'plug' as const }],
    steps: [
      { id: 'open', kind: 'do' as const, title: 'Open', text: 'Open it.', opens: ['inlet'] },
      { id: 'end', kind: 'do' as const, title: 'End', text: 'Look.' },
    ],
  };
  test('show each answer, and which of them no longer stands', async () => {
    const pointsAfter = async (...meanings: Parameters<typeof tell>[1][]): Promise<readonly (string | number)[][]> => {
      const { events } = tell(await opening(opens), ...meanings);
      return recordSheet(await recorded(events), OPTIONS).points.map(({ step, what, by }) => [step, what, by]);
    };
    expect(await pointsAfter(negative)).toEqual([[1, 'Oil inlet: not yet closed off', 'Mechanic']]);
    expect(await pointsAfter(negative, affirm)).toEqual([
      [1, 'Oil inlet: not yet closed off (ANSWERED ANEW)', 'Mechanic'],
      [1, 'Oil inlet: closed off', 'Mechanic'],
    ]);
    expect(await pointsAfter(affirm, { kind: 'back' })).toEqual([
      [1, 'Oil inlet: closed off (STEP TAKEN BACK)', 'Mechanic'],
    ]);
  });
});

describe('the record sheet of the demonstration', () => {
  const { tables, openPoints, openings, parts, points, steps, isClosed } = recordSheet(demo, OPTIONS);
  test('has a line for every fastener in every pass', () =>
    expect(tables.map(({ lines }) => lines.length)).toEqual([20, 3, 12]));
  test('tells a value over its window that was confirmed from the one that was read later', () => {
    const line = tables[0]?.lines.find(({ fastener, pass }) => fastener === 4 && pass === '2 final');
    expect(line?.verdict).toBe('inside');
    expect(line?.values.map(({ value, verdict, fate, counts }) => [value, verdict, fate, counts])).toEqual([
      ['27 N·m', 'OVER', 'confirmed, then read again', true],
      ['24.5 N·m', 'inside', 'stands', true],
    ]);
  });
  test('says why a value was asked about', () => {
    const line = tables[0]?.lines.find(({ fastener, pass }) => fastener === 3 && pass === '1 first');
    expect(line?.values.map(({ remarks }) => remarks)).toEqual([['in doubt: digits swapped'], []]);
  });
  test('has the deviation with its reason', () =>
    expect(openPoints).toEqual([
      'Tighten the main ring, stud 4, pass 2: over torque, reason given: “loosened and tightened again”. Decided by Mara Lenz (invented): part replaced (“New nut fitted.”)',
    ]));
  test('has each opening with the steps in which it was closed off and connected again', () => {
    expect(openings.length).toBe(demo.procedure.openings.length);
    for (const { opened } of openings) expect(opened).toMatch(/^step \d+: done, 2026-03-12 /);
  });
  test('has every point as it was answered: openings, caps, seal and criteria, what was counted, what was measured', () => {
    const whats = points.map(({ what }) => what);
    for (const one of [/: closed off$/, /: connected$/, /“.*”: met$/, /used again|replaced/, /: accounted for$/])
      expect(whats.some((what) => one.test(what))).toBe(true);
    const { procedure } = demo;
    const measured = procedure.steps.filter(({ kind }) => kind === 'measure');
    expect(whats.filter((what) => / inside .* to /.test(what)).length).toBe(measured.length);
    // One line for each: what was answered twice stands as it was answered last.
    expect(new Set(points.map(({ step, what }) => `${step} ${what}`)).size).toBe(points.length);
    for (const { step, by } of points) {
      expect(procedure.steps[step - 1]).toBeDefined();
      expect(by).not.toBe('');
    }
  });
  test('has what became of the seal', () =>
    expect(parts).toEqual([
      expect.stringMatching(/^round seal of the oil-line flange \(part number TM-R-41-0718;.*: Reuse it\./),
    ]));
  test('has who witnessed, and that the work was closed', () => {
    expect(steps.find(({ title }) => title === 'Second person looks at the ring')?.state).toEqual([
      'done',
      'witnessed by Tom Brandt (invented)',
    ]);
    expect(isClosed).toBe(true);
  });
});
