/** Why a value is what it is, in plain sentences for the screen, and the same for the voice. */
import { describe, expect, test } from 'vitest';
import {
  explainBeforeWork,
  explainLift,
  explainPlan,
  explainSetting,
  explainTool,
} from '../../src/language/explain.ts';
import { sayPlain } from '../../src/language/say.ts';
import type { Procedure, TightenStep } from '../../src/procedure/procedure.ts';
import { settingFor } from '../../src/session/setting.ts';
import { torqueTarget } from '../../src/tightening/index.ts';
import { limits, torque } from '../../src/units/index.ts';
import { edited, loaded } from '../procedure/demo-files.ts';
import { demo, fireBoat, indicating, procedureOf, setting, step, tighten } from '../session/play.ts';

function tightening({ steps }: Procedure): TightenStep {
  const found = steps.find(({ kind }) => kind === 'tighten');
  if (found?.kind !== 'tighten') throw new Error('Nothing is tightened here.');
  return found;
}
const inchPounds = (value: number) => torque(value, 'lbf·in');
const newtonMetres = (value: number) => torque(value, 'N·m');
const cover = torqueTarget(inchPounds(175), limits(inchPounds(165), inchPounds(185)));
const plain = torqueTarget(newtonMetres(24.5), limits(newtonMetres(23), newtonMetres(26)));

describe('a setting', () => {
  test('names its target, the running torque, the adapter, and what to set', () => {
    const procedure = fireBoat();
    const found = settingFor(procedure, tightening(procedure), cover, inchPounds(22));
    // (175 + 22) × 10 / (10 + 1.5 cos 45°) = 197 × 0.904105 = 178.11
    expect(explainSetting(found)).toBe('target 175, plus 22 running, times 0.904 for the adapter: set 178');
  });
  test('with a bare wrench is the target; a wrench that shows is pulled to it', () => {
    const bare = (tool: object): string => {
      const procedure = procedureOf([tighten('ring')], { tools: [tool] });
      return explainSetting(settingFor(procedure, tightening(procedure), plain, null));
    };
    expect(bare(setting)).toBe('target 24.5: set 24.5');
    expect(bare(indicating)).toBe('target 24.5: pull to 24.5');
  });
  test('tells what the rule of judging accepts, where that is less than the window', () => {
    const by = (uncertainty: string): string => {
      const judging = { rule: 'guard band', uncertainty: { value: uncertainty, unit: 'N·m' } };
      const procedure = procedureOf([tighten('ring', { judging })], { tools: [indicating] });
      return explainSetting(settingFor(procedure, tightening(procedure), plain, null));
    };
    // The window is 23 to 26.
    expect(by('0.55')).toBe('target 24.5: pull to 24.5; by guard band 23.6 to 25.4 is accepted');
    expect(by('2')).toBe('target 24.5: pull to 24.5; by guard band no reading is accepted');
  });
  test('names units where the tool has another than the manual', () => {
    const inches = { value: '1', unit: 'lbf·in' };
    const tool = { ...setting, range: { min: inches, max: { value: '500', unit: 'lbf·in' } }, resolution: inches };
    const procedure = procedureOf([tighten('ring')], { tools: [tool] });
    expect(explainSetting(settingFor(procedure, tightening(procedure), plain, null))).toBe(
      'target 24.5 N·m: set 217 lbf·in', // 24.5 / 0.1129848 = 216.84
    );
  });
});

describe('the plan of a step', () => {
  test('is its passes, and where settings are worked out, that the values are at the fastener', () => {
    const procedure = fireBoat();
    expect(explainPlan(procedure, tightening(procedure))).toBe(
      'First the running torque of each is read. 12 fasteners in 4 passes: snug by hand, 87.5 lbf·in, 175 lbf·in from the middle outwards, then a check at 175 lbf·in until no nut turns round the pattern. These are values at the fastener; what to set is worked out.',
    );
  });
  test('with a bare wrench is its passes alone', () => {
    const procedure = demo();
    expect(explainPlan(procedure, tightening(procedure))).toBe(
      '10 fasteners in 2 passes: 12 N·m, then 24.5 N·m in the order of the manual.',
    );
  });
  test('is nothing where nothing is tightened', () => {
    const procedure = procedureOf([step('clean', 'do')]);
    expect(procedure.steps.map((each) => explainPlan(procedure, each))).toEqual([null]);
  });
});

describe('the lift', () => {
  test('is told with the fluid inside, its index for one person, what it means, and what it does not say', () => {
    // 31.5 kg + 1.8 L × 0.89 kg/L = 33.102 kg. Worse end: the stand, H 40 cm, V 80 cm, D 30 cm, A 30°, poor grip:
    // 23 × 25/40 × (1 − 0.003 × 5) × (0.82 + 4.5/30) × (1 − 0.0032 × 30) × 0.9 = 11.175 kg; 33.102 / 11.175 = 2.962.
    expect(explainLift(demo())).toEqual({
      facts: [
        'The component weighs 33.2 kg, with 1.7 kg of gear oil inside.',
        'Lifting index 3.0 for one person with the whole load.',
        'The load is above the limit recommended for one person: increased risk for some people.',
      ],
      limits: [
        'The lifting equation may warn; it does not certify that a lift is safe.',
        'The equation does not cover holding a load; the true limit is lower.',
      ],
    });
  });
  test('is only a weight where the file describes none', () =>
    expect(explainLift(procedureOf([step('clean', 'do')]))).toEqual({
      facts: ['The component weighs 10 kg.'],
      limits: [],
    }));
  test('has no index where the limit is zero: it is not allowed', () => {
    const far = loaded(edited('ropeway-oil-cooler', { 'lift.origin.horizontal.value': '64' }));
    expect(explainLift(far).facts.slice(1)).toEqual([
      'This lift is not allowed by hand: at this reach, height, turn or rate the limit is zero.',
    ]);
  });
  test('comes before the work with the check of the container', () => {
    // 6 L drain, and a fifth more is wanted where the file names no margin: 7.2 L.
    expect(explainBeforeWork(demo()).at(-1)).toBe(
      'The container holds 10.0 L; 7.2 L may be needed: 6.0 L and a margin of 20 %.',
    );
    const small = loaded(edited('ropeway-oil-cooler', { 'container.capacity.value': '7' }));
    expect(explainBeforeWork(small).at(-1)).toBe(
      'The container is too small: it holds 7.0 L, but 7.2 L may be needed: 6.0 L and a margin of 20 %.',
    );
  });
});

describe('a tool', () => {
  const [tool] = procedureOf([step('clean', 'do')]).tools;
  if (!tool) throw new Error('The tool is gone.');

  test('that may not be used is refused with its reason and the way out', () =>
    expect(explainTool({ tool, reasons: [{ code: 'above range', sentence: 'The setting is above it.' }] })).toBe(
      'Indicating wrench: may not be used here. The setting is above it. Choose another tool by the manual.',
    ));
  test('that is only to be minded is named with what to mind', () =>
    expect(explainTool({ tool, reasons: [{ code: 'calibration unknown', sentence: 'Look for its label.' }] })).toBe(
      'Indicating wrench: Look for its label.',
    ));
});

test('all of it can be spoken: figures and units become words, sentences begin with a capital', () => {
  expect(sayPlain('The calibration of the tool ended on 2031-03-31; take another tool.')).toBe(
    'The calibration of the tool ended on two zero three one, zero three, three one; take another tool.',
  );
  expect(sayPlain('12 fasteners. 3 passes.')).toBe('One two fasteners. Three passes.');
  expect(sayPlain('2.5 US gal may be needed.')).toBe('Two point five US gallons may be needed.');
  expect(sayPlain('target 175, plus 12 running, times 0.833 for the adapter: set 156')).toBe(
    'Target one seven five, plus one two running, times zero point eight three three for the adapter: set one five six',
  );
});
