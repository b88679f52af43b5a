import * as v from 'valibot';
import { ProcedureSchema, type Procedure } from './schema.ts';

export type { Procedure, ProcedureFile } from './schema.ts';
export type Step = Procedure['steps'][number];
export type StepOf<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;
export type TightenStep = StepOf<'tighten'>;
export type Hazard = Step['hazards'][number];
export type Tool = Procedure['tools'][number];
export type Pattern = Procedure['patterns'][number];

/** One thing wrong with a procedure file: where, and what was expected there. */
export interface Fault {
  /** Path in the file, such as `steps.3.passes.0.target.unit`; empty for the file as a whole. */
  readonly path: string;
  readonly message: string;
}

export type Loaded =
  | { readonly kind: 'loaded'; readonly procedure: Procedure }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] };

/** Reads a procedure from the text of a file. Nothing is guessed: any fault refuses the whole file. */
export function loadProcedure(text: string): Loaded {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { kind: 'faulty', faults: [{ path: '', message: `not readable as JSON: ${(error as Error).message}` }] };
  }
  return readProcedure(json);
}

/** Reads a procedure from parsed JSON. */
export function readProcedure(json: unknown): Loaded {
  const result = v.safeParse(ProcedureSchema, json);
  if (!result.success) {
    const faults = result.issues.map((issue) => ({ path: v.getDotPath(issue) ?? '', message: issue.message }));
    return { kind: 'faulty', faults };
  }
  return { kind: 'loaded', procedure: result.output };
}

/** What is spoken for a step: its short form where it has one. */
export const stepText = (step: Step): string => step.say ?? step.text;
