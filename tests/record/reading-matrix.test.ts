import { describe, expect, test } from 'vitest';
import { readingMatrices } from '../../src/record/reading-matrix.ts';
import { stepReadingsOf, stepReadingsText } from '../../src/cli/replay-text.ts';
import {
  affirm,
  back,
  correction,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  torquePass,
} from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { opening, recordIn, sealAll } from './sealed.ts';

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
  test('keeps the value of what was read and left open all the same', async () => {
    const { state, events } = tell(
      await opening(smallProcedure),
      ...[next, reading('31'), affirm],
      ...[{ kind: 'report', what: 'damage' } as const, { kind: 'reason', text: 'thread is torn' } as const, affirm],
      { kind: 'leave open' },
    );
    const [cell] = readingMatrices(state).flatMap(({ rows }) => rows.flatMap(({ cells }) => cells));
    expect(cell).toMatchObject({ kind: 'read', isLeftOpen: true, reading: { reading: { value: '31' } } });
    const [table] = stepReadingsOf(await recordIn(await sealAll(events)));
    expect(table && stepReadingsText(table).join('\n')).toMatch(/31 N·m, over, .*; left open/);
  });
  test('keeps a step that was skipped after values were read in it, and no other that was skipped', async () => {
    const [wash, tightening] = [step('wash', 'do'), smallProcedure.steps.find(({ kind }) => kind === 'tighten')];
    const applies = { condition: 'salt', is: true };
    const steps = [wash, { ...tightening, applies }, step('lift', 'do')];
    const conditions = [{ id: 'salt', question: 'Did it run in salt water?' }];
    const begun = tell(await opening({ ...smallProcedure, steps, conditions }), next);
    const { state, events } = tell(begun, affirm, reading('31'), negative, back, next, negative);
    expect([...state.skippedSteps]).toEqual([tightening?.id]);
    expect(readingMatrices(state)[0]?.rows.map(({ cells: [cell] }) => cell?.kind)).toContain('skipped');
    const [table] = stepReadingsOf(await recordIn(await sealAll(events)));
    expect(table && stepReadingsText(table).at(-1)).toMatch(/bolt 1, .*: 31 N·m, over, .*: rejected at its read-back$/);
    expect(readingMatrices(tell(begun, negative).state)).toEqual([]);
  });
});
