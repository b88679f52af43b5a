import { describe, expect, it } from 'vitest';
import { LARGEST_FILE, loadProcedure, readProcedure, stepText } from '../../src/procedure/procedure.ts';
import {
  asLine,
  type DemoName,
  demoJson,
  demoText,
  edited,
  faultsOf,
  type Json,
  loaded,
  placeIn,
} from './demo-files.ts';

const ROPEWAY = 'ropeway-oil-cooler';
const BOAT = 'fire-boat-pump-cover';
const newtonMetres = (value: string): Json => ({ value, unit: 'N·m' });
const poundInches = (value: string): Json => ({ value, unit: 'lbf·in' });
const around = (target: string, min: string, max: string) => ({
  kind: 'torque',
  target: newtonMetres(target),
  window: { min: newtonMetres(min), max: newtonMetres(max) },
});

describe('a procedure that is sound', () => {
  it('is loaded with its quantities in full precision and its stated defaults', () => {
    const procedure = loaded(demoJson(ROPEWAY));
    expect(procedure.component.dryMass).toEqual({ kind: 'mass', value: 31.5, unit: 'kg' });
    expect(procedure.steps.find(({ id }) => id === 'tighten-ring')).toMatchObject({ confirm: 'each', witness: false });
  });

  it('is spoken by its short text where it has one, else by its text', () => {
    const { steps } = loaded(demoJson(ROPEWAY));
    const spoken = (id: string) => steps.filter((step) => step.id === id).map(stepText);
    expect(spoken('drain')).toEqual(['Drain the cooler. About six litres.']);
    expect(spoken('mark-ring')).toEqual(['Draw a paint line over each nut and its stud.']);
  });
});

describe('a fault is named with its path, what was found and what was expected', () => {
  /** [what is wrong, demonstration, changes, path of the fault, words of its message] */
  // prettier-ignore
  const cases: readonly [string, DemoName, Record<string, Json | undefined>, string, string][] = [
    // single fields
    ['a unit that is none', ROPEWAY, { 'steps.tighten-ring.passes.0.target.unit': 'Nm' }, 'steps.tighten-ring.passes.0.target.unit', 'found "Nm", expected a unit of torque: N·m'],
    ['a number that is no text', ROPEWAY, { 'component.dryMass.value': 31.5 }, 'component.dryMass.value', 'found 31.5, expected a decimal number in quotes'],
    ['a decimal comma', ROPEWAY, { 'component.dryMass.value': '31,5' }, 'component.dryMass.value', 'found "31,5", expected a decimal'],
    ['NaN', ROPEWAY, { 'component.dryMass.value': 'NaN' }, 'component.dryMass.value', 'found "NaN", expected a decimal'],
    ['a number too long to be finite', ROPEWAY, { 'component.dryMass.value': '9'.repeat(400) }, 'component.dryMass.value', 'expected 20 characters at most'],
    ['a mass of zero', ROPEWAY, { 'component.dryMass.value': '0' }, 'component.dryMass', 'found 0 kg, expected a mass above zero'],
    ['a volume below zero', ROPEWAY, { 'component.drains.value': '-1' }, 'component.drains', 'found -1 L, expected a volume of zero or more'],
    ['a missing field', ROPEWAY, { title: undefined }, 'title', 'missing, expected words in quotes'],
    ['a missing quantity', ROPEWAY, { 'tools.wrench-60.resolution': undefined }, 'tools.wrench-60.resolution', 'missing, expected a torque such as'],
    ['a number where an object belongs', ROPEWAY, { component: 5 }, 'component', 'found 5, expected an object with the fields name, partNumber'],
    ['words where yes or no belongs', ROPEWAY, { invented: 'yes' }, 'invented', 'found "yes", expected true or false'],
    ['an unknown field of a quantity', ROPEWAY, { 'component.dryMass.tolerance': '1' }, 'component.dryMass.tolerance', 'unknown field, expected a mass such as'],
    ['a quantity without its unit', ROPEWAY, { 'component.dryMass.unit': undefined }, 'component.dryMass.unit', 'missing, expected a mass such as'],
    ['an unknown field', ROPEWAY, { 'component.colour': 'red' }, 'component.colour', 'unknown field, expected one of: name, partNumber'],
    ['a field called like a method', ROPEWAY, { 'component.toString': 'red' }, 'component.toString', 'unknown field'],
    ['an unknown kind of step', ROPEWAY, { 'steps.drain.kind': 'pour' }, 'steps.drain.kind', 'found "pour", expected a kind of step: do, check'],
    ['a missing kind of pass', ROPEWAY, { 'steps.tighten-ring.passes.0.kind': undefined }, 'steps.tighten-ring.passes.0.kind', 'found nothing, expected a kind of pass'],
    ['an empty text', ROPEWAY, { 'steps.drain.text': '' }, 'steps.drain.text', 'found "", expected words'],
    ['a text of two lines', ROPEWAY, { 'steps.drain.text': 'a\nb' }, 'steps.drain.text', 'expected words in one line'],
    ['half a character, which no record could hold', ROPEWAY, { 'steps.drain.text': 'a\ud800' }, 'steps.drain.text', 'expected words'],
    ['an id with a space', ROPEWAY, { 'steps.drain.id': 'drain it' }, 'steps.drain.id', 'found "drain it", expected a name of small letters'],
    ['a day that is none', ROPEWAY, { 'source.issued': '2026-02-30' }, 'source.issued', 'expected a day of the calendar'],
    ['a window the wrong way round', ROPEWAY, { 'steps.tighten-ring.passes.0.window.min': newtonMetres('14') }, 'steps.tighten-ring.passes.0.window', 'found 14 N·m to 13 N·m, expected a "min" that is not above its "max"'],
    ['a measurement window the wrong way round', BOAT, { 'steps.pressure.window.min': '130' }, 'steps.pressure.window', 'expected a "min"'],
    ['no steps', ROPEWAY, { steps: [] }, 'steps', 'expected at least one step'],
    ['an object where a list belongs', ROPEWAY, { steps: {} }, 'steps', 'found an object, expected a list of steps'],
    ['a check that can never go on', ROPEWAY, { 'steps.make-safe.outcomes.affirm.then': 'stay' }, 'steps.make-safe.outcomes', 'expected an outcome that goes on'],
    ['an adapter angle beyond straight back', BOAT, { 'adapters.crowfoot.angle.value': '181' }, 'adapters.crowfoot.angle', 'expected an angle from 0° to 180°'],
    ['the same fastener twice in a group', ROPEWAY, { 'steps.tighten-ring.passes.0.only': [1, 1] }, 'steps.tighten-ring.passes.0.only', 'expected each fastener number once'],
    // names
    ['an id given twice', ROPEWAY, { 'steps.drain.id': 'make-safe' }, 'steps.1.id', 'found "make-safe", which steps.0 has'],
    ['outcomes that are said alike', ROPEWAY, { 'steps.inspect-seal.outcomes.replace.say': ['reuse'] }, 'steps.inspect-seal.outcomes.replace.say.0', 'found "reuse", which is said for outcome 0'],
    ['an outcome said like the id of a later one', ROPEWAY, { 'steps.inspect-seal.outcomes.reuse.say': ['replace'] }, 'steps.inspect-seal.outcomes.replace.id', 'which is said for outcome 0'],
    ['an unknown pattern', ROPEWAY, { 'steps.tighten-ring.pattern': 'ring' }, 'steps.tighten-ring.pattern', 'found "ring", expected one of the patterns: main-ring, bracket, flange'],
    ['an unknown pattern to loosen', ROPEWAY, { 'steps.release-bracket.pattern': 'ring' }, 'steps.release-bracket.pattern', 'expected one of the patterns'],
    ['an unknown pattern to start by hand', ROPEWAY, { 'steps.refit.handStart': ['ring'] }, 'steps.refit.handStart.0', 'expected one of the patterns'],
    ['an unknown tool', ROPEWAY, { 'steps.tighten-ring.tool': 'wrench' }, 'steps.tighten-ring.tool', 'expected one of the tools: wrench-60'],
    ['an unknown tool for the run-down torque', BOAT, { 'steps.tighten-cover.runDown.tool': 'x' }, 'steps.tighten-cover.runDown.tool', 'expected one of the tools'],
    ['an adapter in a file without any', ROPEWAY, { 'steps.tighten-ring.adapter': 'crowfoot' }, 'steps.tighten-ring.adapter', 'but the file has no adapters'],
    ['an unknown opening', BOAT, { 'steps.open-gauge-line.opening': 'hatch' }, 'steps.open-gauge-line.opening', 'expected one of the openings'],
    ['an unknown opening among several', ROPEWAY, { 'steps.open-lines.opens.1': 'hatch' }, 'steps.open-lines.opens.1', 'expected one of the openings'],
    ['an unknown opening to close', ROPEWAY, { 'steps.join-lines.closes.0': 'hatch' }, 'steps.join-lines.closes.0', 'expected one of the openings'],
    ['an unknown seal', ROPEWAY, { 'steps.coat-seal.seals.0.seal': 'ring' }, 'steps.coat-seal.seals.0.seal', 'expected one of the seals: flange-seal'],
    ['an unknown seal of a pattern', ROPEWAY, { 'patterns.flange.seal': 'ring' }, 'patterns.flange.seal', 'expected one of the seals'],
    ['an unknown condition', BOAT, { 'steps.rinse.applies.condition': 'ice' }, 'steps.rinse.applies.condition', 'expected one of the conditions: salt-water'],
    // patterns and orders
    ['a number marked on two studs', ROPEWAY, { 'patterns.main-ring.layout.numbers': [1, 2, 3, 4, 5, 6, 7, 8, 9, 9] }, 'patterns.main-ring.layout.numbers', 'Number 9 is marked on two fasteners.'],
    ['too few numbers', ROPEWAY, { 'patterns.main-ring.layout.numbers': [1, 2, 3] }, 'patterns.main-ring.layout.numbers', '10 fasteners but only 3 numbers'],
    ['two bolts in one spot', ROPEWAY, { 'patterns.bracket.layout.places.0.x': '0' }, 'patterns.bracket.layout.places', 'Places 1 and 2 are the same spot.'],
    ['an edge of one row', BOAT, { 'patterns.cover.layout.rows': 1 }, 'patterns.cover.layout', 'at least two columns and two rows'],
    ['an order that leaves a stud out', ROPEWAY, { 'patterns.main-ring.order.numbers': [1, 6, 3, 8, 5, 10, 7, 2, 9] }, 'patterns.main-ring.order.numbers', 'leaves out fastener 4'],
    ['an order that names a stud twice', ROPEWAY, { 'patterns.main-ring.order.numbers.9': 1 }, 'patterns.main-ring.order.numbers', 'names fastener 1 twice'],
    ['an order that names no stud of the ring', ROPEWAY, { 'patterns.main-ring.order.numbers.9': 11 }, 'patterns.main-ring.order.numbers', 'names fastener 11'],
    ['a crosswise order of free places', ROPEWAY, { 'patterns.bracket.order': { kind: 'crosswise' } }, 'patterns.bracket.order', 'needs a ring or an edge'],
    ['groups that do not come out even', ROPEWAY, { 'patterns.main-ring.order': { kind: 'grouped', size: 3 } }, 'patterns.main-ring.order.size', 'cannot be cut into groups of 3'],
    ['a fault inside a reversed order', ROPEWAY, { 'patterns.bracket.order': { kind: 'reverse', of: { kind: 'crosswise' } } }, 'patterns.bracket.order.of', 'needs a ring or an edge'],
    ['a part that leaves out the rest', ROPEWAY, { 'patterns.bracket.order': { kind: 'in turn', parts: [{ numbers: [1], order: { kind: 'circular' } }] } }, 'patterns.bracket.order.parts', 'leaves out fastener 2, 3'],
    ['a fault inside one part of an order', ROPEWAY, { 'patterns.bracket.order': { kind: 'in turn', parts: [{ numbers: [1], order: { kind: 'circular' } }, { numbers: [2, 3], order: { kind: 'explicit', numbers: [2] } }] } }, 'patterns.bracket.order.parts.1.order.numbers', 'leaves out fastener 3'],
    ['a fault in the order of removal', ROPEWAY, { 'steps.release-bracket.order': { kind: 'explicit', numbers: [1, 2] } }, 'steps.release-bracket.order.numbers', 'leaves out fastener 3'],
    ['no stage of loosening', ROPEWAY, { 'steps.release-bracket.stages': [] }, 'steps.release-bracket.stages', 'expected at least one stage'],
    // passes
    ['a target outside its window', ROPEWAY, { 'steps.tighten-ring.passes.1.target': newtonMetres('27') }, 'steps.tighten-ring.passes.1.target', 'The target 27 N·m is outside its window.'],
    ['a final target outside its window', BOAT, { 'steps.tighten-cover.final.target': poundInches('150') }, 'steps.tighten-cover.final.target', 'outside its window'],
    ['a pass that goes down', ROPEWAY, { 'steps.tighten-ring.passes.1': around('10', '9', '11') }, 'steps.tighten-ring.passes.1', 'fastener 1 would get 10 N·m after 12 N·m'],
    ['a bad pass of a pattern worked in parts', ROPEWAY, { 'patterns.bracket.order': { kind: 'in turn', parts: [{ numbers: [2], order: { kind: 'circular' } }, { numbers: [1, 3], order: { kind: 'circular' } }] }, 'steps.tighten-bracket.passes.0': around('20', '17', '19') }, 'steps.tighten-bracket.passes.0.target', 'outside its window'],
    ['a bad pass with an order of its own', ROPEWAY, { 'steps.tighten-bracket.passes.0': { ...around('20', '17', '19'), order: { kind: 'circular' } } }, 'steps.tighten-bracket.passes.0.target', 'outside its window'],
    ['a percentage of nothing', BOAT, { 'steps.tighten-cover.final': undefined }, 'steps.tighten-cover.passes.1', 'a percentage but no final target'],
    ['more than all of the target', BOAT, { 'steps.tighten-cover.passes.1.percent': '101' }, 'steps.tighten-cover.passes.1.percent', 'above 0 and up to 100'],
    ['steps that miss the target', BOAT, { 'steps.tighten-cover.passes.1': { kind: 'increments', from: poundInches('60'), step: poundInches('50') } }, 'steps.tighten-cover.passes.1.step', 'do not land on 175 lbf·in'],
    ['a turn smaller than its tolerance', BOAT, { 'steps.tighten-cover.passes.3': { kind: 'angle', angle: { value: '5', unit: '°' }, tolerance: { value: '5', unit: '°' } } }, 'steps.tighten-cover.passes.3.tolerance', 'more than its tolerance'],
    ['a part of a ring that has nothing crosswise', ROPEWAY, { 'patterns.main-ring.order': { kind: 'crosswise' }, 'steps.tighten-ring.passes.0.only': [1, 2, 3, 4] }, 'steps.tighten-ring.passes.0.only', 'at equal distances'],
    ['a re-check at once', BOAT, { 'steps.tighten-cover.passes.3': { kind: 're-check', afterHours: '0' } }, 'steps.tighten-cover.passes.3.afterHours', 'above zero hours'],
    ['a pass for a stud that is not there', ROPEWAY, { 'steps.tighten-ring.passes.0.only': [11] }, 'steps.tighten-ring.passes.0.only', 'The pattern has no fastener 11.'],
    ['a pass with an order that misses a stud', ROPEWAY, { 'steps.tighten-ring.passes.0.order': { kind: 'explicit', numbers: [1] } }, 'steps.tighten-ring.passes.0.order.numbers', 'leaves out fastener 2, 3'],
    ['a stud that no pass works', ROPEWAY, { 'steps.tighten-ring.passes.0.only': [1, 2], 'steps.tighten-ring.passes.1.only': [1, 2, 3] }, 'steps.tighten-ring.passes', 'No pass works fastener 4'],
    // tools, adapters, fluid, lift
    ['an adapter on a wrench of unknown length', BOAT, { 'tools.wrench-250.lever': undefined }, 'steps.tighten-cover.adapter', 'expected "lever" in the tool wrench-250'],
    ['a lever of zero', BOAT, { 'tools.wrench-250.lever.value': '0' }, 'tools.wrench-250.lever', 'expected a length above zero'],
    ['an adapter that points back past the hand', BOAT, { 'adapters.crowfoot.angle.value': '180', 'adapters.crowfoot.length.value': '10' }, 'steps.tighten-cover.adapter', 'points back as far as the hand'],
    ['a class that the type of tool has not', ROPEWAY, { 'tools.wrench-60.class': 'G', 'tools.wrench-60.maximumError': undefined }, 'tools.wrench-60.class', 'class "G" has no known error'],
    ['fluid that stays inside, of unknown density', ROPEWAY, { 'component.fluid': undefined }, 'component.fluid', 'missing, expected the fluid that the component retains'],
    ['a good grip with gloves on', ROPEWAY, { 'lift.coupling': 'good' }, 'lift.coupling', 'a grip is never good'],
  ];

  it.each(cases)('%s', (_, demo, changes, path, words) => {
    const json = edited(demo, changes);
    const faults = faultsOf(json);
    expect(faults.map((fault) => fault.path)).toContain(placeIn(demoJson(demo), path));
    expect(faults.map(({ message }) => message).join('\n')).toContain(words);
  });

  it('and all faults of single fields are told at once', () => {
    const json = edited(ROPEWAY, {
      title: undefined,
      'component.dryMass.unit': 'stone',
      'tools.wrench-60.type': 'bent',
      'steps.tighten-ring.passes.0.target.value': 'twelve',
      'steps.tighten-ring.passes.1.kind': 'twist',
    });
    expect(
      faultsOf(json)
        .map(({ path }) => path)
        .sort(),
    ).toEqual([
      'component.dryMass.unit',
      'steps.9.passes.0.target.value',
      'steps.9.passes.1.kind',
      'title',
      'tools.0.type',
    ]);
  });

  it('and all faults of orders and passes are told at once', () => {
    const json = edited(BOAT, {
      'tools.wrench-250.lever': undefined,
      'steps.tighten-cover.passes.1.percent': '0',
      'steps.tighten-cover.passes.2.percent': '101',
    });
    expect(faultsOf(json).map(({ path }) => path)).toEqual([
      placeIn(demoJson(BOAT), 'steps.tighten-cover.adapter'),
      placeIn(demoJson(BOAT), 'steps.tighten-cover.passes.1.percent'),
      placeIn(demoJson(BOAT), 'steps.tighten-cover.passes.2.percent'),
    ]);
  });

  it('and every unknown field of an object is named', () => {
    const json = edited(ROPEWAY, { 'source.page': '4', 'source.author': 'nobody' });
    expect(faultsOf(json).map(asLine)).toEqual([
      'source.page: unknown field (as are author), expected one of: document, revision, issued',
    ]);
  });
});

describe('a file that is no procedure', () => {
  it.each([
    ['', 'found the end of the file, expected a value'],
    ['torque the ring', 'line 1, column 1: found "t"'],
    ['[]', 'found an empty list, expected a procedure'],
    ['null', 'found null, expected a procedure'],
    ['{}', 'found nothing, expected "bothhands-procedure": this file is not a procedure'],
    ['{ "name": "x", "version": "1.0.0" }', 'this file is not a procedure'],
    ['{ "format": "recipe" }', 'found "recipe", expected "bothhands-procedure"'],
    [' '.repeat(LARGEST_FILE + 1), 'expected a procedure of at most'],
    ['['.repeat(100_000), 'nested more than 64 levels deep'],
  ])('%.40s', (text, words) => {
    const result = loadProcedure(text);
    expect(result.kind).toBe('faulty');
    expect(result.kind === 'faulty' ? result.faults.map(asLine).join() : '').toContain(words);
  });

  it('and parsed JSON nested without end is refused as well', () => {
    let order: Json = { kind: 'spiral' };
    for (let i = 0; i < 50_000; i++) order = { kind: 'reverse', of: order };
    expect(faultsOf(edited(BOAT, { 'patterns.cover.order': order })).map(asLine)).toEqual([
      ': nested more than 64 levels deep',
    ]);
  });

  it('and a plan too large for any joint is counted before it is made: nothing else is found in it', () => {
    const torque = (value: string): Json => ({ value, unit: 'N·m' });
    const increments = { kind: 'increments', from: torque('1'), step: torque('1') };
    const final = { target: torque('99'), window: { min: torque('98'), max: torque('100') } };
    const passes = Array.from({ length: 50 }, () => increments); // each of them goes down to 1 N·m again
    const ring = { id: 'x', kind: 'tighten', title: 'x', text: 'x', pattern: 'main-ring', tool: 'wrench-60' };
    const large = (count: number): Json =>
      edited(ROPEWAY, {
        'patterns.main-ring.layout': { shape: 'ring', count },
        'patterns.main-ring.order': { kind: 'circular' },
        'steps.drain': { ...ring, final, passes },
      });
    const message = 'with this step the procedure calls more than 50000 fasteners';
    expect(faultsOf(large(1000)).map(({ message: found }) => found)).toEqual([message]);
    expect(faultsOf(large(10)).map(asLine).join()).toContain('goes down');
  });

  it('and many steps that are each of an honest size are too many together', () => {
    const layout = { shape: 'ring', count: 1000 };
    const passes = Array.from({ length: 50 }, () => around('24.5', '23', '26'));
    const step = { id: 'x', kind: 'tighten', title: 'x', text: 'x', pattern: 'main-ring', tool: 'wrench-60', passes };
    const json = edited(ROPEWAY, {
      'patterns.main-ring.layout': layout,
      'patterns.main-ring.order': { kind: 'circular' },
      'steps.drain': step,
    });
    expect(faultsOf(json).map(asLine).join()).toContain('the procedure calls more than 50000 fasteners');
  });
});

it('a grip that is too good is told once, though it is that of both ends', () => {
  expect(faultsOf(edited(ROPEWAY, { 'lift.coupling': 'good' })).map(({ path }) => path)).toEqual(['lift.coupling']);
});

describe('the version of the format', () => {
  const withVersion = (version: Json | undefined) => faultsOf(edited(ROPEWAY, { version })).map(asLine);

  it('that is newer than the program is refused, and says what is needed', () => {
    expect(withVersion(2)).toEqual(['version: found 2, expected 1: this file needs a newer program']);
  });

  it.each([undefined, null, 0, -1, 1.5, '1'])('%s is no version', (version) => {
    expect(withVersion(version)).toEqual([expect.stringContaining('expected 1, the version of the format')]);
  });
});

it('text and parsed JSON are read alike', () => {
  expect(loadProcedure(demoText(BOAT))).toEqual(readProcedure(demoJson(BOAT)));
});
