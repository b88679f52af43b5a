/** What the session room costs as a job grows. */
import { decide } from '../../session/decide.ts';
import { fold } from '../../session/fold.ts';
import { currentCall, pendingReading, type SessionState } from '../../session/state.ts';
import { planPasses } from '../../tightening/passes.ts';
import { layOut } from '../../tightening/pattern.ts';
import { limits, torque } from '../../units/index.ts';
import { cost, say } from './measure.ts';
import { PASSES, targets, workedThrough } from './ring.ts';

const [FEW, MANY] = [40, 400];

const newtonMetres = (value: number) => torque(value, 'N·m');
const windowAround = (value: number) => limits(newtonMetres(value - 2), newtonMetres(value + 2));

function planCrosswise(count: number): void {
  planPasses({
    pattern: layOut({ shape: 'ring', count }),
    order: { kind: 'crosswise' },
    passes: targets.map((value) => ({ kind: 'torque', target: newtonMetres(value), window: windowAround(value) })),
  });
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
    // As after an event: nothing that is remembered of an earlier state helps.
    const decision = decide(
      { ...half, readings: [...half.readings] },
      { meaning, at: { utc: half.lastAt ?? '', monotonic: 0 } },
    );
    if (decision.kind === 'refused') throw new Error(`The measured answer was refused: ${decision.reason.code}.`);
  };
}

interface Measured {
  readonly what: string;
  readonly expected: string;
  readonly few: number;
  readonly many: number;
}

const microseconds = (work: () => void, pieces: number): number => (cost(work) / pieces) * 1000;

/** Each cost as a ratio of a large job to one a tenth its size, per piece of work, so that it says the same on any machine. */
export function benchSession(): void {
  const sessions = { few: workedThrough(FEW), many: workedThrough(MANY) };
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
      expected: 'about 10: the open call is looked for among all calls, and the values that stand among all readings',
      few: microseconds(oneAnswer(sessions.few), 1),
      many: microseconds(oneAnswer(sessions.many), 1),
    },
  ];
  console.log(
    `${MANY} fasteners × ${PASSES} passes (${MANY * PASSES} readings) against ${FEW} × ${PASSES} (${FEW * PASSES}):`,
  );
  for (const { what, expected, few, many } of measured)
    say(
      what,
      `ratio ${(many / few).toFixed(2)} (expected ${expected}); ${few.toFixed(2)} µs and ${many.toFixed(2)} µs`,
    );
}
