/** The cover of the fire pump, played from the first step to the last: running torque, adapter, check for turning. */
import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/session/calls.ts';
import { settingOf } from '../../src/session/setting.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { currentCall, currentStep, standingReading, type SessionState } from '../../src/session/state.ts';
import { openly } from './anything.ts';
import { affirm, click, fireBoat, happened, negative, next, people, reading, start, tell, type Play } from './play.ts';

const STEP = 'tighten-cover';

/**
 * Nuts in the order of the calls, with the running torque of each, and what the wrench is set to.
 *
 * The wrench is 10 in long, the crowfoot 1.5 in at 45°: 10 / (10 + 1.5 × 0.70711) = 10 / 11.06066 = 0.904105.
 * Half of 175 is 87.5; so nut 3 is set to (87.5 + 20) × 0.904105 = 97.19 and to (175 + 20) × 0.904105 = 176.30.
 */
const NUTS: readonly { nut: number; running: string; half: string; final: string }[] = [
  { nut: 3, running: '20', half: '97', final: '176' }, //  97.19, 176.30
  { nut: 9, running: '21', half: '98', final: '177' }, //  98.10, 177.20
  { nut: 4, running: '22', half: '99', final: '178' }, //  99.00, 178.11
  { nut: 10, running: '23', half: '100', final: '179' }, //  99.90, 179.01
  { nut: 8, running: '24', half: '101', final: '180' }, // 100.81, 179.92
  { nut: 2, running: '25', half: '102', final: '181' }, // 101.71, 180.82
  { nut: 6, running: '26', half: '103', final: '182' }, // 102.62, 181.73
  { nut: 12, running: '27', half: '104', final: '183' }, // 103.52, 182.63
  { nut: 5, running: '28', half: '104', final: '184' }, // 104.42, 183.53
  { nut: 11, running: '29', half: '105', final: '184' }, // 105.33, 184.44
  { nut: 7, running: '30', half: '106', final: '185' }, // 106.23, 185.34
  { nut: 1, running: '31', half: '107', final: '186' }, // 107.14, 186.25
];

/** Everything before the cover is tightened, in a pump that ran in fresh water. */
function untilTightening(): Play {
  let play = start(fireBoat());
  while (currentStep(play.state)?.id !== STEP)
    play = tell(play, currentStep(play.state)?.id === 'rinse' ? negative : openly(play.state));
  return play;
}
/** What is called, as "round: nut" and the value to set. */
const called = ({ state }: Play): readonly unknown[] => {
  const [step, call] = [currentStep(state), currentCall(state)];
  if (!step || !call) return [];
  const setting = settingOf(state, step, call);
  return [`${call.pass.index}: ${call.fastener}`, setting && setting.value?.value];
};

describe('the cover of the fire pump', () => {
  const before = untilTightening();
  const measured = NUTS.reduce((play, { running }) => tell(play, reading(running), affirm), before);
  const snug = NUTS.reduce((play) => tell(play, next), measured);

  test('is never rinsed where it ran in fresh water', () => expect([...before.state.skippedSteps]).toEqual(['rinse']));

  test('has the running torque of each nut measured first, with the dial wrench, in the order of tightening', () => {
    const order: unknown[] = [];
    NUTS.reduce((play, { running }) => {
      order.push(...called(play));
      return tell(play, reading(running), affirm);
    }, before);
    expect(order).toEqual(NUTS.flatMap(({ nut }) => [`0: ${nut}`, null]));
    expect(measured.events.at(-2)?.body).toEqual({
      kind: 'reading captured',
      step: STEP,
      pass: 0,
      fastener: 1,
      evidence: 'read',
      reading: { value: '31', unit: 'lbf·in' },
      verdict: 'in',
      basis: { of: 'running torque', tool: 'dial-75', minimum: { value: '20', unit: 'lbf·in' } },
      corrects: null,
    });
  });

  test('is made snug by hand before any value is set', () => {
    expect(called(measured)).toEqual(['1: 3', null]);
    expect(called(snug)).toEqual(['2: 3', '97']);
  });

  test('has each nut set to its own value in both passes, and every click stands', () => {
    let play = snug;
    for (const [pass, key] of [
      [2, 'half'],
      [3, 'final'],
    ] as const)
      for (const nut of NUTS) {
        expect(called(play)).toEqual([`${pass}: ${nut.nut}`, nut[key]]);
        play = tell(play, click(), affirm);
        expect(standingReading(play.state, STEP, pass, nut.nut)).toMatchObject({
          evidence: 'click',
          reading: { value: nut[key], unit: 'lbf·in' },
          verdict: 'in',
        });
      }
    // The check goes round at the final value of each nut; all stand, and the step is done.
    expect(called(play)).toEqual(['4: 1', '186']);
    const checked = NUTS.reduce((at) => tell(at, next), play);
    expect(currentStep(checked.state)?.id).toBe('witness-cover');
  });

  test('is judged at the wrench: the same reading is under for one nut and inside for another', () => {
    const final = NUTS.reduce((play) => tell(play, click(), affirm), snug);
    // Nut 3: (165 + 20) × 0.904105 = 167.26 to (185 + 20) × 0.904105 = 185.34.
    expect(happened(tell(final, reading('168')))).toMatchObject([{ fastener: 3, verdict: 'in' }]);
    expect(happened(tell(final, reading('167')))).toMatchObject([{ fastener: 3, verdict: 'under' }]);
    expect(happened(tell(final, reading('186')))).toMatchObject([{ fastener: 3, verdict: 'over' }]);
    const last = NUTS.slice(0, -1).reduce((play) => tell(play, click(), affirm), final);
    // Nut 1: (165 + 31) × 0.904105 = 177.20 to (185 + 31) × 0.904105 = 195.29.
    expect(happened(tell(last, reading('177')))).toMatchObject([{ fastener: 1, verdict: 'under' }]);
    expect(happened(tell(last, reading('186')))).toMatchObject([{ fastener: 1, verdict: 'in' }]);
  });

  test('has in its record what each value was judged by', () => {
    const [captured] = happened(tell(snug, click()));
    if (captured?.kind !== 'reading captured' || captured.basis.of !== 'torque')
      throw new Error('nothing was captured');
    const { window, accepted, ...basis } = captured.basis;
    expect(accepted).toEqual(window);
    expect(basis).toEqual({
      of: 'torque',
      tool: 'wrench-250',
      target: { value: '87.5', unit: 'lbf·in' },
      runningTorque: { value: '20', unit: 'lbf·in' },
      adapter: {
        lever: { value: '10', unit: 'in' },
        length: { value: '1.5', unit: 'in' },
        angle: { value: '45', unit: '°' },
      },
      setting: { value: '97', unit: 'lbf·in' },
      judging: { rule: 'simple' },
    });
    // (82.5 + 20) × 0.904105 = 92.671 and (92.5 + 20) × 0.904105 = 101.712
    expect(Number(window.min.value)).toBeCloseTo(92.671, 3);
    expect(Number(window.max.value)).toBeCloseTo(101.712, 3);
  });

  test('is finished, and replays to the same end', () => {
    let play = snug;
    for (let i = 0; play.state.phase !== 'closed' && i < 600; i++) play = tell(play, openly(play.state));
    expect(play.state.phase).toBe('closed');
    const replayed = play.events.reduce<SessionState>(fold, begin(play.state.procedure, people));
    expect(replayed).toEqual(play.state);
    const step = play.state.procedure.steps.find(({ id }) => id === STEP);
    expect(step && planOf(play.state.procedure, step).calls).toHaveLength(5 * NUTS.length);
  });
});
