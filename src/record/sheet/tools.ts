/** The tools of the work, with whether their calibration held on the days on which they were used. */
import type { Procedure, Tool } from '../../procedure/procedure.ts';
import { runningToolOf, toolOf } from '../../session/calls.ts';
import { dayOf } from '../../session/intent.ts';
import type { SessionState } from '../../session/state.ts';
import { sheetFacts } from '../../words/sheet-facts.ts';
import { asWritten } from './as-written.ts';

export interface SheetTool {
  readonly name: string;
  readonly id: string;
  readonly range: string;
  readonly accuracy: string;
  readonly calibrationDue: string;
  /** The calendar days on which it was read, and whether its calibration held on all of them. */
  readonly used: string;
}

/** Every tool of a step that applies, and every tool that a reading names. */
export function toolsOf({ procedure, prepared, readings, skippedSteps }: SessionState): readonly SheetTool[] {
  const named = procedure.steps.flatMap((step) =>
    step.kind === 'tighten' && !skippedSteps.has(step.id)
      ? [toolOf(procedure, step), ...(step.runDown ? [runningToolOf(procedure, step)] : [])]
      : [],
  );
  const read = procedure.tools.filter(({ id }) => readings.some(({ basis }) => basis.tool === id));
  const labelled = new Set(prepared.map((fact) => (fact.of === 'tool' && fact.from === 'label' ? fact.tool : null)));
  return [...new Set([...named, ...read])].map((tool) => {
    const due = tool.calibrationDue ?? sheetFacts.notStated;
    const days = readings.filter(({ basis }) => basis.tool === tool.id).map(({ at }) => dayOf(at));
    return {
      name: tool.name,
      id: tool.id,
      range: sheetFacts.tool.range(asWritten(tool.range.min), asWritten(tool.range.max), asWritten(tool.resolution)),
      accuracy: sheetFacts.tool.accuracy(tool.type, tool.class ?? null, tool.maximumError ?? null),
      calibrationDue: labelled.has(tool.id) ? sheetFacts.tool.offItsLabel(due) : due,
      used: usedOn([...new Set(days)].sort(), tool),
    };
  });
}

function usedOn(days: readonly string[], { calibrationDue }: Tool): string {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return sheetFacts.tool.notUsed;
  const { used } = sheetFacts.tool;
  if (calibrationDue === undefined) return used(first, last, 'unknown');
  return used(first, last, last <= calibrationDue ? 'held' : 'had run out');
}

/** What the procedure says of the parts that are fitted, with the answers of the steps that looked at them. */
export function partsOf({ seals, steps }: Procedure, { answers }: SessionState): readonly string[] {
  return seals.map(({ id, name, partNumber, reuse }) => {
    const work = steps.flatMap((step) => {
      if (step.kind !== 'do' && step.kind !== 'check') return [];
      const done = step.seals.filter(({ seal }) => seal === id).map(({ is }) => is);
      const answer =
        step.kind === 'check' ? step.outcomes.find((each) => each.id === answers.get(step.id))?.text : undefined;
      return done.length > 0 ? [sheetFacts.part.worked(done, step.title, answer ?? null)] : [];
    });
    return [sheetFacts.part.fitted(name, partNumber ?? null, reuse), ...work].join('; ');
  });
}
