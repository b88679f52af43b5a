/**
 * Lint: what a careful reader would ask about a procedure that can be worked. A warning never refuses a file; the manual
 * decides, and the manual may have its reasons.
 */
import * as fluid from './lint/fluid-rules.ts';
import * as hazard from './lint/hazard-rules.ts';
import * as joint from './lint/joint-rules.ts';
import type { Finding, Rule } from './lint/rule.ts';
import * as source from './lint/source-rules.ts';
import * as tool from './lint/tool-rules.ts';
import * as unused from './lint/unused-rules.ts';
import type { Procedure } from './schema.ts';

/** Every rule by its name. */
export const RULES = { ...source, ...hazard, ...fluid, ...joint, ...tool, ...unused } as const satisfies Readonly<
  Record<string, Rule>
>;
export type RuleName = keyof typeof RULES;

export interface Warning extends Finding {
  readonly rule: RuleName;
}

/** All warnings about a loaded procedure, rule by rule. */
export const lintProcedure = (procedure: Procedure): readonly Warning[] =>
  (Object.keys(RULES) as RuleName[]).flatMap((rule) => RULES[rule](procedure).map((found) => ({ ...found, rule })));
