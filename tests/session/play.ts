/** Plays a session in a test: meanings in, decisions out, events folded. */
import { readFileSync } from 'node:fs';
import { readProcedure, type Procedure } from '../../src/procedure/procedure.ts';
import { decide, type Decision } from '../../src/session/decide.ts';
import type { EventBody, SessionEvent } from '../../src/session/event.ts';
import type { Instant, Meaning, ReadingDoubt } from '../../src/session/intent.ts';
import type { Refusal } from '../../src/session/refusal.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { type SessionState } from '../../src/session/state.ts';

export const people = { mechanic: 'Mechanic', second: 'Second person' };

export const newtonMetres = (value: string) => ({ value, unit: 'N·m' });
export const window = (min: string, max: string) => ({ min: newtonMetres(min), max: newtonMetres(max) });
export const torquePass = (target: string, min: string, max: string, more: object = {}) => ({
  kind: 'torque',
  target: newtonMetres(target),
  window: window(min, max),
  ...more,
});

export const indicating = {
  id: 'wrench',
  name: 'Indicating wrench',
  type: 'indicating',
  range: window('5', '60'),
  resolution: newtonMetres('0.5'),
  calibrationDue: '2031-03-31',
};
export const setting = { ...indicating, name: 'Setting wrench', type: 'setting' };
/** Small enough for running torque. */
export const dial = {
  ...indicating,
  id: 'dial',
  name: 'Dial wrench',
  range: window('1', '10'),
  resolution: newtonMetres('0.1'),
};

/** Three studs, worked 1, 3, 2. */
export const threeStuds = {
  id: 'three',
  name: 'Three studs',
  fastener: 'stud',
  layout: { shape: 'ring', count: 3 },
  order: { kind: 'explicit', numbers: [1, 3, 2] },
};

export const step = (id: string, kind: string, more: object = {}) => ({
  id,
  kind,
  title: id,
  text: `Text of ${id}.`,
  ...more,
});
export const tighten = (id: string, more: object = {}) =>
  step(id, 'tighten', { pattern: 'three', tool: 'wrench', passes: [torquePass('24.5', '23', '26')], ...more });

/** A procedure of these steps. Its values are invented. */
export function procedureOf(steps: readonly object[], more: object = {}): Procedure {
  const loaded = readProcedure({
    format: 'bothhands-procedure',
    version: 1,
    id: 'small',
    title: 'Small procedure',
    invented: true,
    source: { document: 'Invented manual', revision: 'A' },
    component: { name: 'Component', dryMass: { value: '10', unit: 'kg' } },
    tools: [indicating],
    patterns: [threeStuds],
    steps,
    ...more,
  });
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults, null, 2));
  return loaded.procedure;
}

export const demo = (): Procedure => demonstration('ropeway-oil-cooler');
export const fireBoat = (): Procedure => demonstration('fire-boat-pump-cover');

function demonstration(name: string): Procedure {
  const file = new URL(`../../demo-data/${name}.json`, import.meta.url);
  const loaded = readProcedure(JSON.parse(readFileSync(file, 'utf8')));
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults, null, 2));
  return loaded.procedure;
}

/** A session under way: where it stands, all that happened, and what the last meaning led to. */
export interface Play {
  readonly state: SessionState;
  readonly events: readonly SessionEvent[];
  readonly last: Decision;
}

export const start = (procedure: Procedure): Play => ({
  state: begin(procedure, people),
  events: [],
  last: { kind: 'accepted', events: [] },
});

/** Tells a session what is meant, one after another. */
export const tell = (play: Play, ...meanings: readonly Meaning[]): Play => meanings.reduce(tellOne, play);

/** When the next event of a play happens. */
export const nowOf = ({ events }: Pick<Play, 'events'>): Instant => timeOf(events.length);

function tellOne({ state, events }: Play, meaning: Meaning): Play {
  const last = decide(state, { meaning, at: timeOf(events.length) });
  const bodies: readonly EventBody[] =
    last.kind === 'accepted' ? last.events : [{ kind: 'refused', meaning, reason: last.reason }];
  const added = bodies.map((body, i) => eventOf(body, events.length + i));
  return { state: added.reduce<SessionState>(fold, state), events: [...events, ...added], last };
}

/** An event a second. */
const timeOf = (seq: number): Instant => ({
  utc: new Date(Date.UTC(2026, 2, 1) + seq * 1000).toISOString(),
  monotonic: seq * 1000,
});

export const eventOf = (body: EventBody, seq: number): SessionEvent => ({
  seq,
  at: timeOf(seq),
  source: 'voice',
  person: people.mechanic,
  heard: null,
  body,
});

/** The events of the last decision. */
export const happened = ({ last }: Play): readonly EventBody[] => (last.kind === 'accepted' ? last.events : []);
export const kinds = (play: Play): readonly string[] => happened(play).map(({ kind }) => kind);
/** Why the last meaning was refused; null where it was not. */
export const refused = ({ last }: Play): Refusal | null => (last.kind === 'refused' ? last.reason : null);

export const continue_: Meaning = { kind: 'continue' };
export const next: Meaning = { kind: 'next' };
export const affirm: Meaning = { kind: 'affirm' };
export const negative: Meaning = { kind: 'negative' };
export const disregard: Meaning = { kind: 'disregard' };
export const back: Meaning = { kind: 'back' };
export const turned: Meaning = { kind: 'turned' };
export const answer = (outcome: string): Meaning => ({ kind: 'answer', outcome });
export const reading = (value: string, fastener: number | null = null): Meaning => ({
  kind: 'reading',
  reading: { fastener, value },
});
export const doubted = (value: string, ...doubts: readonly ReadingDoubt[]): Meaning => ({
  kind: 'reading',
  reading: { fastener: null, value },
  doubts,
});
export const correction = (value: string, fastener: number | null = null): Meaning => ({
  kind: 'correction',
  reading: { fastener, value },
});
export const click = (fastener: number | null = null): Meaning => ({ kind: 'click', fastener });

/** Every reading with what became of it, as "fastener: value status". */
export const readings = ({ state }: Play): readonly string[] =>
  state.readings.map(({ fastener, reading: { value }, status }) => `${fastener}: ${value} ${status}`);
