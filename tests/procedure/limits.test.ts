import { describe, expect, it } from 'vitest';
import { asLine, type DemoName, edited, faultsOf, type Json } from './demo-files.ts';

const ROPEWAY = 'ropeway-oil-cooler';
const BOAT = 'fire-boat-pump-cover';
const newtonMetres = (value: string): Json => ({ value, unit: 'N·m' });
const around = (target: string, min: string, max: string): Json => ({
  kind: 'torque',
  target: newtonMetres(target),
  window: { min: newtonMetres(min), max: newtonMetres(max) },
});

describe('limits are drawn where they are said to be', () => {
  // prettier-ignore
  const limits: readonly [string, Record<string, Json | undefined>, string[], string[]][] = [
    ['tools.wrench-60.maximumError', {}, ['0.1', '20'], ['0', '20.1', '-1']],
    ['container.marginPercent', {}, ['0.5', '200'], ['0', '201']],
    ['lift.perMinute', {}, ['0', '60'], ['-0.1', '60.1']],
    ['lift.origin.asymmetry.value', {}, ['0', '180'], ['-1', '181']],
    ['steps.tighten-ring.judging.factor', { 'steps.tighten-ring.judging': { rule: 'guard band', uncertainty: newtonMetres('0.1') } }, ['0.5', '3'], ['0', '3.1']],
    ['steps.tighten-ring.judging.errorPercent', { 'steps.tighten-ring.judging': { rule: 'relative tool error' } }, ['0.5', '50'], ['0', '51']],
  ];

  it.each(limits)('%s', (path, first, good, bad) => {
    const refused = (value: string) => faultsOf(edited(ROPEWAY, { ...first, [path]: value })).length > 0;
    expect(good.filter(refused)).toEqual([]);
    expect(bad.filter(refused)).toEqual(bad);
  });

  const whole = {
    'steps.hold-cover.everySeconds': [5, 600, 4, 601],
    persons: [1, 20, 0, 21],
    'lift.persons': [1, 3, 0, 4],
  };
  it.each(Object.entries(whole))('%s', (path, [least, most, ...bad]) => {
    const refused = (value: number | undefined) => faultsOf(edited(BOAT, { [path]: value })).length > 0;
    expect([least, most].filter(refused)).toEqual([]);
    expect([...bad, 1.5].filter(refused)).toEqual([...bad, 1.5]);
  });
});

describe('what is unusual and sound is loaded', () => {
  // prettier-ignore
  const sound: readonly [string, DemoName, Record<string, Json | undefined>][] = [
    ['an outcome with two sayings', ROPEWAY, { 'steps.inspect-seal.outcomes.reuse.say': ['reuse', 'use it again'] }],
    ['nothing retained, of no known fluid', ROPEWAY, { 'component.retains.value': '0', 'component.fluid': undefined }],
    ['no window at all around a target', ROPEWAY, { 'steps.tighten-ring.passes.0': around('12', '12', '12') }],
    ['groups worked crosswise', ROPEWAY, { 'patterns.main-ring.order': { kind: 'grouped', size: 5 } }],
    ['a pattern in parts', ROPEWAY, { 'patterns.bracket.order': { kind: 'in turn', parts: [{ numbers: [2], order: { kind: 'circular' } }, { numbers: [3, 1], order: { kind: 'spiral' } }] } }],
    ['removal in the order of tightening', ROPEWAY, { 'steps.release-bracket.order': { kind: 'reverse', of: { kind: 'reverse', of: { kind: 'circular' } } } }],
    ['numbers as they are marked on the part', ROPEWAY, { 'patterns.bracket.layout.numbers': [11, 12, 13], 'patterns.bracket.order.numbers': [12, 11, 13] }],
    ['first some, then all', BOAT, { 'steps.tighten-cover.passes.1.only': [3, 9, 4, 10], 'steps.tighten-cover.passes.1.order': { kind: 'explicit', numbers: [10, 4, 9, 3] } }],
    ['a torque, then an angle', ROPEWAY, { 'steps.tighten-ring.passes.1': { kind: 'angle', angle: { value: '90', unit: '°' }, tolerance: { value: '0', unit: '°' } } }],
    ['an adapter square to the wrench, longer than its lever', BOAT, { 'adapters.crowfoot.angle.value': '90', 'adapters.crowfoot.length.value': '12' }],
    ['a tool with a class and no stated error', ROPEWAY, { 'tools.wrench-60.maximumError': undefined }],
  ];

  it.each(sound)('%s', (_, demo, changes) => {
    expect(faultsOf(edited(demo, changes)).map(asLine)).toEqual([]);
  });
});
