/** The torque tables of a record sheet: a line for each fastener in each pass, with every value that was ever read. */
import type { Procedure, TightenStep } from '../../procedure/procedure.ts';
import { planOf, RUNNING_ROUND, runningToolOf, toolOf } from '../../session/calls.ts';
import type { Basis } from '../../session/event.ts';
import type { Reading, SessionState } from '../../session/state.ts';
import type { Written } from '../../units/index.ts';
import { fates } from '../../words/fates.ts';
import { sheetTorque } from '../../words/sheet-torque.ts';
import type { Entry } from '../entry.ts';
import { differenceFrom, fateOf, historyOf } from '../reading-history.ts';
import { readingMatrices, type MatrixCell, type ReadingMatrix } from '../reading-matrix.ts';
import { windowText } from '../reading-window.ts';
import { asWritten } from './as-written.ts';
import { sheetTime, type SheetTime } from './times.ts';

/** One value that was read, whether it stands or not. */
export interface SheetValue {
  /** The number of its entry. */
  readonly entry: number;
  readonly value: string;
  readonly at: SheetTime;
  /** What became of it, in words: "stands", "corrected". */
  readonly fate: string;
  /** Whether it is the one that stands for its fastener and pass. */
  readonly stands: boolean;
  /** Whether it was confirmed and never taken back: then it counts, though a later one may stand for the fastener. */
  readonly counts: boolean;
  readonly verdict: string;
  readonly by: string;
  /** "Tom Brandt: 24.5 N·m (0)"; null where nobody witnessed it. */
  readonly witness: string | null;
  /** Why it was asked about, and how it came about where it was not read: "in doubt: digits swapped". */
  readonly remarks: readonly string[];
}

/** One fastener in one pass. */
export interface TorqueLine {
  readonly fastener: number;
  readonly pass: string;
  /** Of the manual, at the fastener; empty where no torque is reached for. */
  readonly target: string;
  /** What the value was judged by, at the wrench. */
  readonly window: string;
  readonly values: readonly SheetValue[];
  /** "inside", "over", "by hand", "left open", "open", "skipped". */
  readonly verdict: string;
  /** Who did it by hand, and when; null where a value was read, or nothing done. */
  readonly done: Pick<SheetValue, 'by' | 'at' | 'entry'> | null;
}

export interface TorqueTable {
  readonly title: string;
  /** What the fasteners are called: "stud". */
  readonly label: string;
  /** Pattern, thread, tool, adapter, rule of judging: what holds for the whole table. */
  readonly heading: readonly string[];
  readonly lines: readonly TorqueLine[];
}

/** One table for each step that tightens, as everything stands at the end of the record. */
export function torqueTables(entries: readonly Entry[], state: SessionState, timeZone: string): readonly TorqueTable[] {
  return readingMatrices(state).flatMap((matrix): readonly TorqueTable[] => {
    const step = state.procedure.steps.find(({ id }) => id === matrix.step);
    if (step?.kind !== 'tighten') return [];
    return [
      {
        title: matrix.title,
        label: matrix.label,
        heading: headingOf(state.procedure, step),
        lines: linesOf(entries, state, step, matrix, timeZone),
      },
    ];
  });
}

function headingOf(procedure: Procedure, step: TightenStep): readonly string[] {
  const pattern = procedure.patterns.find(({ id }) => id === step.pattern);
  const adapter = procedure.adapters.find(({ id }) => id === step.adapter);
  const thread = [pattern?.thread, pattern?.threadCondition].filter(Boolean).join(', ');
  return [
    pattern?.name ?? step.pattern,
    ...(thread === '' ? [] : [sheetTorque.thread(thread)]),
    sheetTorque.tool(toolOf(procedure, step).name),
    ...(step.runDown ? [sheetTorque.runningTorque(runningToolOf(procedure, step).name)] : []),
    ...(adapter ? [sheetTorque.adapter(adapter.name, asWritten(adapter.length), asWritten(adapter.angle))] : []),
    sheetTorque.judgedBy(step.judging.rule),
  ];
}

function linesOf(
  entries: readonly Entry[],
  state: SessionState,
  step: TightenStep,
  { rows, passes }: ReadingMatrix,
  timeZone: string,
): readonly TorqueLine[] {
  const planned = planOf(state.procedure, step).passes;
  return rows.flatMap(({ fastener, cells }) =>
    cells.flatMap((cell, i): readonly TorqueLine[] => {
      const round = passes[i];
      if (cell === null || !round) return [];
      const values = historyOf(state.readings, { step: step.id, pass: round.index, fastener });
      const basis = (cell.kind === 'read' ? cell.reading : values.at(-1))?.basis;
      const target = planned.find(({ index }) => index === round.index)?.target;
      return [
        {
          fastener,
          pass: round.index === RUNNING_ROUND ? round.name : sheetTorque.pass(round.index, round.name),
          target: target ? asWritten(target) : '',
          window: basis ? judgedBy(basis, state.procedure) : '',
          values: values.map((reading) => valueOf(reading, values, timeZone)),
          verdict: verdictOf(cell),
          done:
            cell.kind === 'by hand' ? doneBy(entries, { step: step.id, pass: round.index, fastener }, timeZone) : null,
        },
      ];
    }),
  );
}

/** The last time that it was done: a nut that came off its seat is done again. */
function doneBy(
  entries: readonly Entry[],
  { step, pass, fastener }: Pick<Reading, 'step' | 'pass' | 'fastener'>,
  timeZone: string,
): TorqueLine['done'] {
  const done = entries.findLast(
    ({ body }) =>
      body.kind === 'fastener done' && body.step === step && body.pass === pass && body.fastener === fastener,
  );
  return done ? { by: done.person, at: sheetTime(done.at.utc, timeZone), entry: done.seq } : null;
}

const shown = ({ value, unit }: Written<'torque'>): string => `${value} ${unit}`;

function judgedBy(basis: Basis, procedure: Procedure): string {
  if (basis.of === 'running torque') return basis.minimum ? sheetTorque.atLeast(shown(basis.minimum)) : '';
  const running = basis.runningTorque;
  const isAtWrench = basis.adapter !== null || running !== null;
  return sheetTorque.window(windowText(basis, procedure), isAtWrench, running && shown(running));
}

function verdictOf(cell: NonNullable<MatrixCell>): string {
  if (cell.kind !== 'read') return sheetTorque.withoutReading[cell.kind];
  return cell.isLeftOpen ? sheetTorque.withoutReading['left open'] : sheetTorque.verdicts[cell.reading.verdict];
}

function valueOf(reading: Reading, history: readonly Reading[], timeZone: string): SheetValue {
  const { seq, at, person, status, evidence, doubts = [], witnessed, verdict } = reading;
  const fate = fateOf(reading, history);
  return {
    entry: seq,
    value: shown(reading.reading),
    at: sheetTime(at.utc, timeZone),
    fate: fates[fate],
    stands: fate === 'stands',
    counts: status === 'confirmed',
    verdict: sheetTorque.verdicts[verdict],
    by: person,
    witness: witnessed
      ? sheetTorque.witness(
          witnessed.person,
          shown(witnessed.reading),
          differenceFrom(reading.reading, witnessed.reading),
        )
      : null,
    remarks: [
      ...(evidence === 'click' ? [sheetTorque.byClick] : []),
      ...(doubts.length > 0 ? [sheetTorque.inDoubt(doubts)] : []),
    ],
  };
}
