/** Quantities of a data module: none is guessed. */
import { describe, expect, it } from 'vitest';
import { at, wordsAt } from '../../../src/procedure/edit/draft.ts';
import { findingsOf } from '../../../src/procedure/edit/findings.ts';
import { MODULE, imported, stepTitled, leftLines } from './pump-cover-module.ts';

describe('a number', () => {
  const quantity = (inside: string): string =>
    MODULE.replace(/<quantityValue\s+quantityUnitOfMeasure="N\.m">24\.5<\/quantityValue>/, inside);
  const value = (text: string, unit = 'N.m'): string =>
    `<quantityValue quantityUnitOfMeasure="${unit}">${text}</quantityValue>`;

  it.each(['24,5', '1,000', '1 000', "1'000", '1.000,5', '24.5e0', '0x18', ''])(
    'that is no plain decimal stays as it is written, is named, and is a fault of the draft: "%s"',
    (text) => {
      const { draft, leftOut } = imported(quantity(value(text)));
      const step = stepTitled(draft, /^2\.3/);
      expect(at(step, ['passes', 0, 'target', 'value'])).toBe(text);
      expect(at(step, ['passes', 0, 'window'])).toBeUndefined();
      expect(leftOut.some(({ place, what }) => place === 'line 89, step 2.3' && what.includes(`"${text}"`))).toBe(true);
      expect(findingsOf(draft).faults.map(({ path: place }) => place)).toContain('steps.5.passes.0.target.value');
    },
  );

  it('with a decimal comma in its tolerance gives no window', () => {
    const { draft } = imported(MODULE.replace('>1.5<', '>1,5<'));
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0])).toEqual({
      kind: 'torque',
      target: { value: '24.5', unit: 'N·m' },
    });
  });

  it.each([
    ['in-lb', 'lbf·in'],
    ['lbf.ft', 'lbf·ft'],
    ['Nm', 'N·m'],
  ])('in %s is a torque in %s', (unit, known) => {
    const { draft } = imported(quantity(value('24.5', unit)));
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0, 'target', 'unit'])).toBe(known);
  });

  it('in a unit that is no torque stays in the text', () => {
    const { draft } = imported(quantity(value('24.5', 'bar')));
    expect(stepTitled(draft, /^2\.3/)).toMatchObject({ kind: 'do', text: 'Tighten the screws to 24.5 bar ± 1.5.' });
  });

  it('given as a range has its middle as target', () => {
    const xml = MODULE.replace(
      /<quantityGroup><quantityValue\s+quantityUnitOfMeasure="N\.m">[^]*?<\/quantityGroup>/,
      (_) => {
        const limit = (type: string, text: string) =>
          `<quantityGroup quantityGroupType="${type}">${value(text)}</quantityGroup>`;
        return limit('minimum', '20') + limit('maximum', '25');
      },
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 20 to 25 N·m.',
      passes: [{ target: { value: '22.5' }, window: { min: { value: '20' }, max: { value: '25' } } }],
    });
  });

  it('with two tolerances has a window that is wider on one side', () => {
    const xml = MODULE.replace(
      /<quantityTolerance\s+quantityToleranceType="plusorminus">1\.5<\/quantityTolerance>/,
      (_) =>
        ['plus">2', 'minus">0.5']
          .map((each) => `<quantityTolerance quantityToleranceType="${each}</quantityTolerance>`)
          .join(''),
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 24.5 N·m + 2 − 0.5.',
      passes: [{ window: { min: { value: '24' }, max: { value: '26.5' } } }],
    });
  });

  const tolerances = (...all: readonly (readonly [type: string, text: string])[]): string =>
    MODULE.replace(/<quantityTolerance\s+quantityToleranceType="plusorminus">1\.5<\/quantityTolerance>/, (_) =>
      all
        .map(([type, text]) => `<quantityTolerance quantityToleranceType="${type}">${text}</quantityTolerance>`)
        .join(''),
    );

  it.each(['±1.5', '+/- 1.5', '+1.5'])('with a tolerance written as "%s" has its window', (text) => {
    expect(stepTitled(imported(tolerances(['plusorminus', text])).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 24.5 N·m ± 1.5.',
      passes: [{ window: { min: { value: '23' }, max: { value: '26' } } }],
    });
  });

  it.each([
    ['both sides', tolerances(['plusorminus', '-1.5'])],
    ['the side above', tolerances(['plus', '-1.5'], ['minus', '1.5'])],
  ])('with a minus before the tolerance of %s gives no window, and says so', (_, xml) => {
    const { draft } = imported(xml);
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0, 'window'])).toBeUndefined();
    expect(leftLines(xml).some((line) => line.includes('"-1.5" is no plain number'))).toBe(true);
  });

  it.each([
    ['of a type that is not known', `</quantityGroup><quantityGroup quantityGroupType="typical">${value('24')}`],
    ['a second time in its group', value('24.5') + value('217', 'lbf.in')],
    ['a second time in a group of its own', `${value('24.5')}</quantityGroup><quantityGroup>${value('30')}`],
  ])('that stands %s is kept with its unit and named; no torque is taken from it', (_, inside) => {
    const xml = quantity(inside);
    const step = stepTitled(imported(xml).draft, /^2\.3/);
    expect(step).toMatchObject({ kind: 'do' });
    for (const [, text, unit] of inside.matchAll(/Measure="([^"]*)">([\d.]+)/g)) {
      expect(wordsAt(step, ['text'])).toContain(`${unit ?? ''} ${text === 'N.m' ? 'N·m' : 'lbf·in'}`);
    }
    expect(leftLines(xml).some((line) => line.includes('more than one value'))).toBe(true);
  });

  it.each([
    ['in words', '<quantity>24.5 N.m</quantity>', '24.5 N.m'],
    [
      'without a unit',
      '<quantity><quantityGroup><quantityValue>24.5</quantityValue></quantityGroup></quantity>',
      '24.5',
    ],
  ])('%s may be a torque: it is named', (_, written, words) => {
    const xml = MODULE.replace(
      /<quantity><quantityGroup><quantityValue\s+quantityUnitOfMeasure="N\.m">[^]*?<\/quantity>/,
      written,
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({ kind: 'do' });
    expect(leftLines(xml).some((line) => line.includes(`"${words}" has no unit`))).toBe(true);
  });
});
