/** From a preparation to the first events of a session, and what the work makes of them. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import type { Procedure } from '../../../src/procedure/procedure.ts';
import { EventBodySchema } from '../../../src/record/event-schema.ts';
import type { EventBody } from '../../../src/session/event.ts';
import { begin, fold } from '../../../src/session/fold.ts';
import type { Entered } from '../../../src/session/preparation/entered.ts';
import type { PreparedFact } from '../../../src/session/preparation/fact.ts';
import { factInWords } from '../../../src/session/preparation/in-words.ts';
import { prepare } from '../../../src/session/preparation/prepare.ts';
import { expiriesIn } from '../../../src/session/preparation/recorded.ts';
import { settingOf } from '../../../src/session/setting.ts';
import { currentCall, currentStep, openCondition, type SessionState } from '../../../src/session/state.ts';
import { toolTroubles } from '../../../src/session/tools.ts';
import { goOpenly } from '../anything.ts';
import {
  demo,
  eventOf,
  fireBoat,
  people,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
  type Play,
} from '../play.ts';
import { inOrder, TODAY, TOMORROW, YESTERDAY } from './entering.ts';

const seen = { day: TODAY, microphones: [] };
const eventsOf = (procedure: Procedure, changes: Partial<Entered> = {}): readonly EventBody[] => {
  const prepared = prepare(procedure, inOrder(procedure, changes), seen);
  if (prepared.kind === 'not prepared') throw new Error(JSON.stringify(prepared.stops));
  return prepared.events;
};
const stateOf = (procedure: Procedure, events: readonly EventBody[]): SessionState =>
  events.map(eventOf).reduce<SessionState>(fold, begin(procedure, people));
const begun = (procedure: Procedure, changes: Partial<Entered> = {}): Play => ({
  ...start(procedure),
  state: stateOf(procedure, eventsOf(procedure, changes)),
});
const lines = (procedure: Procedure, events: readonly EventBody[]): readonly string[] =>
  events.flatMap((body) => (body.kind === 'prepared' ? [factInWords(body.fact, procedure)] : []));

describe('a preparation that something stops', () => {
  test('begins nothing, and says what stops it and not what only warns', () => {
    const entered = inOrder(fireBoat(), { isCurrentData: false, handling: 'two persons' });
    const prepared = prepare(fireBoat(), entered, seen);
    expect(prepared.kind).toBe('not prepared');
    if (prepared.kind === 'not prepared') expect(prepared.stops.map(({ field }) => field)).toEqual(['approved data']);
  });
});

describe('a preparation in order', () => {
  test('goes into the record a fact at a time, in the words of an auditor', () =>
    expect(
      lines(
        demo(),
        eventsOf(demo(), { capacity: '12', helpers: 'Bo', calibrations: new Map([['wrench-60', '2027-03-31']]) }),
      ),
    ).toEqual([
      'Compared with the register, it is the current approved data: Invented manual TM-R-41, chapter 7, revision C, issued 2026-02-10',
      'Bo helps',
      'Indicating torque wrench, 5 to 60 N·m: calibration due 2027-03-31, read off its label',
      'new round seal: use by 2026-11-27',
      'clean gear oil: use by 2026-11-27',
      'The container holds 12 L; with the margin 7.2 L may be needed',
      '33.2 kg are carried by sling or hoist; 11.1 kg are recommended for one person, so the least is sling or hoist',
      'Acknowledged before the work: warning, The drive can start without notice and draw in a hand. (Make safe)',
      'Acknowledged before the work: warning, The cooler holds oil and weighs about thirty three kilograms. Two persons or a sling. (Release the ring)',
      'Acknowledged before the work: caution, About two litres stay inside. Keep both ports up from here on. (Drain the cooler)',
      'Acknowledged before the work: caution, Dirt in an open oil line ruins the gearbox bearings. (Open the oil lines)',
      'Acknowledged before the work: caution, Do not let the studs carry the cooler sideways. (Refit)',
      'Begun despite this warning: Indicating torque wrench, 5 to 60 N·m: the label says 2027-03-31, the procedure file says 2031-03-31. The label counts.',
    ]));

  test('is what the record lets in, whatever was entered', () => {
    const day = fc.constantFrom('', 'soon', YESTERDAY, TODAY, TOMORROW, '2027-02-30', '9999-12-31');
    const size = fc.constantFrom('', '1,5', '1.4', '1.5', '1.8', '2.2', '0', '-3', '12', '1e3', '99999999999');
    const entered = fc.record({
      second: fc.constantFrom('', 'Second person', 'Mechanic', '\ud800'),
      helpers: fc.constantFrom('', 'Bo, Al', 'Mechanic', ',,'),
      isCurrentData: fc.constant(true),
      conditions: fc.option(fc.boolean()).map((is) => new Map(is === null ? [] : [['salt-water', is]])),
      calibrations: fc.tuple(day, day).map(
        ([one, other]) =>
          new Map([
            ['wrench-250', one],
            ['dial-75', other],
            ['wrench-60', one],
          ]),
      ),
      adapters: size.map((length) => new Map([['crowfoot', length]])),
      expiries: day.map(
        (each) =>
          new Map([
            ['gear-oil', each],
            ['gasket', each],
          ]),
      ),
      capacity: size,
      handling: fc.constantFrom(
        'one person',
        'two persons',
        'three persons',
        'sling or hoist',
        'stand or support',
        null,
      ),
    });
    fc.assert(
      fc.property(fc.constantFrom(demo(), fireBoat()), entered, (procedure, changes) => {
        const prepared = prepare(procedure, inOrder(procedure, changes), seen);
        if (prepared.kind === 'not prepared') {
          expect(prepared.stops.length).toBeGreaterThan(0);
          return;
        }
        for (const body of prepared.events) {
          expect(v.safeParse(EventBodySchema, body).success).toBe(true);
          if (body.kind === 'prepared') expect(factInWords(body.fact, procedure)).toMatch(/^\S.*\S$/);
        }
        const state = stateOf(procedure, prepared.events);
        expect(state.prepared.length).toBe(prepared.events.filter(({ kind }) => kind === 'prepared').length);
      }),
      { numRuns: 300 },
    );
  });

  test('is not work on the unit: no step is done by it, and no break begins', () => {
    const { state } = begun(demo());
    expect(state).toMatchObject({ at: 0, phase: 'working', lastAt: null, acknowledged: new Set() });
  });
});

describe('the work after it', () => {
  const untilTightening = (play: Play): Play => {
    let at = play;
    while (currentCall(at.state)?.pass.kind !== 'torque') at = goOpenly(at, 1);
    return at;
  };
  const called = ({ state }: Play) => {
    const [at, call] = [currentStep(state), currentCall(state)];
    return at && call && settingOf(state, at, call);
  };

  test('sets the wrench by the measured length of the adapter, and the record says by which', () => {
    const [filed, measured] = [begun(fireBoat()), begun(fireBoat(), { adapters: new Map([['crowfoot', '1.8']]) })].map(
      untilTightening,
    );
    if (!filed || !measured) throw new Error('It never came to a pass.');
    expect(called(filed)?.value).toEqual({ value: '99', unit: 'lbf·in' });
    // 109.5 · 10 / (10 + 1.8 · cos 45°) = 97.14
    expect(called(measured)?.value).toEqual({ value: '97', unit: 'lbf·in' });
    const basis = tell(measured, reading('97')).state.readings.at(-1)?.basis;
    expect(basis).toMatchObject({ of: 'torque', adapter: { length: { value: '1.8', unit: 'in' } } });
  });
  test('judges a tool anew where the same steps are worked with another label', () => {
    const job = procedureOf([tighten('ring')]);
    const [ring] = job.steps;
    if (ring?.kind !== 'tighten') throw new Error('There is no ring.');
    const labelled = (due: string) => ({
      ...stateOf(job, [{ kind: 'prepared', fact: { of: 'tool', tool: 'wrench', calibrationDue: due, from: 'label' } }]),
      day: TODAY,
    });
    expect(toolTroubles(labelled(TOMORROW), ring, null)).toEqual([]);
    expect(toolTroubles(labelled(YESTERDAY), ring, null)).toHaveLength(1);
    expect(toolTroubles(labelled(TOMORROW), ring, null)).toEqual([]);
  });
  test('refuses a tool whose label runs out on a later day of the same session', () => {
    const play = begun(procedureOf([tighten('ring')]), { calibrations: new Map([['wrench', TODAY]]) });
    const on = (day: string): Play => ({ ...play, state: { ...play.state, day } });
    expect(refused(tell(on(TODAY), reading('24.5')))).toBeNull();
    expect(refused(tell(on(TOMORROW), reading('24.5')))).toMatchObject({ code: 'tool not usable' });
  });
  test('knows until when each consumable may be used', () =>
    expect(expiriesIn(begun(demo()).state.prepared)).toEqual(
      new Map([
        ['new-seal', TOMORROW],
        ['gear-oil', TOMORROW],
      ]),
    ));
  test('still wants each warning acknowledged by its own word before its step', () => {
    const mind = { hazards: [{ signal: 'warning', consequence: 'person', text: 'Mind.' }] };
    expect(refused(tell(begun(procedureOf([step('do', 'do', mind)])), { kind: 'next' }))).toEqual({
      code: 'warning first',
    });
  });
});

describe('a question about the unit', () => {
  test('that was answered is not asked again, and what does not apply is skipped', () => {
    const dry = goOpenly(begun(fireBoat(), { conditions: new Map([['salt-water', false]]) }), 3);
    expect(currentStep(dry.state)?.id).toBe('drain');
    expect([...dry.state.skippedSteps]).toEqual(['rinse']);
  });
  test('that was not is asked in the work', () => {
    let at = begun(fireBoat());
    while (!openCondition(at.state)) at = goOpenly(at, 1);
    expect(currentStep(at.state)?.id).toBe('rinse');
  });
  test('on which the first steps depend skips them at once', () => {
    const only = (condition: string) => ({ applies: { condition, is: true } });
    const job = procedureOf([step('a', 'do', only('wet')), step('b', 'do', only('old')), step('c', 'do')], {
      conditions: [
        { id: 'wet', question: 'Is it wet?' },
        { id: 'old', question: 'Is it old?' },
      ],
    });
    const no = new Map([
      ['wet', false],
      ['old', false],
    ]);
    expect(
      eventsOf(job, { conditions: no })
        .map(({ kind }) => kind)
        .filter((kind) => kind !== 'prepared'),
    ).toEqual(['condition answered', 'step skipped', 'condition answered', 'step skipped']);
    expect(currentStep(begun(job, { conditions: no }).state)?.id).toBe('c');
    expect(currentStep(begun(job, { conditions: new Map([['old', false]]) }).state)?.id).toBe('a');
  });
});

describe('a record from elsewhere', () => {
  const state = (fact: PreparedFact): SessionState => stateOf(fireBoat(), [{ kind: 'prepared', fact }]);
  const inches = (value: string) => ({ value, unit: 'in' }) as const;

  test('with a length that gives no setting is read as if it were not measured', () => {
    const measured = (value: string): PreparedFact => ({
      of: 'adapter',
      adapter: 'crowfoot',
      measured: inches(value),
      filed: inches('1.5'),
    });
    expect(state(measured('-1')).procedure).toEqual(fireBoat());
    expect(state(measured('1.8')).procedure.adapters[0]?.length.value).toBe(1.8);
  });
  test('that names what the procedure does not have changes nothing, and is shown by the name', () => {
    const strange: readonly PreparedFact[] = [
      { of: 'tool', tool: 'none', calibrationDue: TODAY, from: 'label' },
      { of: 'adapter', adapter: 'none', measured: inches('1'), filed: inches('1') },
      { of: 'consumable', consumable: 'none', expires: TODAY },
      { of: 'hazard', step: 'none', index: 3 },
    ];
    for (const fact of strange) {
      expect(state(fact).procedure).toEqual(fireBoat());
      expect(factInWords(fact, fireBoat())).toContain('none');
    }
  });
  test.each(['2026-02-30', '26-01-01', ''])(
    'with a calibration to “%s”, which is no day, is refused at the door',
    (due) =>
      expect(
        v.safeParse(EventBodySchema, {
          kind: 'prepared',
          fact: { of: 'tool', tool: 'dial-75', calibrationDue: due, from: 'label' },
        }).success,
      ).toBe(false),
  );
});
