import { describe, expect, it } from 'vitest';
import { lintProcedure, RULES, type RuleName } from '../../src/procedure/lint.ts';
import { type DemoName, DEMOS, demoJson, edited, type Json, loaded, placeIn } from './demo-files.ts';

const ROPEWAY = 'ropeway-oil-cooler';
const BOAT = 'fire-boat-pump-cover';
type Changes = Readonly<Record<string, Json | undefined>>;

const torque = (value: string, unit = 'N·m'): Json => ({ value, unit });
const around = (target: string, min: string, max: string): Json => ({
  kind: 'torque',
  target: torque(target),
  window: { min: torque(min), max: torque(max) },
});
const hazard = (signal: string, consequence: string, text: string): Json => ({ signal, consequence, text });
const condition: Json = [{ id: 'spare', question: 'Is a spare cooler fitted?' }];
const applies = (is: boolean): Json => ({ condition: 'spare', is });
const doing = (id: string, more: { [key: string]: Json } = {}): Json => ({
  id,
  kind: 'do',
  title: 'x',
  text: 'x',
  ...more,
});

const warnings = (demo: DemoName, changes: Changes, rule: RuleName) =>
  lintProcedure(loaded(edited(demo, changes))).filter((warning) => warning.rule === rule);

/** For each rule: what makes it fire and where, and what looks like it but is sound. */
interface Case {
  readonly demo: DemoName;
  readonly fires: Changes;
  readonly at: string;
  readonly says: string;
  readonly sound: Changes;
}

// prettier-ignore
const CASES: Readonly<Record<RuleName, Case>> = {
  sourceWithoutDate: { demo: ROPEWAY, fires: { 'source.issued': undefined }, at: 'source.issued', says: 'has no date', sound: { 'source.issued': '2020-01-31' } },
  inventedNotMarked: { demo: ROPEWAY, fires: { invented: false }, at: 'invented', says: 'mark the procedure as invented', sound: { invented: false, 'source.document': 'Manual TM-R-41' } },
  nobodyToWitness: { demo: ROPEWAY, fires: { persons: undefined, lift: undefined }, at: 'steps.witness-ring', says: 'a second person is asked for', sound: { persons: 3 } },
  liftNeedsMorePersons: { demo: ROPEWAY, fires: { 'lift.persons': 3 }, at: 'lift.persons', says: 'takes 3 persons, but the work is for 2', sound: { 'lift.persons': 1 } },
  longToSay: { demo: ROPEWAY, fires: { 'steps.mark-ring.text': Array(21).fill('word').join(' ') }, at: 'steps.mark-ring.text', says: '21 words', sound: { 'steps.mark-ring.text': Array(20).fill('word').join(' ') } },

  workInHazard: { demo: ROPEWAY, fires: { 'steps.refit.hazards.0.text': 'The studs bend. Tighten nothing yet: lift the cooler first.' }, at: 'steps.refit.hazards.0', says: '"Tighten" is work', sound: { 'steps.refit.hazards.0.text': 'Do not tighten anything yet. Keep clear of an open line.' } },
  hazardsOutOfOrder: { demo: BOAT, fires: { 'steps.refit.hazards.0.signal': 'notice', 'steps.refit.hazards.0.consequence': 'equipment' }, at: 'steps.refit.hazards.1', says: 'a caution stands after a notice', sound: { 'steps.refit.hazards.1.signal': 'notice' } },
  signalAgainstConsequence: { demo: ROPEWAY, fires: { 'steps.refit.hazards.0': hazard('danger', 'equipment', 'The studs bend.') }, at: 'steps.refit.hazards.0', says: '"danger" does not stand for harm to equipment', sound: { 'steps.refit.hazards.0': hazard('danger', 'person', 'The cooler falls.') } },

  openedNeverClosed: { demo: BOAT, fires: { 'steps.close-gauge-line': doing('close-gauge-line') }, at: 'steps.open-gauge-line', says: 'no later step takes its cap out', sound: { conditions: condition, 'steps.rinse': undefined, 'steps.open-gauge-line.applies': applies(true) } },
  closedNeverOpened: { demo: BOAT, fires: { 'steps.open-gauge-line': doing('open-gauge-line') }, at: 'steps.close-gauge-line', says: 'no earlier step opens it', sound: { conditions: condition, 'steps.rinse': undefined, 'steps.close-gauge-line.applies': applies(true) } },
  openingNeverOpened: { demo: BOAT, fires: { 'openings.1': { id: 'gauge-connection', name: 'x', closure: 'cap' }, 'steps.open-gauge-connection': doing('open') }, at: 'openings.1', says: 'no cap or plug is asked for', sound: { 'steps.open-gauge-connection': doing('open', { opens: ['gauge-connection'] }) } },
  portsNotKeptUp: { demo: ROPEWAY, fires: { 'component.portsUp': undefined }, at: 'component.portsUp', says: 'which ports are kept up', sound: { 'component.portsUp': undefined, 'component.retains': torque('0', 'L') } },
  drainedVolumeMissing: { demo: ROPEWAY, fires: { 'component.drains': undefined }, at: 'component.drains', says: 'how much runs out', sound: { 'component.drains': undefined, container: undefined } },
  containerTooSmall: { demo: ROPEWAY, fires: { 'container.capacity.value': '7' }, at: 'container.capacity', says: 'too small', sound: { 'container.capacity.value': '7.2' } },

  tightenedBeforeSealSeated: { demo: ROPEWAY, fires: { 'steps.coat-seal.seals': [] }, at: 'steps.tighten-flange', says: 'seats the seal flange-seal', sound: { 'patterns.flange.seal': undefined, 'steps.coat-seal.seals': [] } },
  sealNeverInspected: { demo: ROPEWAY, fires: { 'steps.inspect-seal.seals': [] }, at: 'seals.flange-seal.reuse', says: 'no step inspects this seal', sound: { 'steps.inspect-seal.seals': [], 'seals.flange-seal.reuse': 'never' } },
  reuseWithoutCriteria: { demo: ROPEWAY, fires: { 'seals.flange-seal.criteria': [] }, at: 'seals.flange-seal.criteria', says: 'nothing says what to look for', sound: { 'seals.flange-seal.criteria': ['no cut'] } },
  singleUseSealReused: { demo: ROPEWAY, fires: { 'seals.flange-seal.reuse': 'never' }, at: 'steps.inspect-seal.outcomes.reuse', says: 'never used again, but reuse is offered', sound: { 'seals.flange-seal.reuse': 'never', 'steps.inspect-seal.outcomes.reuse.then': 'stay' } },
  patternNeverTightened: { demo: ROPEWAY, fires: { 'steps.tighten-bracket': undefined }, at: 'patterns.bracket', says: 'no step tightens', sound: { 'steps.release-bracket': undefined } },
  tightenedWithoutHandStart: { demo: ROPEWAY, fires: { 'steps.refit.handStart': [] }, at: 'steps.tighten-ring', says: 'starts all fasteners of main-ring by hand', sound: { 'steps.refit.handStart': [], 'steps.tighten-ring.passes.0': { kind: 'snug' } } },
  torqueBeforeSnug: { demo: ROPEWAY, fires: { 'steps.tighten-flange.passes.0': undefined }, at: 'steps.tighten-flange.passes.0', says: 'bring all snug crosswise', sound: { 'steps.tighten-flange.passes.0': around('8', '7', '9') } },
  heavyReleasedUnheld: { demo: ROPEWAY, fires: { 'steps.release-ring.heldBefore': undefined }, at: 'steps.release-ring', says: 'hold the weight', sound: { 'steps.release-ring.heldBefore': undefined, lift: undefined } },
  threadConditionMissing: { demo: ROPEWAY, fires: { 'patterns.flange.threadCondition': undefined }, at: 'patterns.flange.threadCondition', says: 'dry or lubricated is not stated', sound: { 'patterns.flange.threadCondition': 'dry' } },
  lubricantNotNamed: { demo: ROPEWAY, fires: { 'patterns.flange.threadCondition': 'Lubricated' }, at: 'patterns.flange.threadCondition', says: 'does not say with what', sound: { 'patterns.flange.threadCondition': 'lubricated with gear oil' } },
  usedNutsWithoutMinimum: { demo: BOAT, fires: { 'steps.tighten-cover.runDown.minimum': undefined }, at: 'steps.tighten-cover.runDown.minimum', says: 'a worn one would pass', sound: { 'steps.tighten-cover.runDown.minimum': undefined, 'steps.tighten-cover.runDown.used': false } },

  calibrationDateMissing: { demo: ROPEWAY, fires: { 'tools.wrench-60.calibrationDue': undefined }, at: 'tools.wrench-60.calibrationDue', says: 'no calibration date', sound: { 'tools.wrench-60.calibrationDue': '2020-01-31' } },
  toolErrorUnknown: { demo: ROPEWAY, fires: { 'tools.wrench-60.class': undefined, 'tools.wrench-60.maximumError': undefined }, at: 'tools.wrench-60', says: 'neither class nor maximum error', sound: { 'tools.wrench-60.maximumError': undefined } },
  // 12 N·m is 20 % of 60 N·m; no accuracy is promised below that (TM 1-1500-204-23-9, table 8-1).
  settingOutsideUsableRange: { demo: ROPEWAY, fires: { 'steps.tighten-ring.passes.0': around('11.5', '10', '13') }, at: 'steps.tighten-ring.passes.0', says: 'below 12 N·m', sound: { 'steps.tighten-ring.passes.0': around('12', '10', '13') } },
  toolTooCoarse: { demo: ROPEWAY, fires: { 'tools.wrench-60.resolution.value': '1.3' }, at: 'steps.tighten-ring.passes.0', says: 'too coarse for 12 N·m', sound: { 'tools.wrench-60.resolution.value': '1.2' } },
  noMarkInWindow: { demo: ROPEWAY, fires: { 'tools.wrench-60.type': 'setting', 'tools.wrench-60.resolution.value': '1', 'steps.tighten-bracket.passes.0': around('18.4', '18.1', '18.9') }, at: 'steps.tighten-bracket.passes.0', says: 'no mark inside the window', sound: { 'tools.wrench-60.type': 'setting', 'tools.wrench-60.resolution.value': '0.5', 'steps.tighten-bracket.passes.0': around('18.4', '18.1', '18.9') } },
  // ±4 % of 24 N·m is 0.96 N·m each way.
  windowTooNarrow: { demo: ROPEWAY, fires: { 'steps.tighten-ring.passes.1': around('24', '23.1', '24.9') }, at: 'steps.tighten-ring.passes.1', says: 'narrower than the tool\'s error of ±4 %', sound: { 'steps.tighten-ring.passes.1': around('24', '23', '25') } },
  toolInOtherUnit: { demo: ROPEWAY, fires: { 'steps.tighten-bracket.passes.0.target': torque('160', 'lbf·in') }, at: 'steps.tighten-bracket.passes.0', says: 'in lbf·in, but the tool shows N·m', sound: {} },
  runDownNotMeasurable: { demo: BOAT, fires: { 'steps.tighten-cover.runDown.tool': undefined, 'tools.dial-75': undefined }, at: 'steps.tighten-cover.runDown', says: 'wrench-250 shows no torque', sound: { 'steps.tighten-cover.runDown.minimum.value': '15' } },

  toolNeverUsed: { demo: BOAT, fires: { 'steps.tighten-cover.runDown': undefined }, at: 'tools.dial-75', says: 'no step uses the tool dial-75', sound: {} },
  adapterNeverUsed: { demo: BOAT, fires: { 'steps.tighten-cover.adapter': undefined }, at: 'adapters.crowfoot', says: 'no step uses the adapter', sound: {} },
  conditionNeverUsed: { demo: BOAT, fires: { 'steps.rinse.applies': undefined }, at: 'conditions.salt-water', says: 'no step uses the condition', sound: {} },
  sealNeverUsed: { demo: ROPEWAY, fires: { 'steps.inspect-seal.seals': [], 'steps.coat-seal.seals': [] }, at: 'seals.flange-seal', says: 'no step uses the seal', sound: { 'steps.inspect-seal.seals': [] } },
};

describe('each rule', () => {
  it('has a case here', () => expect(Object.keys(CASES).sort()).toEqual(Object.keys(RULES).sort()));

  const cases = Object.entries(CASES).map(([rule, each]) => ({ rule: rule as RuleName, ...each }));

  it.each(cases)('$rule fires at $at', ({ rule, demo, fires, at, says }) => {
    const found = warnings(demo, fires, rule);
    expect(found.map(({ path }) => path)).toContain(placeIn(edited(demo, fires), at));
    expect(found.map(({ message }) => message).join('\n')).toContain(says);
  });

  it.each(cases)('$rule is silent where there is nothing to ask', ({ rule, demo, sound }) => {
    expect(warnings(demo, sound, rule)).toEqual([]);
  });
});

describe('closer looks', () => {
  it('an opening closed only under a condition is still open without it', () => {
    const changes = {
      conditions: condition,
      'steps.rinse': undefined,
      'steps.close-gauge-line.applies': applies(true),
    };
    expect(warnings(BOAT, changes, 'openedNeverClosed')).toHaveLength(1);
  });

  it('an opening opened and closed under the same condition is sound, under opposite ones it is not', () => {
    const changes = (is: boolean) => ({
      conditions: condition,
      'steps.rinse': undefined,
      'steps.open-gauge-line.applies': applies(true),
      'steps.close-gauge-line.applies': applies(is),
    });
    expect(warnings(BOAT, changes(true), 'openedNeverClosed')).toEqual([]);
    expect(warnings(BOAT, changes(false), 'openedNeverClosed')).toHaveLength(1);
  });

  it('an opening may be opened and closed in one step, but not closed before it is opened', () => {
    const lines = (opens: Json, closes: Json) => ({
      'steps.open-gauge-line': doing('first', { closes }),
      'steps.close-gauge-line': doing('last', { opens }),
    });
    const inOne = { 'steps.open-gauge-line': doing('both', { opens: ['gauge-line'], closes: ['gauge-line'] }) };
    const sound = { ...inOne, 'steps.close-gauge-line': doing('last') };
    expect(warnings(BOAT, sound, 'openedNeverClosed')).toEqual([]);
    expect(warnings(BOAT, sound, 'closedNeverOpened')).toEqual([]);
    const backwards = lines(['gauge-line'], ['gauge-line']);
    expect(warnings(BOAT, backwards, 'openedNeverClosed')).toHaveLength(1);
    expect(warnings(BOAT, backwards, 'closedNeverOpened')).toHaveLength(1);
  });

  it('the class of a tool says how far to trust it where no error is stated', () => {
    const byClass = (letter: string) => ({
      'tools.wrench-60.maximumError': undefined,
      'tools.wrench-60.class': letter,
      'steps.tighten-ring.passes.1': around('24', '23', '25'),
    });
    // Class B: ±4 % above 10 N·m; class A: ±6 % throughout, which is 1.44 N·m each way of 24 (ISO 6789-1, from memory).
    expect(warnings(ROPEWAY, byClass('B'), 'windowTooNarrow')).toEqual([]);
    expect(warnings(ROPEWAY, byClass('A'), 'windowTooNarrow').map(({ message }) => message)).toContain(
      "the window 23 N·m to 25 N·m is narrower than the tool's error of ±6 %",
    );
  });

  it('the thread of a pattern that nobody tightens needs no condition', () => {
    const changes = { 'steps.tighten-bracket': undefined, 'patterns.bracket.threadCondition': undefined };
    expect(warnings(ROPEWAY, changes, 'threadConditionMissing')).toEqual([]);
  });

  it('half a litre is enough to want the ports up', () => {
    const changes = { 'component.portsUp': undefined, 'component.retains.value': '0.5' };
    expect(warnings(ROPEWAY, changes, 'portsNotKeptUp')).toHaveLength(1);
  });

  it('one single-use seal among several is seen', () => {
    const seals = [
      { id: 'flange-seal', name: 'x', reuse: 'if it passes inspection', criteria: ['no cut'] },
      { id: 'gasket', name: 'x', reuse: 'never' },
    ];
    const inspected = (...ids: string[]) => ids.map((seal) => ({ seal, is: 'inspected' }));
    const offered = (...ids: string[]) =>
      warnings(ROPEWAY, { seals, 'steps.inspect-seal.seals': inspected(...ids) }, 'singleUseSealReused');
    expect(offered('flange-seal', 'gasket')).toHaveLength(1);
    expect(offered('flange-seal')).toEqual([]);
  });

  it.each([
    ['notice', 'person', 1],
    ['notice', 'equipment', 0],
    ['danger', 'equipment', 1],
    ['danger', 'person', 0],
    ['warning', 'equipment', 0],
    ['caution', 'person', 0],
  ])('a %s for harm to %s gives %i warning', (signal, consequence, count) => {
    const changes = { 'steps.refit.hazards.0': hazard(signal, consequence, 'It bends.') };
    expect(warnings(ROPEWAY, changes, 'signalAgainstConsequence')).toHaveLength(count);
  });

  it('a seal must be seated before its joint is tightened, not after', () => {
    const late = { 'steps.coat-seal.seals': [], 'steps.fill.seals': [{ seal: 'flange-seal', is: 'seated' }] };
    expect(warnings(ROPEWAY, late, 'tightenedBeforeSealSeated')).toHaveLength(1);
  });

  it('fasteners must be started by hand before they are tightened, not after', () => {
    const late = { 'steps.refit.handStart': [], 'steps.fill.handStart': ['main-ring'] };
    expect(warnings(ROPEWAY, late, 'tightenedWithoutHandStart')).toHaveLength(1);
  });

  it.each([
    ['a witness for each reading', { 'steps.tighten-ring.confirm': 'witness each' }, 'steps.tighten-ring.confirm'],
    ['a witness for a step', { 'steps.refit.witness': true }, 'steps.refit.witness'],
  ] as const)('%s needs a second person', (_, changes, at) => {
    const found = warnings(ROPEWAY, { ...changes, persons: 1 }, 'nobodyToWitness');
    expect(found.map(({ path }) => path)).toContain(placeIn(demoJson(ROPEWAY), at));
  });

  it('the range of the tool is held against the setting with the adapter, not against the torque at the fastener', () => {
    const long = { 'adapters.crowfoot.length.value': '9', 'adapters.crowfoot.angle.value': '0' };
    // 87.5 × 10 / (10 + 9) = 46.05 lbf·in, below 20 % of 250.
    expect(warnings(BOAT, long, 'settingOutsideUsableRange').map(({ message }) => message)).toEqual([
      expect.stringContaining('the setting 46.0526 lbf·in is below 50 lbf·in'),
    ]);
  });

  it('the mark beyond the target counts where the nearest one is outside the window', () => {
    const pass = around('24.4', '24.2', '25.2');
    const marks: Changes = { 'tools.wrench-60.type': 'setting', 'tools.wrench-60.resolution.value': '1' };
    const fits: Changes = { ...marks, 'steps.tighten-bracket.passes.0': pass };
    expect(warnings(ROPEWAY, fits, 'noMarkInWindow')).toEqual([]);
    const judging = { rule: 'guard band', uncertainty: torque('0.3') }; // accepted is 24.5 to 24.9
    expect(warnings(ROPEWAY, { ...fits, 'steps.tighten-bracket.judging': judging }, 'noMarkInWindow')).toHaveLength(1);
  });

  it('running torque should not be measured with the large tool of the step', () => {
    const changes: Changes = {
      'tools.wrench-250.type': 'indicating',
      'steps.tighten-cover.runDown': { used: false },
    };
    const found = warnings(BOAT, changes, 'runDownNotMeasurable').map(({ message }) => message);
    expect(found).toEqual([expect.stringContaining('is good from 50 lbf·in; name a smaller one')]);
  });

  it('a setting above full scale is told as well', () => {
    const changes = { 'steps.tighten-ring.passes.1': around('61', '60', '66') };
    expect(warnings(ROPEWAY, changes, 'settingOutsideUsableRange').map(({ message }) => message)).toEqual([
      "the setting 61 N·m is above the tool's 60 N·m",
    ]);
  });

  it('a rule of judging that could accept nothing is told', () => {
    const changes = { 'steps.tighten-ring.judging': { rule: 'guard band', uncertainty: torque('1.2') } };
    // 11–13 N·m less 1.2 on both sides is empty; 23–26 is not.
    expect(warnings(ROPEWAY, changes, 'windowTooNarrow').map(({ path }) => path)).toEqual([
      placeIn(demoJson(ROPEWAY), 'steps.tighten-ring.passes.0'),
    ]);
  });

  it('a tool that is blind to the least run-down torque is told', () => {
    const found = warnings(BOAT, { 'steps.tighten-cover.runDown.minimum.value': '14' }, 'runDownNotMeasurable');
    expect(found.map(({ message }) => message)).toEqual([
      'the tool dial-75 is good from 15 lbf·in, above the minimum 14 lbf·in',
    ]);
  });
});

it.each(DEMOS)('%s has no warning', (name) => {
  expect(lintProcedure(loaded(demoJson(name)))).toEqual([]);
});
