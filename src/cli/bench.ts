/**
 * Costs that must not grow faster than the work: `npm run bench`. Each is a ratio of a large job to one a tenth its
 * size, per piece of work, so that it says the same on any machine.
 */
import { readProcedure, type ProcedureFile } from '../procedure/procedure.ts';
import { decide } from '../session/decide.ts';
import type { SessionEvent } from '../session/event.ts';
import { begin, fold } from '../session/fold.ts';
import { currentCall, pendingReading, type SessionState } from '../session/state.ts';
import { planPasses } from '../tightening/passes.ts';
import { layOut } from '../tightening/pattern.ts';
import { limits, torque } from '../units/index.ts';

const PASSES = 6;
const [FEW, MANY] = [40, 400];
/** Enough rounds that the smallest job is measured in tens of milliseconds, and the best of them counts. */
const ROUNDS = 5;
const LONG_ENOUGH_MS = 30;

const newtonMetres = (value: number) => torque(value, 'N·m');
const windowAround = (value: number) => limits(newtonMetres(value - 2), newtonMetres(value + 2));
const targets = Array.from({ length: PASSES }, (_, i) => 20 + 4 * i);

/** Milliseconds for one run of the work, the best of some rounds: what else the machine does only ever adds. */
function cost(work: () => void): number {
  const rounds = Array.from({ length: ROUNDS }, () => {
    const from = performance.now();
    let runs = 0;
    do {
      work();
      runs += 1;
    } while (performance.now() - from < LONG_ENOUGH_MS);
    return (performance.now() - from) / runs;
  });
  return Math.min(...rounds);
}

function planCrosswise(count: number): void {
  planPasses({
    pattern: layOut({ shape: 'ring', count }),
    order: { kind: 'crosswise' },
    passes: targets.map((value) => ({ kind: 'torque', target: newtonMetres(value), window: windowAround(value) })),
  });
}

/** A procedure of one ring, for measuring alone. */
function ring(count: number): ProcedureFile {
  const inNm = (value: number) => ({ value: String(value), unit: 'N·m' }) as const;
  return {
    format: 'bothhands-procedure',
    version: 1,
    id: 'ring',
    title: 'Ring',
    invented: true,
    source: { document: 'Invented', revision: 'A' },
    component: { name: 'Ring', dryMass: { value: '10', unit: 'kg' } },
    tools: [
      {
        id: 'wrench',
        name: 'Wrench',
        type: 'indicating',
        range: { min: inNm(5), max: inNm(60) },
        resolution: inNm(0.5),
        calibrationDue: '2031-03-31',
      },
    ],
    patterns: [
      {
        id: 'ring',
        name: 'Ring',
        fastener: 'stud',
        layout: { shape: 'ring', count },
        order: { kind: 'crosswise' },
      },
    ],
    steps: [
      {
        id: 'tighten',
        kind: 'tighten',
        title: 'Tighten',
        text: 'Tighten.',
        pattern: 'ring',
        tool: 'wrench',
        passes: targets.map((value) => ({
          kind: 'torque',
          target: inNm(value),
          window: { min: inNm(value - 2), max: inNm(value + 2) },
        })),
      },
    ],
  };
}

/** A session of one ring, every reading as called and confirmed, made by the session itself. */
function workedThrough(count: number): { readonly begun: SessionState; readonly events: readonly SessionEvent[] } {
  const loaded = readProcedure(ring(count));
  if (loaded.kind === 'faulty') throw new Error(loaded.faults.map(({ message }) => message).join('; '));
  const begun = begin(loaded.procedure, { mechanic: 'A', second: null });
  const events: SessionEvent[] = [];
  let state = begun;
  for (let call = currentCall(state); call !== null && call.pass.target !== null; call = currentCall(state)) {
    const value = String(call.pass.target.value);
    for (const meaning of [
      { kind: 'reading', reading: { fastener: call.fastener, value } },
      { kind: 'affirm' },
    ] as const) {
      const decision = decide(state, { meaning });
      if (decision.kind === 'refused') throw new Error(`The measured job was refused: ${decision.reason.code}.`);
      for (const body of decision.events) {
        const at = { utc: '2026-03-01T00:00:00.000Z', monotonic: 0 };
        const event = { seq: events.length, at, source: 'touch', person: 'A', heard: null, body } as const;
        events.push(event);
        state = fold(state, event);
      }
    }
  }
  return { begun, events };
}

const replay = ({ begun, events }: ReturnType<typeof workedThrough>): SessionState => events.reduce(fold, begun);

/** What is worked out between two answers, in the middle of a job: what is called, and what a reading leads to. */
function oneAnswer({ begun, events }: ReturnType<typeof workedThrough>): () => void {
  // Every reading is two events: captured, and confirmed.
  const half = events.slice(0, 2 * Math.floor(events.length / 4)).reduce(fold, begun);
  const call = currentCall(half);
  if (!call?.pass.target || pendingReading(half)) throw new Error('The measured job is not between two readings.');
  const meaning = { kind: 'reading', reading: { fastener: null, value: String(call.pass.target.value) } } as const;
  return () => {
    const decision = decide(half, { meaning });
    if (decision.kind === 'refused') throw new Error(`The measured answer was refused: ${decision.reason.code}.`);
  };
}

interface Measured {
  readonly what: string;
  readonly expected: string;
  readonly few: number;
  readonly many: number;
}

const sessions = { few: workedThrough(FEW), many: workedThrough(MANY) };
const microseconds = (work: () => void, pieces: number): number => (cost(work) / pieces) * 1000;

const measured: readonly Measured[] = [
  {
    what: `Planning ${PASSES} passes crosswise, per fastener and pass`,
    expected: 'about 1 or less: planning is linear',
    few: microseconds(() => planCrosswise(FEW), FEW * PASSES),
    many: microseconds(() => planCrosswise(MANY), MANY * PASSES),
  },
  {
    what: 'Replaying a session, per event',
    expected: 'up to 10: each event copies the list of readings, which is short beside everything else',
    few: microseconds(() => void replay(sessions.few), sessions.few.events.length),
    many: microseconds(() => void replay(sessions.many), sessions.many.events.length),
  },
  {
    what: 'Deciding on one reading in the middle of a session',
    expected: 'up to 10: the open call is looked for among all calls',
    few: microseconds(oneAnswer(sessions.few), 1),
    many: microseconds(oneAnswer(sessions.many), 1),
  },
];

console.log(
  `${MANY} fasteners × ${PASSES} passes (${MANY * PASSES} readings) against ${FEW} × ${PASSES} (${FEW * PASSES}):`,
);
for (const { what, expected, few, many } of measured) {
  console.log(
    `${what}: ratio ${(many / few).toFixed(2)} (expected ${expected}); ${few.toFixed(2)} µs and ${many.toFixed(2)} µs`,
  );
}
