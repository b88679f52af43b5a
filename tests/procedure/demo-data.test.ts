import { describe, expect, it } from 'vitest';
import { atWrench, carriedMass, containerCheck } from '../../src/procedure/lead-hand.ts';
import { closedIn, openedIn, type Procedure, type StepOf } from '../../src/procedure/procedure.ts';
import { planOf } from '../../src/session/calls.ts';
import { display } from '../../src/units/index.ts';
import { childOf, DEMOS, demoJson, loaded } from './demo-files.ts';

const ropeway = loaded(demoJson('ropeway-oil-cooler'));
const boat = loaded(demoJson('fire-boat-pump-cover'));

function tightening(procedure: Procedure, id: string): StepOf<'tighten'> {
  const step = procedure.steps.find((candidate) => candidate.id === id);
  if (step?.kind !== 'tighten') throw new Error(`${id} tightens nothing`);
  return step;
}
const passesOf = (procedure: Procedure, id: string) => planOf(procedure, tightening(procedure, id)).passes;

describe.each(DEMOS)('%s', (name) => {
  const procedure = loaded(demoJson(name));

  it('is marked as invented and points to the schema beside it', () => {
    expect(procedure.invented).toBe(true);
    expect(childOf(demoJson(name), '$schema')).toBe('procedure.schema.json');
  });

  it('takes out as many caps and plugs as it put in', () => {
    const opened = procedure.steps.flatMap(openedIn);
    expect([...procedure.steps.flatMap(closedIn)].sort()).toEqual([...opened].sort());
    expect(opened.length).toBe(procedure.openings.length);
  });

  it('has everything counted before anything is pumped or run', () => {
    const { steps } = procedure;
    const counted = steps.findIndex((step) => step.kind === 'check' && step.reconciles);
    const pumped = steps.findIndex(({ text }) => /\b(pump|prime|run) the\b/i.test(text));
    expect(counted).toBeGreaterThan(0);
    expect(pumped).toBeGreaterThan(counted);
  });

  it('starts by making safe, with a warning to acknowledge before anything is touched', () => {
    const [first] = procedure.steps;
    expect(first?.kind).toBe('check');
    expect(first?.hazards[0]).toMatchObject({ signal: 'warning', consequence: 'person' });
  });
});

describe('the oil cooler', () => {
  it('comes off, has its seal inspected, goes back on and is tightened before its lines are uncapped and joined', () => {
    expect(ropeway.steps.map(({ id }) => id)).toEqual([
      'make-safe',
      'drain',
      'open-lines',
      'release-bracket',
      'release-ring',
      'lift-off',
      'inspect-seal',
      'carry-on',
      'refit',
      'tighten-ring',
      'witness-ring',
      'mark-ring',
      'start-bracket',
      'tighten-bracket',
      'coat-seal',
      'join-lines',
      'tighten-flange',
      'fill',
      'oil-level',
      'count',
      'pressure-hold',
      'leak-check',
    ]);
  });

  it('tightens its ring crosswise in two passes', () => {
    const passes = passesOf(ropeway, 'tighten-ring');
    expect(passes.map(({ order }) => order)).toEqual(Array(2).fill([1, 6, 3, 8, 5, 10, 7, 2, 9, 4]));
    expect(passes.map(({ target, window }) => [target, window?.min, window?.max].map((each) => each?.value))).toEqual([
      [12, 11, 13],
      [24.5, 23, 26],
    ]);
  });

  it('weighs 33.1 kg with the oil it retains: 31.5 kg and 1.8 L of 0.89 kg/L', () => {
    expect(display(carriedMass(ropeway).total, 'kg', 3)).toBe('33.102 kg');
  });

  it('drains into a pan that holds six litres and a fifth more', () => {
    expect(containerCheck(ropeway)).toMatchObject({ isEnough: true, needed: { value: 7.2, unit: 'L' } });
  });
});

describe('the pump cover', () => {
  it('is tightened from the middle outwards, sides by turns, then checked round the edge', () => {
    const passes = passesOf(boat, 'tighten-cover');
    // Five by three round the edge: 3 and 9 are the middles of the long sides, 1, 5, 7 and 11 the corners.
    expect(passes.map(({ name, order }) => `${name}: ${order.join(' ')}`)).toEqual([
      'snug by hand: 3 9 4 10 8 2 6 12 5 11 7 1',
      'half: 3 9 4 10 8 2 6 12 5 11 7 1',
      'final: 3 9 4 10 8 2 6 12 5 11 7 1',
      'circular check: 1 2 3 4 5 6 7 8 9 10 11 12',
    ]);
  });

  it('wants less on the wrench than at the nut: 175 × 10 / (10 + 1.5 · cos 45°)', () => {
    const step = tightening(boat, 'tighten-cover');
    const final = step.final;
    if (final === undefined) throw new Error('no final target');
    expect(display(atWrench(boat, step, final).target, 'lbf·in', 2)).toBe('158.22 lbf·in');
  });
});
