/** Steps that only apply to some units: the question is asked before the first of them, and those that do not are skipped. */
import { describe, expect, test } from 'vitest';
import { currentStep, openCondition, openWarning } from '../../src/session/state.ts';
import {
  affirm,
  answer,
  back,
  click,
  correction,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  start,
  step,
  tell,
  tighten,
  turned,
  type Play,
} from './play.ts';

const conditions = [
  { id: 'salt', question: 'Did it run in salt water?' },
  { id: 'old', question: 'Is it of the old build?' },
];
const only = (condition: string, is: boolean) => ({ applies: { condition, is } });
const job = (...steps: readonly object[]): Play => start(procedureOf(steps, { conditions }));
const at = ({ state }: Play): string | undefined => currentStep(state)?.id;

const play = job(
  step('drain', 'do'),
  step('rinse', 'do', only('salt', true)),
  step('dry', 'do', only('salt', true)),
  step('oil', 'do', only('salt', false)),
  step('lift', 'do'),
);
const asked = tell(play, next);

describe('a condition of the unit', () => {
  test('is asked just before the first step that depends on it', () => {
    expect(openCondition(play.state)).toBeNull();
    expect(openCondition(asked.state)).toEqual(conditions[0]);
  });
  test('with the answer that a step wants, lets it be worked', () => {
    const yes = tell(asked, affirm);
    expect(happened(yes)).toEqual([{ kind: 'condition answered', condition: 'salt', is: true }]);
    expect(at(yes)).toBe('rinse');
    expect(openCondition(yes.state)).toBeNull();
  });
  test('with the other answer, skips it, and the record says so', () => {
    const no = tell(asked, negative);
    expect(happened(no)).toEqual([
      { kind: 'condition answered', condition: 'salt', is: false },
      { kind: 'step skipped', step: 'rinse', condition: 'salt', is: false },
      { kind: 'step skipped', step: 'dry', condition: 'salt', is: false },
    ]);
    expect(at(no)).toBe('oil');
    expect([...no.state.skippedSteps]).toEqual(['rinse', 'dry']);
    expect([...no.state.doneSteps]).toEqual(['drain']);
  });
  test('is asked once: what depends on it later is skipped with the step before it', () => {
    const done = tell(asked, affirm, next, next);
    expect(kinds(done)).toEqual(['step done', 'step skipped']);
    expect(at(done)).toBe('lift');
  });
  test.each([next, turned, reading('24'), click(), answer('reuse')])(
    'is answered before anything else: $kind',
    (meaning) => expect(refused(tell(asked, meaning))).toEqual({ code: 'condition first' }),
  );
  test('comes before the warnings of its step, which may not apply', () => {
    const hazards = [{ signal: 'warning', consequence: 'person', text: 'Hot water.' }];
    const warned = job(step('rinse', 'do', { ...only('salt', true), hazards }), step('lift', 'do'));
    expect(openWarning(warned.state)).toBeNull();
    expect(openWarning(tell(warned, affirm).state)?.text).toBe('Hot water.');
    expect(at(tell(warned, negative))).toBe('lift');
  });
  test('on which the last step depends closes the session where it does not apply', () => {
    const last = tell(job(step('drain', 'do'), step('rinse', 'do', only('salt', true))), next, negative);
    expect(kinds(last)).toEqual(['condition answered', 'step skipped', 'closed']);
  });
  test('lets the reading before it be corrected', () => {
    const read = tell(
      job(tighten('ring'), step('rinse', 'do', only('salt', true))),
      ...[reading('24'), affirm, reading('24'), affirm, reading('24'), affirm],
    );
    expect(openCondition(read.state)).not.toBeNull();
    expect(readings(tell(read, correction('25'), affirm)).at(-1)).toBe('2: 25 confirmed');
  });
});

describe('going back', () => {
  test('passes over steps that were skipped, and asks again before the first of them', () => {
    const returned = tell(asked, negative, back);
    expect(happened(returned)).toEqual([{ kind: 'step taken back', step: 'drain' }]);
    const again = tell(returned, next);
    expect(openCondition(again.state)?.id).toBe('salt');
    expect(at(tell(again, affirm))).toBe('rinse');
    expect([...tell(again, affirm).state.skippedSteps]).toEqual([]);
  });
  test('to a step that applies keeps the answer it rests on', () => {
    const returned = tell(asked, affirm, next, back);
    expect(at(returned)).toBe('rinse');
    expect(openCondition(returned.state)).toBeNull();
  });
  test('from the question goes to the step before it', () => expect(at(tell(asked, back))).toBe('drain'));
  test('has nowhere to go where every step before was skipped', () => {
    const skipped = tell(job(step('rinse', 'do', only('salt', true)), step('lift', 'do')), negative);
    expect(refused(tell(skipped, back))).toEqual({ code: 'first step' });
  });
});

test('two conditions are asked one after the other, each before its own step', () => {
  const two = job(step('rinse', 'do', only('salt', true)), step('shim', 'do', only('old', true)), step('lift', 'do'));
  const second = tell(two, negative);
  expect(openCondition(second.state)?.id).toBe('old');
  expect(at(tell(second, negative))).toBe('lift');
});
