/** What stands of the work on fasteners at a moment: each fastener in each pass. */
import type { Procedure, Step } from '../procedure/procedure.ts';
import { planOf, type Round } from '../session/calls.ts';
import { isLeftOpen } from '../session/deviation.ts';
import { isDone, standingReading, type Reading, type SessionState } from '../session/state.ts';
import { matrix } from '../words/matrix.ts';

/**
 * One fastener in one pass: the reading that stands, also where it was left open with a deviation afterwards; done by hand
 * without a reading, left open without one, or nothing yet, or skipped with its step; null where the pass leaves it out.
 */
export type MatrixCell =
  | { readonly kind: 'read'; readonly reading: Reading; readonly isLeftOpen: boolean }
  | { readonly kind: 'by hand' | 'left open' | 'open' | 'skipped' }
  | null;

export interface ReadingMatrix {
  readonly step: string;
  readonly title: string;
  /** What the fasteners are called: "stud". */
  readonly label: string;
  readonly passes: readonly Pick<Round, 'index' | 'name'>[];
  /** In the order of their numbers. */
  readonly rows: readonly { readonly fastener: number; readonly cells: readonly MatrixCell[] }[];
}

/**
 * One table for each step that tightens, with whatever was done in it so far. A step that was skipped has one where values
 * were read in it before: none of them is lost.
 */
export const readingMatrices = (state: SessionState): readonly ReadingMatrix[] =>
  state.procedure.steps
    .filter(
      ({ id, kind }) =>
        kind === 'tighten' && (!state.skippedSteps.has(id) || state.readings.some(({ step }) => step === id)),
    )
    .map((step) => matrixOf(state, state.procedure, step));

function matrixOf(state: SessionState, procedure: Procedure, step: Step): ReadingMatrix {
  const { running, passes, calls } = planOf(procedure, step);
  const rounds: readonly Round[] = running ? [running, ...passes] : passes;
  const fasteners = [...new Set(calls.map(({ fastener }) => fastener))].sort((one, other) => one - other);
  return {
    step: step.id,
    title: step.title,
    label: calls[0]?.label ?? matrix.unnamed,
    passes: rounds.map(({ index, name }) => ({ index, name })),
    rows: fasteners.map((fastener) => ({
      fastener,
      cells: rounds.map((round) => (round.order.includes(fastener) ? cellOf(state, step.id, round, fastener) : null)),
    })),
  };
}

function cellOf(state: SessionState, step: string, round: Round, fastener: number): MatrixCell {
  const pass = round.index;
  const reading = standingReading(state, step, pass, fastener);
  const isOpen = isLeftOpen(state, step, round, fastener);
  if (reading) return { kind: 'read', reading, isLeftOpen: isOpen };
  if (isOpen) return { kind: 'left open' };
  if (state.skippedSteps.has(step)) return { kind: 'skipped' };
  return { kind: isDone(state, { step, pass, fastener }) ? 'by hand' : 'open' };
}
