import { describe, expect, it } from 'vitest';
import { assessLift } from '../../src/lifting/index.ts';
import { adapterOf, atWrench, carriedMass, containerCheck, liftTasks } from '../../src/procedure/lead-hand.ts';
import type { Procedure, StepOf } from '../../src/procedure/procedure.ts';
import { torqueTarget } from '../../src/tightening/index.ts';
import { limits, torque } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';
import { demoJson, edited, type Json, loaded } from './demo-files.ts';

const BOAT = 'fire-boat-pump-cover';
const inches = (value: string): Json => ({ value, unit: 'in' });
const inchPounds = (value: number) => torque(value, 'lbf·in');

function cover(procedure: Procedure): StepOf<'tighten'> {
  const step = procedure.steps.find(({ id }) => id === 'tighten-cover');
  if (step?.kind !== 'tighten') throw new Error('the demonstration has changed');
  return step;
}

/** The demonstration with a wrench of 10 in and a straight adapter of 4 in. */
const straight = loaded(
  edited(BOAT, {
    'tools.wrench-250.lever': inches('10'),
    'adapters.crowfoot.length': inches('4'),
    'adapters.crowfoot.angle.value': '0',
  }),
);

describe('the setting on the wrench', () => {
  const target = torqueTarget(inchPounds(300), limits(inchPounds(280), inchPounds(320)));

  it('is 214.29 for 300 lbf·in with 10 in and 4 in (TM 1-1500-204-23-9, chapter 8)', () => {
    expect(atWrench(straight, cover(straight), target).target.value).toBeCloseTo(214.2857, 4);
  });

  it('has the run-down torque added before the adapter is reckoned (AC 43.13-1B, 7-40 d and h)', () => {
    expect(atWrench(straight, cover(straight), target, inchPounds(28)).target.value).toBeCloseTo((328 * 10) / 14, 9);
  });

  it('refuses a nut that turns with less than the minimum, used or new: a stated limit is a limit', () => {
    expect(refusal(() => atWrench(straight, cover(straight), target, inchPounds(19)))).toBe('nut-worn');
    const fresh = loaded(edited(BOAT, { 'steps.tighten-cover.runDown.used': false }));
    expect(refusal(() => atWrench(fresh, cover(fresh), target, inchPounds(19)))).toBe('nut-worn');
  });

  it('is the value at the fastener for a bare wrench', () => {
    const bare = loaded(edited(BOAT, { 'steps.tighten-cover.adapter': undefined }));
    expect(adapterOf(bare, cover(bare))).toBeNull();
    expect(atWrench(bare, cover(bare), target)).toEqual(target);
  });
});

describe('what is carried', () => {
  it('is the dry mass where nothing is retained', () => {
    const dry = loaded(edited(BOAT, { 'component.retains': undefined }));
    expect(carriedMass(dry)).toMatchObject({ total: { value: 41, unit: 'lb' }, fluid: { value: 0 } });
  });

  it('is assessed at both ends of the lift, with the way between them and the height it began at', () => {
    const tasks = liftTasks(loaded(demoJson(BOAT)));
    expect(tasks?.origin).toMatchObject({ travel: { value: 6, unit: 'in' }, sloshing: true, gloves: true });
    expect(tasks?.destination).toMatchObject({ vertical: { value: 32 }, verticalAtOrigin: { value: 26 } });
  });

  it('does not slosh when nothing is retained', () => {
    const dry = liftTasks(loaded(edited(BOAT, { 'component.retains.value': '0' })));
    expect(dry?.origin.sloshing).toBe(false);
  });

  it('gives 34.81 lb for package inspection, origin (NIOSH 94-110, example 4, full precision)', () => {
    const example = loaded(
      edited(BOAT, {
        lift: {
          system: 'US',
          persons: 1,
          origin: { horizontal: inches('10'), vertical: inches('22'), asymmetry: { value: '0', unit: '°' } },
          destination: { horizontal: inches('20'), vertical: inches('59'), asymmetry: { value: '0', unit: '°' } },
          perMinute: '3',
          duration: 'short',
          coupling: 'fair',
          gloves: false,
        },
      }),
    );
    const tasks = liftTasks(example);
    if (tasks === null) throw new Error('the lift is gone');
    expect(assessLift(tasks.origin, 'US').recommendedLimit.value).toBeCloseTo(34.81, 2);
    expect(assessLift(tasks.destination, 'US').recommendedLimit.value).toBeCloseTo(15.25, 2);
  });

  it('is nothing to assess where the file describes no lift', () => {
    expect(liftTasks(loaded(edited(BOAT, { lift: undefined })))).toBeNull();
  });
});

describe('the container', () => {
  it('has the margin of the file', () => {
    expect(containerCheck(loaded(demoJson(BOAT)))?.needed.value).toBeCloseTo(2.5, 12);
  });
  it('is not checked where the file names none', () => {
    expect(containerCheck(loaded(edited(BOAT, { container: undefined })))).toBeNull();
  });
  it('is not checked against a volume that nobody stated', () => {
    expect(containerCheck(loaded(edited(BOAT, { 'component.drains': undefined })))).toBeNull();
  });
});
