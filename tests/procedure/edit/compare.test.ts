import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare } from '../../../src/procedure/edit/compare.ts';
import { type Draft, move, put, take } from '../../../src/procedure/edit/draft.ts';
import { addStep } from '../../../src/procedure/edit/things.ts';
import { type DemoName, DEMOS, demoJson, placeIn } from '../demo-files.ts';

const demo = (name: DemoName): Draft => demoJson(name) as Draft;
const cooler = demo('ropeway-oil-cooler');
const said = (before: Draft, after: Draft): readonly string[] =>
  compare(before, after).map(({ place, words }) => `${place}: ${words}`);
const pathOf = (path: string): (string | number)[] =>
  placeIn(demoJson('ropeway-oil-cooler'), path)
    .split('.')
    .map((key) => (/^\d+$/.test(key) ? Number(key) : key));

describe('two versions', () => {
  it.each(DEMOS)('that are the same differ in nothing: %s', (name) => {
    expect(compare(demo(name), demo(name))).toEqual([]);
  });

  it('tell a value by its place, from what to what', () => {
    const after = put(cooler, pathOf('steps.tighten-ring.passes.1.target.value'), '25');
    expect(said(cooler, after)).toEqual([
      expect.stringMatching(
        /^step \d+ "Tighten the main ring", pass 2 "final", target: changed from 24\.5 N·m to 25 N·m$/,
      ),
    ]);
  });

  it('tell an order as a whole', () => {
    const after = put(cooler, pathOf('patterns.main-ring.order.numbers'), [1, 6, 3, 8, 5, 10, 7, 2, 4, 9]);
    expect(said(cooler, after)[0]).toMatch(
      /^pattern 1 ".*", order, numbers: changed from 1, 6, 3, 8, 5, 10, 7, 2, 9, 4 to 1, 6, 3, 8, 5, 10, 7, 2, 4, 9$/,
    );
  });

  it('tell a step that was put in as one step, not as a change of all after it', () => {
    expect(said(cooler, addStep(cooler, 'note', 3))).toEqual(['step 4: added']);
  });

  it('tell a step that was taken out by its old place and title', () => {
    expect(said(cooler, take(cooler, ['steps', 0]))).toEqual(['step 1 "Make safe": removed']);
  });

  it('tell only the step that was moved', () => {
    expect(said(cooler, move(cooler, ['steps'], 1, 3))).toEqual([
      expect.stringMatching(/^step 5 ".*": moved from place 2 to 5$/),
    ]);
  });

  it('tell a field that came and one that went', () => {
    const after = take(put(cooler, ['persons'], 3), ['source', 'issued']);
    const back = said(after, cooler);
    expect(said(cooler, after).some((line) => /^source, issued: removed: "/.test(line))).toBe(true);
    expect(back.some((line) => /^source, issued: added: "/.test(line))).toBe(true);
  });

  it('differ in something whenever they are not the same, and in as much both ways', () => {
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.integer({ min: -4, max: 4 }), (from, out, by) => {
        const steps = (cooler.steps as readonly unknown[]).length;
        const after = take(move(cooler, ['steps'], from % steps, by), ['steps', out % steps]);
        const there = compare(cooler, after);
        expect(there.length).toBeGreaterThan(0);
        expect(compare(after, cooler)).toHaveLength(there.length);
        expect(there.filter(({ what }) => what === 'removed')).toHaveLength(1);
        expect(there.filter(({ what }) => what === 'moved').length).toBeLessThanOrEqual(1);
      }),
    );
  });
});
