import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRAWN, layAxis } from '../../../src/ui/replay/axis.ts';
import { LANES, layTimeLine } from '../../../src/ui/replay/time-line.ts';
import { demo } from './demonstration.ts';

const axis = layAxis(
  demo.entries.map(({ at }) => at.utc),
  DRAWN,
);

const seqOf = (is: (entry: (typeof demo.entries)[number]) => boolean): number => demo.entries.find(is)?.seq ?? -1;
/** Two values outside their window; the first of them was in doubt as well. */
const outside = demo.entries
  .filter(({ body }) => body.kind === 'reading captured' && body.verdict !== 'in')
  .map(({ seq }) => seq);

describe('the time line of the demonstration', () => {
  const line = layTimeLine(demo, axis, 1000);
  test('counts what happened', () =>
    expect(line.counts).toMatchObject({
      reading: 34,
      outside: 2,
      doubt: 1,
      correction: 2,
      refusal: 1,
      deviation: 4,
      hold: 15,
      interruption: 0,
    }));
  test('has each step that was done, from the one before it on', () => {
    const steps = line.spans.filter(({ what }) => what === 'step');
    expect(steps.length).toBe(demo.procedure.steps.length);
    expect(steps[0]).toMatchObject({ from: 0, title: 'Step 1: Make safe' });
    steps.slice(1).forEach(({ from }, i) => expect(from).toBe(steps[i]?.to));
    // Deviations are decided about after it.
    expect(steps.at(-1)?.to).toBeCloseTo(1, 2);
  });
  test('has the time in which work stood by, and in which a weight was held', () => {
    const holds = line.spans.filter(({ what }) => what === 'hold');
    expect(holds.map(({ title }) => title.replace(/\d+ s/, '# s'))).toEqual([
      'Standing by',
      'Held for # s: Lift off',
      'Held for # s: Carry on',
    ]);
    expect(holds.map(({ seq }) => seq).slice(0, 2)).toEqual([
      seqOf(({ body }) => body.kind === 'stood by'),
      seqOf(({ body }) => body.kind === 'hold begun'),
    ]);
  });
  test('marks a value outside its window as such, and leads to it', () =>
    expect(line.marks.filter(({ shape }) => shape === 'outside').map(({ seq }) => seq)).toEqual(outside));
});

describe('a time line of any room', () => {
  test('has no more marks in a lane than there is room for, and loses no event', () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), (bins) => {
        const { marks, counts } = layTimeLine(demo, axis, bins);
        for (const lane of new Set(marks.map((mark) => mark.lane)))
          expect(marks.filter((mark) => mark.lane === lane).length).toBeLessThanOrEqual(bins);
        for (const lane of LANES) {
          const places = marks.filter((mark) => mark.lane === lane).map(({ position }) => position);
          // None lies upon another, so that its number can be read.
          places.slice(1).forEach((place, i) => expect(place - (places[i] ?? 0)).toBeGreaterThan(1 / bins));
        }
        const readings = marks.filter(({ lane }) => lane === 'readings').reduce((sum, { count }) => sum + count, 0);
        expect(readings).toBe(counts.reading);
        // What is hidden by a graver one is counted with it, and told apart from it.
        for (const { count, ofShape, shape } of marks) {
          expect(ofShape).toBeGreaterThanOrEqual(1);
          expect(ofShape).toBeLessThanOrEqual(Math.min(count, counts[shape]));
        }
        const ofOutside = marks.filter(({ shape }) => shape === 'outside').map(({ ofShape }) => ofShape);
        expect(ofOutside.reduce((sum, each) => sum + each, 0)).toBe(counts.outside);
      }),
      { numRuns: 50 },
    ));
  test('lets the gravest event show where there is room for one only', () =>
    expect(
      layTimeLine(demo, axis, 1).marks.map(({ lane, shape, seq, count, ofShape }) => [
        lane,
        shape,
        seq,
        count,
        ofShape,
      ]),
    ).toEqual(
      expect.arrayContaining([
        ['readings', 'outside', outside[0], 34, 2],
        ['doubts', 'doubt', outside[0], 3, 1],
        ['deviations', 'deviation', seqOf(({ body }) => body.kind === 'deviation reported'), 5, 4],
      ]),
    ));
});
