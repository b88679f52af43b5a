/** What of a procedure is needed for the unit at hand: the steps that may apply, and what is used in them. */
import type { Hazard, Procedure, Step, TightenStep, Tool } from '../../procedure/procedure.ts';
import { runningToolOf, toolOf } from '../calls.ts';
import { warningKey } from '../state.ts';

/** All steps but those that are known not to apply. */
export const stepsThatMayApply = ({ steps }: Procedure, conditions: ReadonlyMap<string, boolean>): readonly Step[] =>
  steps.filter(({ applies }) => !applies || (conditions.get(applies.condition) ?? applies.is) === applies.is);

export const isTightening = (step: Step): step is TightenStep => step.kind === 'tighten';

/** The questions on which it depends whether steps apply. */
export function questionsOf({ conditions, steps }: Procedure): Procedure['conditions'] {
  const asked = new Set(steps.map(({ applies }) => applies?.condition));
  return conditions.filter(({ id }) => asked.has(id));
}

/** The torque tools in the order in which they are first used. */
export const toolsIn = (procedure: Procedure, steps: readonly Step[]): readonly Tool[] => [
  ...new Set(
    steps
      .filter(isTightening)
      .flatMap((step) => [toolOf(procedure, step), ...(step.runDown ? [runningToolOf(procedure, step)] : [])]),
  ),
];

export type NamedAdapter = Procedure['adapters'][number];

export const adaptersIn = ({ adapters }: Procedure, steps: readonly Step[]): readonly NamedAdapter[] =>
  adapters.filter(({ id }) => steps.some((step) => step.kind === 'tighten' && step.adapter === id));

export type Consumable = Procedure['consumables'][number];

/** Those that must not be used after a day. */
export const expiringIn = ({ consumables }: Procedure): readonly Consumable[] =>
  consumables.filter(({ expires }) => expires);

/** A hazard, with every place where it is told: the same words are acknowledged once. */
export interface NamedHazard extends Hazard {
  /** Of its first place. */
  readonly key: string;
  readonly places: readonly { readonly step: string; readonly index: number }[];
  readonly titles: readonly string[];
}

const GRAVEST_FIRST: readonly Hazard['signal'][] = ['danger', 'warning', 'caution', 'notice'];

/** Every hazard of the steps, the gravest first. */
export function hazardsIn(steps: readonly Step[]): readonly NamedHazard[] {
  const byWords = new Map<string, NamedHazard>();
  for (const { id: step, title, hazards } of steps)
    for (const [index, hazard] of hazards.entries()) {
      const words = `${hazard.signal}/${hazard.consequence}/${hazard.text}`;
      const before = byWords.get(words);
      byWords.set(words, {
        ...hazard,
        key: before?.key ?? warningKey(step, index),
        places: [...(before?.places ?? []), { step, index }],
        titles: [...new Set([...(before?.titles ?? []), title])],
      });
    }
  const gravity = ({ signal }: Hazard): number => GRAVEST_FIRST.indexOf(signal);
  return [...byWords.values()].sort((one, other) => gravity(one) - gravity(other));
}
