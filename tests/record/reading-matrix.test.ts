import { describe, expect, test } from 'vitest';
import { readingMatrices } from '../../src/record/reading-matrix.ts';
import { affirm, correction, next, procedureOf, reading, start, tell, tighten, torquePass } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { opening } from './sealed.ts';

describe('the matrix of readings', () => {
  test('has a line for each fastener and a column for each pass, with the reading that stands', async () => {
    const { state } = tell(
      await opening(smallProcedure),
      next,
      reading('12'),
      affirm,
      reading('12.5'),
      affirm,
      correction('13'),
      affirm,
    );
    const [matrix, ...more] = readingMatrices(state);
    expect(more).toEqual([]);
    expect(matrix).toMatchObject({ step: 'tighten', label: 'bolt', passes: [{ index: 1, name: 'final' }] });
    expect(
      matrix?.rows.map(({ fastener, cells: [cell] }) => [
        fastener,
        cell?.kind === 'read' ? cell.reading.reading.value : cell?.kind,
      ]),
    ).toEqual([
      [1, '12'],
      [2, 'open'],
      [3, '13'],
    ]);
  });
  test('tells what is done by hand from what is read, and leaves out what a pass leaves out', () => {
    const passes = [{ kind: 'snug', only: [1, 2] }, torquePass('24.5', '23', '26')];
    const { state } = tell(start(procedureOf([tighten('ring', { passes })])), next);
    const [matrix] = readingMatrices(state);
    expect(matrix?.rows.map(({ cells }) => cells.map((cell) => cell?.kind ?? null))).toEqual([
      ['by hand', 'open'],
      ['open', 'open'],
      [null, 'open'],
    ]);
  });
  test('tells what was left open with a deviation', () => {
    const { state } = tell(
      start(procedureOf([tighten('ring')])),
      ...[{ kind: 'report', what: 'damage' } as const, { kind: 'reason', text: 'thread is torn' } as const, affirm],
      { kind: 'leave open' },
    );
    const [matrix] = readingMatrices(state);
    expect(matrix?.rows.map(({ cells: [cell] }) => cell?.kind)).toEqual(['left open', 'open', 'open']);
  });
});
