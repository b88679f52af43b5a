/** What switches may choose from, and what a press means. */
import { describe, expect, test } from 'vitest';
import { litChoices, type Scan } from '../../src/gesture/scan.ts';
import { situationOf } from '../../src/language/situation.ts';
import { meaningOf, type WorkSignal } from '../../src/ui/signals.ts';
import { choicesNow, panelMovedOn, panelTaken, wantsValue, type Panel } from '../../src/ui/switch-panel.ts';
import {
  affirm,
  doubted,
  negative,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  type Play,
} from '../session/play.ts';

const ring = start(procedureOf([step('fit', 'do'), tighten('ring')]));
const called = tell(ring, { kind: 'next' });
const readBack = tell(called, reading('24.5'));

const mean = (signal: WorkSignal, { state }: Play) => meaningOf(signal, state, situationOf(state)).kind;
const panelOf = ({ state }: Play): Panel => choicesNow(state, situationOf(state));
function labels(play: Play): readonly string[] {
  const panel = panelOf(play);
  return panel.kind === 'choices' ? panel.scan.rows.flatMap(({ items }) => items.map(({ label }) => label)) : [];
}

describe('a press', () => {
  test('backward goes a step back, and says of a read-back that it is wrong', () => {
    expect(mean('backward', called)).toBe('back');
    expect(mean('backward', readBack)).toBe('negative');
    expect(tell(readBack, negative).state.readings.at(-1)?.status).toBe('rejected');
  });
  test('backward never says of something looked at that it failed', () => {
    const check = start(
      procedureOf([
        step('look', 'check', {
          outcomes: [
            { id: 'affirm', text: 'Whole.', then: 'go on' },
            { id: 'negative', text: 'Cracked.', then: 'stay' },
          ],
        }),
      ]),
    );
    expect(mean('backward', check)).toBe('back');
  });
  test('to stand by goes on again where work stands by', () => {
    expect(mean('stand by', called)).toBe('stand by');
    expect(mean('stand by', tell(called, { kind: 'stand by' }))).toBe('continue');
  });
});

describe('the choices', () => {
  test('begin with what goes on, hold everything that may be said here once, and end with nothing', () => {
    expect(labels(ring).slice(0, 2)).toEqual(['next', 'back']);
    expect(labels(ring).at(-1)).toBe('nothing');
    expect(new Set(labels(ring)).size).toBe(labels(ring).length);
    expect(labels(readBack)[0]).toBe('affirm');
  });
  test('begin with the value where one is wanted, and do not offer it elsewhere', () => {
    expect(labels(called)[0]).toBe('enter the value');
    expect(labels(readBack)).not.toContain('enter the value');
    expect(labels(ring)).not.toContain('enter the value');
  });
  test('are a value and no affirm where the value that waits is asked for', () => {
    const off = tell(called, doubted('99', 'off the scale'));
    expect(labels(off)[0]).toBe('enter the value');
    expect(labels(off)).toContain('negative');
    expect(labels(off)).not.toContain('affirm');
    const broken = { ...off, state: { ...off.state, breakOf: 7_200_000 } };
    expect(labels(broken)).toContain('affirm');
  });
  test('never hold a word of the second person, nor a signature', () => {
    const looked = start(procedureOf([step('look', 'witness', { what: 'the seal' })]));
    expect(situationOf(looked.state).sayings.some(({ meaning }) => meaning.kind === 'witness says')).toBe(true);
    expect(labels(looked).some((label) => /witness|sign/.test(label))).toBe(false);
  });
  test('give the meaning that was lit, or the entry of a value', () => {
    expect(panelTaken(entered(panelOf(readBack)), 'count')).toEqual({ kind: 'means', meaning: { kind: 'affirm' } });
    expect(panelTaken(entered(panelOf(called)), 'count')).toMatchObject({ kind: 'panel', panel: { kind: 'value' } });
  });
});

test('a value is wanted where a fastener is called or something is measured, and not while one waits for its answer', () => {
  const wants = ({ state }: Play): boolean => wantsValue(state, situationOf(state));
  expect([ring, called, readBack].map(wants)).toEqual([false, true, false]);
  const measured = start(procedureOf([step('level', 'measure', { what: 'oil level', unit: 'mm' })]));
  expect(wants(measured)).toBe(true);
  expect(wants(tell(measured, { kind: 'observed', value: '50' }))).toBe(false);
});

test('no value is wanted while it is asked whether what the procedure has done about a fastener is done', () => {
  const onDeviation = [{ what: 'over torque', text: 'Take the nut off.' }];
  const over = tell(start(procedureOf([tighten('ring', { onDeviation })])), reading('30'), affirm);
  const wants = ({ state }: Play): boolean => wantsValue(state, situationOf(state));
  expect([over, tell(over, affirm)].map(wants)).toEqual([false, true]);
  expect(mean('forward', over)).toBe('say again');
});

test('the light goes out where nobody takes anything', () => {
  let panel: Panel | null = panelOf(readBack);
  for (let moves = 0; moves < 100 && panel; moves++) panel = panelMovedOn(panel);
  expect(panel).toBeNull();
});

/** Past the rows, to the first choice of the first one. */
function entered(panel: Panel): Panel {
  const isOfRows = panel.kind === 'choices' && litChoices(panel.scan as Scan<unknown>)[0]?.kind === 'row';
  if (!isOfRows) return panel;
  const taken = panelTaken(panel, 'count');
  if (taken.kind !== 'panel') throw new Error('A row is no choice.');
  return taken.panel;
}
