/** What is wrong with a draft, what a careful reader would ask about it, and what its parts come to. */
import * as v from 'valibot';
import type { PlannedPass } from '../../tightening/passes.ts';
import { planPasses } from '../../tightening/passes.ts';
import { orderGroups } from '../../tightening/order.ts';
import { layOut, type Pattern } from '../../tightening/pattern.ts';
import { isRefused } from '../fault.ts';
import { lintProcedure, type Warning } from '../lint.ts';
import { Layout, Order, Pass, Target } from '../pattern-schema.ts';
import { type Fault, type Procedure, readProcedure } from '../procedure.ts';
import { at, type Draft, isFields, type Json, listAt, type Path, put, wordsAt } from './draft.ts';

export interface Findings {
  /** Null as long as there are faults. */
  readonly procedure: Procedure | null;
  readonly faults: readonly Fault[];
  /** None are known as long as there are faults. */
  readonly warnings: readonly Warning[];
}

/** The faults of a draft by place; its warnings once it has none. */
export function findingsOf(draft: Draft): Findings {
  const read = readProcedure(withParts(draft));
  return read.kind === 'loaded'
    ? { procedure: read.procedure, faults: [], warnings: lintProcedure(read.procedure) }
    : { procedure: null, faults: read.faults, warnings: [] };
}

/** A pattern that can be drawn, and its order where that fits. */
export interface PatternPreview {
  readonly pattern: Pattern;
  /** In groups, each worked in turn; null where the order does not fit the pattern. */
  readonly groups: readonly (readonly number[])[] | null;
}

/** How a pattern of a draft looks and is worked; null where its layout cannot be drawn yet. */
export function previewPattern(json: Json | undefined): PatternPreview | null {
  const layout = v.safeParse(Layout, at(json, ['layout']));
  if (!layout.success) return null;
  const pattern = unlessRefused(() => layOut(layout.output));
  if (pattern === null) return null;
  const order = v.safeParse(Order, at(json, ['order']));
  return { pattern, groups: order.success ? unlessRefused(() => orderGroups(pattern, order.output)) : null };
}

/** The passes that a tightening step of a draft comes to; null where they cannot be reckoned yet. */
export function previewPasses(draft: Draft, step: number): readonly PlannedPass[] | null {
  const json = at(draft, ['steps', step]);
  const named = listAt(draft, ['patterns']).find((each) => wordsAt(each, ['id']) === wordsAt(json, ['pattern']));
  const preview = previewPattern(named);
  const order = v.safeParse(Order, at(named, ['order']));
  const passes = v.safeParse(v.array(Pass), at(json, ['passes']));
  const final = at(json, ['final']);
  const target = v.safeParse(Target, final);
  if (preview === null || !order.success || !passes.success || (final !== undefined && !target.success)) return null;
  return unlessRefused(() =>
    planPasses({
      pattern: preview.pattern,
      order: order.output,
      passes: passes.output,
      ...(target.success ? { final: target.output } : {}),
    }),
  );
}

function unlessRefused<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (!isRefused(error)) throw error;
    return null;
  }
}

/** The parts of a draft that have members or fields, and none of these names. */
export const partsBeside = (draft: Draft, names: readonly string[]): readonly string[] =>
  Object.keys(draft).filter((name) => {
    const part = draft[name];
    const isEmpty = Array.isArray(part) ? part.length === 0 : isFields(part) && Object.keys(part).length === 0;
    return !names.includes(name) && !isEmpty;
  });

/**
 * A draft with empty objects where a required one is missing, so that what is told to be missing are the fields that a
 * person fills in, each at its own place. Only for finding faults: an empty object is as faulty as none.
 */
function withParts(draft: Draft): Draft {
  const parts: Path[] = [
    ['source'],
    ['component'],
    ...listAt(draft, ['tools']).map((_, i): Path => ['tools', i, 'range']),
    ...listAt(draft, ['steps']).flatMap((step, i): Path[] => [
      ...(at(step, ['final']) === undefined ? [] : [['steps', i, 'final', 'window']]),
      ...listAt(step, ['passes']).flatMap((pass, j): Path[] =>
        at(pass, ['kind']) === 'torque' ? [['steps', i, 'passes', j, 'window']] : [],
      ),
    ]),
  ];
  return parts.reduce((made, path) => (at(made, path) === undefined ? put(made, path, {}) : made), draft);
}
