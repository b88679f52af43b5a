/** The jobs that are talked through: a step of tightening between two others, and the plain rules of its loop. */
import { readProcedure, type Procedure } from '../../../src/procedure/procedure.ts';
import type { People } from '../../../src/session/event.ts';
import { openedBy } from '../../record/sealed.ts';
import { dial, indicating, setting, step, tighten, torquePass, window } from '../play.ts';
import type { Call, Rules } from './rules.ts';

export interface Traits {
  readonly confirm: Rules['confirm'];
  readonly running: boolean;
  readonly adapter: boolean;
  readonly tool: 'indicating' | 'setting';
  readonly studs: keyof typeof ORDERS;
  readonly second: string | null;
  readonly torques: keyof typeof TORQUES;
}

export interface Job {
  /** Tells it from every other. */
  readonly key: string;
  readonly file: object;
  readonly procedure: Procedure;
  readonly people: People;
  readonly opened: Awaited<ReturnType<typeof openedBy>>;
  readonly rules: Rules;
}

export const MECHANIC = 'Ada Smith';

const ORDERS = {
  3: [1, 3, 2],
  10: [1, 6, 3, 8, 5, 10, 7, 2, 9, 4],
  40: Array.from({ length: 40 }, (_, i) => i + 1),
};

/** At the fastener, in newton metres. All values are invented. */
const TORQUES = {
  usual: [
    { target: 18, least: 16, most: 20 },
    { target: 25, least: 22.5, most: 27.5 },
  ],
  /** The same window, with another target in it. */
  'off centre': [
    { target: 19, least: 16, most: 20 },
    { target: 23, least: 22.5, most: 27.5 },
  ],
  elsewhere: [
    { target: 42, least: 41, most: 43 },
    { target: 45.5, least: 45, most: 50 },
  ],
};

/** The lever is 400 mm and the adapter 100 mm, straight ahead: the wrench shows 400/500 (TM 9-254, fig. 4-5). */
const SHARE = 0.8;
const millimetres = (value: string) => ({ value, unit: 'mm' });
const adapter = { id: 'crowfoot', name: 'Crowfoot', length: millimetres('100'), angle: { value: '0', unit: '°' } };

const jobs = new Map<string, Promise<Job>>();

export function jobOf(traits: Traits): Promise<Job> {
  const key = JSON.stringify(traits);
  const job = jobs.get(key) ?? makeJob(key, traits);
  jobs.set(key, job);
  return job;
}

async function makeJob(key: string, traits: Traits): Promise<Job> {
  const file = fileOf(traits);
  const loaded = readProcedure(file);
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults, null, 2));
  const people = { mechanic: MECHANIC, second: traits.second };
  return {
    key,
    file,
    procedure: loaded.procedure,
    people,
    opened: { ...(await openedBy(file)), people },
    rules: rulesOf(traits),
  };
}

function fileOf({ confirm, running, adapter: long, tool, studs, torques }: Traits): object {
  return {
    format: 'bothhands-procedure',
    version: 1,
    id: 'talked-through',
    title: 'Small procedure',
    invented: true,
    source: { document: 'Invented manual', revision: 'A' },
    component: { name: 'Component', dryMass: { value: '10', unit: 'kg' } },
    tools: [
      { ...(tool === 'setting' ? setting : indicating), lever: millimetres('400') },
      { ...dial, range: window('1', '10') },
    ],
    adapters: [adapter],
    patterns: [
      {
        id: 'ring',
        name: 'Ring',
        fastener: 'stud',
        layout: { shape: 'ring', count: studs },
        order: { kind: 'explicit', numbers: ORDERS[studs] },
      },
    ],
    steps: [
      step('prepare', 'do'),
      tighten('ring', {
        pattern: 'ring',
        confirm,
        passes: TORQUES[torques].map(({ target, least, most }) => torquePass(`${target}`, `${least}`, `${most}`)),
        ...(long ? { adapter: adapter.id } : {}),
        ...(running ? { runDown: { used: true, minimum: { value: '2', unit: 'N·m' }, tool: dial.id } } : {}),
      }),
      step('clean', 'do'),
    ],
  };
}

const fine = (newtonMetres: number): number => Math.round(newtonMetres * 10_000);

function rulesOf({ confirm, running, adapter, tool, studs, second, torques }: Traits): Rules {
  const rounds = TORQUES[torques].map(({ target, least, most }, i) => ({
    round: i + 1,
    target: fine(target),
    least: fine(least),
    most: fine(most),
    mark: fine(0.5),
    scale: [fine(5), fine(60)] as const,
  }));
  // From the stated minimum to the end of the dial.
  const scale = [fine(1), fine(10)] as const;
  const drag = { round: 0, target: null, least: fine(2), most: fine(10), mark: fine(0.1), scale };
  const calls = [...(running ? [drag] : []), ...rounds].flatMap((round) =>
    ORDERS[studs].map((stud): Call => ({ ...round, stud })),
  );
  return {
    confirm,
    hasWitness: second !== null && second.trim().toLowerCase() !== MECHANIC.toLowerCase(),
    clicks: tool === 'setting',
    share: adapter ? SHARE : 1,
    calls,
  };
}
