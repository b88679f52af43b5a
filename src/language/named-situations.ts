/**
 * Moments of a small invented job, by name: what an utterance means can be asked and tested at each of them. They are
 * reached as a session reaches them, by decisions.
 */
import { readProcedure, type Procedure } from '../procedure/procedure.ts';
import { decide } from '../session/decide.ts';
import type { EventBody, SessionEvent } from '../session/event.ts';
import type { Meaning } from '../session/intent.ts';
import { begin, fold } from '../session/fold.ts';
import { type SessionState } from '../session/state.ts';

const torque = (value: string, unit = 'N·m') => ({ value, unit });
const range = (min: string, max: string, unit?: string) => ({ min: torque(min, unit), max: torque(max, unit) });
const wrench = { id: 'wrench', name: 'Indicating wrench', type: 'indicating', resolution: torque('0.5') };
const step = (id: string, kind: string, more: object = {}) => ({
  id,
  kind,
  title: id,
  text: `Text of ${id}.`,
  ...more,
});
const pass = { kind: 'torque', target: torque('24.5'), window: range('23', '26') };
const tighten = (more: object = {}) =>
  step('tighten', 'tighten', { pattern: 'ring', tool: 'wrench', passes: [pass], ...more });
const lift = step('lift', 'do');
const inspect = step('inspect', 'check', {
  outcomes: [
    { id: 'reuse', text: 'Reuse it.', then: 'go on' },
    { id: 'replace', say: ['replace', 'fit a new one'], text: 'Replace it.', then: 'go on' },
    { id: 'negative', text: 'Look again.', then: 'stay' },
  ],
});
const clean = step('clean', 'do');
const level = step('level', 'measure', { what: 'oil level', unit: 'mm', window: { min: '40', max: '60' } });
const openLine = step('open', 'open', { opening: 'line' });
const lines = { openings: [{ id: 'line', name: 'oil line', closure: 'cap' }] };
const inspectSeal = step('look', 'do', { seals: [{ seal: 'ring-seal', is: 'inspected' }] });
const seals = {
  seals: [{ id: 'ring-seal', name: 'round seal', reuse: 'if it passes inspection', criteria: ['no cut'] }],
};
const release = step('free', 'loosen', { pattern: 'ring', stages: ['off'], heldBefore: 'last fastener' });
const carry = step('carry', 'hold', { orientation: 'ports up', calls: ['Straight off', 'Down'] });

/** Ten studs in a ring, tightened crosswise: 1, 6, 3, 8, 5, 10, 7, 2, 9, 4. All values are invented. */
function jobOf(steps: readonly object[], tool: object = {}, more: object = {}): Procedure {
  const loaded = readProcedure({
    format: 'bothhands-procedure',
    version: 1,
    id: 'named-situations',
    title: 'Small job',
    invented: true,
    source: { document: 'Invented manual', revision: 'A' },
    component: { name: 'Component', dryMass: { value: '10', unit: 'kg' } },
    tools: [{ ...wrench, range: range('5', '60'), ...tool }],
    patterns: [
      {
        id: 'ring',
        name: 'Ring',
        fastener: 'stud',
        layout: { shape: 'ring', count: 10 },
        order: { kind: 'explicit', numbers: [1, 6, 3, 8, 5, 10, 7, 2, 9, 4] },
      },
    ],
    steps,
    ...more,
  });
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults));
  return loaded.procedure;
}

/** The state after these meanings. */
function after(procedure: Procedure, ...meanings: readonly Meaning[]): SessionState {
  let seq = 0;
  return meanings.reduce(
    (state, meaning) => {
      const decision = decide(state, { meaning, at: { utc: START, monotonic: 0 } });
      if (decision.kind === 'refused') throw new Error(`"${meaning.kind}" is refused: ${decision.reason.code}.`);
      return decision.events.reduce((folded, body) => fold(folded, eventAt(START, seq++, body)), state);
    },
    begin(procedure, { mechanic: 'Mechanic', second: 'Second person' }),
  );
}

const START = '2026-03-01T08:00:00.000Z';
const AN_HOUR_LATER = '2026-03-01T09:00:00.000Z';

const eventAt = (utc: string, seq: number, body: EventBody): SessionEvent => ({
  seq,
  at: { utc, monotonic: 0 },
  source: 'program',
  person: 'Mechanic',
  heard: null,
  body,
});

const reading = (value: string): Meaning => ({ kind: 'reading', reading: { fastener: null, value } });
const affirm: Meaning = { kind: 'affirm' };
const next: Meaning = { kind: 'next' };
const one = [reading('24.5'), affirm];
const all = [1, 6, 3, 8, 5, 10, 7, 2, 9, 4].flatMap(() => one);
const standBy: Meaning = { kind: 'stand by' };
const damage: Meaning = { kind: 'report', what: 'damage' };
const torn: Meaning = { kind: 'reason', text: 'thread is torn' };
const warned = step('lift', 'do', {
  hazards: [{ signal: 'warning', consequence: 'person', text: 'Oil under pressure.' }],
});
const round = { kind: 'circular check' };
const final = { target: pass.target, window: pass.window };
const inches = {
  range: range('40', '400', 'lbf·in'),
  resolution: torque('1', 'lbf·in'),
};

const SITUATIONS = {
  /** A step to do, after another. */
  step: () => after(jobOf([lift, clean]), next),
  /** A warning to acknowledge. */
  warning: () => after(jobOf([warned])),
  /** A check with three outcomes: reuse, replace, negative. */
  check: () => after(jobOf([inspect])),
  /** The first reading of all: stud one. */
  'first-reading': () => after(jobOf([tighten()])),
  /** Stud six is called, on a scale from 5 to 60 N·m by 0.5; stud one is confirmed. */
  reading: () => after(jobOf([tighten()]), ...one),
  /** Stud six was read back at 24.5 and waits. */
  confirm: () => after(jobOf([tighten()]), ...one, reading('24.5')),
  /** The mechanic's value of stud one is taken, and the second person is to read. */
  witness: () => after(jobOf([tighten({ confirm: 'witness each' })]), reading('24.5')),
  /** The same where the next reading confirms the one before. */
  'going-on': () => after(jobOf([tighten({ confirm: 'by going on' })]), ...one, reading('24.5')),
  /** Stud six is called, on a setting tool that clicks. */
  click: () => after(jobOf([tighten()], { type: 'setting' }), ...one),
  /** Stud six is called, on a scale from 40 to 400 lbf·in by 1. */
  inches: () => after(jobOf([tighten()], inches), reading('217'), affirm),
  /** A round that checks whether a nut turns. */
  turning: () => after(jobOf([tighten({ final, passes: [round] })])),
  /** Fasteners that are freed, without values. */
  loosening: () => after(jobOf([step('free', 'loosen', { pattern: 'ring', stages: ['off'] })])),
  /** A step after all readings: the last one can still be corrected. */
  'after-readings': () => after(jobOf([tighten(), clean]), ...all),
  /** The mechanic is to say that they hold the weight. */
  hold: () => after(jobOf([carry, clean])),
  /** The weight is in both hands. */
  holding: () => after(jobOf([carry, clean]), { kind: 'held' }),
  /** A level is to be read. */
  measure: () => after(jobOf([level, clean])),
  /** It was read back at 42 and waits. */
  'value-confirm': () => after(jobOf([level, clean]), { kind: 'observed', value: '42' }),
  /** An inspector is to give a name. */
  inspection: () => after(jobOf([step('look', 'witness', { what: 'the ring', independent: true }), clean])),
  /** A line is opened: its cap is asked for. */
  point: () => after(jobOf([openLine, clean], {}, lines)),
  /** A seal is looked at, one criterion after the other. */
  criterion: () => after(jobOf([inspectSeal, clean], {}, seals)),
  /** The seal has passed: it is used again, or a new one is taken. */
  seal: () => after(jobOf([inspectSeal, clean], {}, seals), affirm),
  /** All but the last fastener are off. */
  'last-off': () => after(jobOf([release, clean]), ...Array<Meaning>(9).fill(next)),
  /** A second person looks at the ring. */
  'step-witness': () => after(jobOf([step('look', 'witness', { what: 'the ring' }), clean])),
  /** Damage of stud six is reported, and its reason wanted. */
  deviation: () => after(jobOf([tighten()]), ...one, damage),
  /** The reason was read back and waits. */
  reason: () => after(jobOf([tighten()]), ...one, damage, torn),
  /** Stud six is called again, with its deviation stated. */
  stated: () => after(jobOf([tighten()]), ...one, damage, torn, affirm),
  /** Work goes on after an hour. */
  break: () => fold(after(jobOf([tighten()]), ...one, standBy), eventAt(AN_HOUR_LATER, 9, { kind: 'continued' })),
  'handing-over': () => after(jobOf([lift, clean]), next, { kind: 'hand over' }),
  'standing-by': () => after(jobOf([tighten()]), standBy),
  closed: () => after(jobOf([lift]), next),
} satisfies Record<string, () => SessionState>;

export type SituationName = keyof typeof SITUATIONS;

/** All names, in the order of a job. */
export const SITUATION_NAMES = Object.keys(SITUATIONS) as readonly SituationName[];

export const isSituationName = (name: string): name is SituationName => Object.hasOwn(SITUATIONS, name);

/** The state of the session in a named situation. */
export const stateIn = (name: SituationName): SessionState => SITUATIONS[name]();
