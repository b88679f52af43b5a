/** Many simulated readings at moments of the demonstration jobs, and what became of them. */
import { situationOf } from '../../src/language/situation.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { isReadCall } from '../../src/session/calls.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { currentPoint } from '../../src/session/points.ts';
import { settingOf } from '../../src/session/setting.ts';
import { currentCall, currentStep, openCondition, openWarning, pendingReading } from '../../src/session/state.ts';
import { valueIn } from '../../src/units/index.ts';
import { demo, fireBoat, start, tell, type Play } from '../session/play.ts';
import { confusionsIn, type Condition } from './simulated-confusions.ts';
import { report, type Asked, type Outcome } from './simulated-mechanic.ts';
import { seeded, simulatedRecogniser, type Random } from './simulated-recogniser.ts';

/** Which values the tool shows: each of these marks of its scale as often as another. */
export type Values = 'in the window' | 'near the window' | 'whole scale';

/** A moment at which a value is read off a tool, with the marks of its scale, as decimal text. */
export interface Moment {
  readonly play: Play;
  /** Near the window is in it or within its width beside it. Without a window, that is the whole scale. */
  readonly marks: Readonly<Record<Values, readonly string[]>>;
}

/** The tools of the demonstration jobs: 5 to 60 N·m by a half, 5 to 75 and 40 to 250 lbf·in by one. */
const TOOLS = [
  { job: demo(), tool: 'wrench-60' },
  { job: fireBoat(), tool: 'dial-75' },
  { job: fireBoat(), tool: 'wrench-250' },
];

/** For each tool, the moments at which the fasteners of its first round are called. */
export const MOMENTS: readonly (readonly Moment[])[] = TOOLS.map(({ job, tool }) => momentsWith(job, tool));

function momentsWith(job: Procedure, tool: string): readonly Moment[] {
  const moments: Moment[] = [];
  const pass = (play: Play): number | undefined => currentCall(play.state)?.pass.index;
  for (let play = start(job); currentStep(play.state); play = workedOn(play)) {
    const [first] = moments;
    if (first && pass(play) !== pass(first.play)) return moments;
    const moment = momentAt(play, tool);
    if (moment) moments.push(moment);
  }
  throw new Error(`"${tool}" is never laid aside.`);
}

function momentAt(play: Play, tool: string): Moment | null {
  const call = currentCall(play.state);
  const held = situationOf(play.state).reading?.held.get(null);
  const { range } = play.state.procedure.tools.find(({ id }) => id === tool) ?? {};
  if (!held || held.scale !== range || !call || !isReadCall(call) || pendingReading(play.state)) return null;
  const [from, to, step] = [range.min, range.max, held.resolution].map((each) => valueIn(each, held.unit));
  if (from === undefined || to === undefined || step === undefined) return null;
  const marks = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
  const [low, high] = held.window
    ? [held.window.min, held.window.max].map((each) => valueIn(each, held.unit))
    : [from, to];
  if (low === undefined || high === undefined) return null;
  const width = high - low;
  const between = (least: number, most: number): readonly string[] =>
    marks.filter((mark) => mark >= least && mark <= most).map(String);
  return {
    play,
    marks: {
      'in the window': between(low, high),
      'near the window': between(low - width, high + width),
      'whole scale': between(from, to),
    },
  };
}

/** The job after the next right answer. */
function workedOn(play: Play): Play {
  const after = tell(play, rightAnswer(play));
  if (after.last.kind === 'refused') throw new Error(`A job is not resumed: ${after.last.reason.code}.`);
  return after;
}

function rightAnswer({ state }: Play): Meaning {
  if (openWarning(state) || openCondition(state) || pendingReading(state)) return { kind: 'affirm' };
  const point = currentPoint(state);
  if (point?.kind === 'held') return { kind: 'held' };
  if (point?.kind === 'seal') return { kind: 'answer', outcome: 'replace' };
  if (point) return { kind: 'affirm' };
  const [step, call] = [currentStep(state), currentCall(state)];
  if (step?.kind === 'check') {
    const outcome = step.outcomes.find(({ then }) => then === 'go on')?.id ?? '';
    return outcome === 'affirm' || outcome === 'negative' ? { kind: outcome } : { kind: 'answer', outcome };
  }
  if (step?.kind === 'hold')
    return { kind: state.hold === null ? 'held' : step.calls.length > state.hold.called ? 'next' : 'set down' };
  if (!step || !call || !isReadCall(call)) return { kind: 'next' };
  // Any running torque that the manual allows; else the value that is called out.
  const value = settingOf(state, step, call)?.value?.value ?? '30';
  return { kind: 'reading', reading: { fastener: null, value } };
}

export interface Job {
  readonly readings: number;
  readonly seed: number;
  readonly condition: Condition;
  readonly lapse: number;
  readonly values: Values;
  readonly style: 'digits' | 'natural';
  readonly smoothing?: 'smoothed' | 'measured only';
}

/** How many of the readings came to what. */
export interface Tally {
  readonly readings: number;
  /** Another value than that on the tool would have been logged, had the first that was understood been. */
  readonly wrongWithoutLoop: number;
  /** Another value than that on the tool was logged, and nobody noticed. */
  readonly wrongWithLoop: number;
  /** The mechanic had to take the keys. */
  readonly notLogged: number;
  /** Heard word for word the first time. */
  readonly heardRight: number;
  /** Of those, asked about beyond the usual read-back, by the question. */
  readonly askedOfRight: ReadonlyMap<Asked, number>;
  /** The same of values that were understood wrongly: these questions are what doubts are for. */
  readonly askedOfWrong: ReadonlyMap<Asked, number>;
  /** More was said than the value and the word that confirms it. */
  readonly moreThanOneTry: number;
  readonly turns: number;
  /** What wrong values that were logged came from: "two four > two nine". */
  readonly leaks: ReadonlyMap<string, number>;
  /** What wrong first values came from. */
  readonly misheard: ReadonlyMap<string, number>;
}

export function simulate({ readings, seed, condition, lapse, values, style, smoothing }: Job): Tally {
  const random = seeded(seed);
  const mechanic = { random, hear: simulatedRecogniser(confusionsIn(condition, smoothing), random), lapse, style };
  const counts = { wrongWithoutLoop: 0, wrongWithLoop: 0, notLogged: 0, heardRight: 0, moreThanOneTry: 0, turns: 0 };
  const [askedOfRight, askedOfWrong] = [new Map<Asked, number>(), new Map<Asked, number>()];
  const [leaks, misheard] = [new Map<string, number>(), new Map<string, number>()];
  for (let i = 0; i < readings; i++) {
    const { play, marks } = oneOf(oneOf(MOMENTS, random), random);
    const value = oneOf(marks[values], random);
    const outcome = report(play, value, mechanic);
    const { trail, heardRight, asked, firstUnderstood, logged } = outcome;
    if (isWrong(firstUnderstood, value)) {
      counts.wrongWithoutLoop++;
      countUp(misheard, trail[0] ?? '');
      if (asked) countUp(askedOfWrong, asked);
    }
    if (isWrong(logged, value)) {
      counts.wrongWithLoop++;
      countUp(leaks, `${trail.join(', ')}: ${logged} for ${value}`);
    }
    if (logged === null) counts.notLogged++;
    if (heardRight) {
      counts.heardRight++;
      if (asked) countUp(askedOfRight, asked);
    }
    if (trail.length > 2) counts.moreThanOneTry++;
    counts.turns += trail.length;
  }
  return { readings, ...counts, askedOfRight, askedOfWrong, leaks, misheard };
}

const isWrong = (got: Outcome['logged'], value: string): boolean => got !== null && Number(got) !== Number(value);

const countUp = <T>(counts: Map<T, number>, key: T): void => void counts.set(key, (counts.get(key) ?? 0) + 1);

function oneOf<T>(all: readonly T[], random: Random): T {
  const one = all[Math.floor(random() * all.length)];
  if (one === undefined) throw new Error('Nothing to choose from.');
  return one;
}
