/** The door of the room: a procedure read from a file, or everything that is wrong with the file. */
import * as v from 'valibot';
import { procedureFile } from '../words/procedure-file.ts';
import { faultOfIssue, shown, type Fault } from './fault.ts';
import { DEEPEST, jsonFaults } from './json-text.ts';
import { migrate, type JsonObject } from './migrate.ts';
import { planningFaults } from './planning.ts';
import { referenceFaults } from './references.ts';
import { FORMAT, ProcedureSchema, type Procedure } from './schema.ts';
import type { Step } from './steps.ts';

export type { Procedure, ProcedureFile } from './schema.ts';
export type { Fault } from './fault.ts';
export { closedIn, openedIn, type Step, type StepOf, stepText, type TightenStep } from './steps.ts';
export type Hazard = Step['hazards'][number];
export type Tool = Procedure['tools'][number];
export type Pattern = Procedure['patterns'][number];

export type Loaded =
  | { readonly kind: 'loaded'; readonly procedure: Procedure }
  | { readonly kind: 'faulty'; readonly faults: readonly Fault[] };

/** Characters; a long procedure has a tenth of it. */
export const LARGEST_FILE = 2_000_000;

const faulty = (...faults: readonly Fault[]): Loaded => ({ kind: 'faulty', faults });

/** Reads a procedure from the text of a file. Nothing is guessed: any fault refuses the whole file. */
export function loadProcedure(text: string): Loaded {
  if (text.length > LARGEST_FILE) {
    return faulty({ path: '', message: procedureFile.tooLong(text.length, LARGEST_FILE) });
  }
  const faults = jsonFaults(text);
  return faults.length > 0 ? faulty(...faults) : readProcedure(JSON.parse(text));
}

/**
 * Reads a procedure from parsed JSON. Faults of single fields are told all at once; names, orders and passes are looked
 * at when the fields are sound.
 */
export function readProcedure(json: unknown): Loaded {
  if (!isObject(json)) return faulty({ path: '', message: procedureFile.noObject(shown(json)) });
  if (isDeeper(json, DEEPEST)) return faulty({ path: '', message: procedureFile.tooDeep(DEEPEST) });
  if (json.format !== FORMAT) {
    return faulty({ path: 'format', message: procedureFile.otherFormat(shown(json.format), FORMAT) });
  }
  const migrated = migrate(json);
  if (migrated.kind === 'refused') return faulty(migrated.fault);
  const result = v.safeParse(ProcedureSchema, migrated.file);
  if (!result.success) return faulty(...result.issues.map(faultOfIssue));
  const procedure = result.output;
  const dangling = referenceFaults(procedure);
  const faults = dangling.length > 0 ? dangling : planningFaults(procedure);
  return faults.length > 0 ? faulty(...faults) : { kind: 'loaded', procedure };
}

const isObject = (json: unknown): json is JsonObject =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

const isDeeper = (json: unknown, levels: number): boolean =>
  typeof json === 'object' &&
  json !== null &&
  (levels === 0 || Object.values(json).some((value) => isDeeper(value, levels - 1)));
