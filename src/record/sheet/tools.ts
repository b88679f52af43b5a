/** The tools of the work, with whether their calibration held on the days on which they were used. */
import type { Procedure, Tool } from '../../procedure/procedure.ts';
import { runningToolOf, toolOf } from '../../session/calls.ts';
import { dayOf } from '../../session/intent.ts';
import type { SessionState } from '../../session/state.ts';
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
    const days = readings.filter(({ basis }) => basis.tool === tool.id).map(({ at }) => dayOf(at));
    return {
      name: tool.name,
      id: tool.id,
      range: `${asWritten(tool.range.min)} to ${asWritten(tool.range.max)}, marks of ${asWritten(tool.resolution)}`,
      accuracy: accuracyOf(tool),
      calibrationDue: `${tool.calibrationDue ?? 'not stated'}${labelled.has(tool.id) ? ', read off its label' : ''}`,
      used: usedOn([...new Set(days)].sort(), tool),
    };
  });
}

const accuracyOf = ({ type, class: letter, maximumError }: Tool): string =>
  [
    `${type}${letter === undefined ? '' : `, class ${letter}`}`,
    ...(maximumError === undefined ? [] : [`±${maximumError} %`]),
  ].join(', ');

function usedOn(days: readonly string[], { calibrationDue }: Tool): string {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return 'no reading';
  const when = first === last ? first : `${first} to ${last}`;
  if (calibrationDue === undefined) return `${when}; CALIBRATION UNKNOWN`;
  return last <= calibrationDue ? `${when}; calibration held` : `${when}; CALIBRATION HAD RUN OUT`;
}

/** What the procedure says of the parts that are fitted, with the answers of the steps that looked at them. */
export function partsOf({ seals, steps }: Procedure, { answers }: SessionState): readonly string[] {
  return seals.map(({ id, name, partNumber, reuse }) => {
    const work = steps.flatMap((step) => {
      if (step.kind !== 'do' && step.kind !== 'check') return [];
      const done = step.seals.filter(({ seal }) => seal === id).map(({ is }) => is);
      const answer =
        step.kind === 'check' ? step.outcomes.find((each) => each.id === answers.get(step.id))?.text : undefined;
      return done.length > 0
        ? [`${done.join(', ')} in “${step.title}”${answer === undefined ? '' : `: ${answer}`}`]
        : [];
    });
    const number = partNumber === undefined ? 'part number not stated' : `part number ${partNumber}`;
    return [`${name} (${number}; reuse: ${reuse})`, ...work].join('; ');
  });
}
