/** What is wrong with a procedure file: found, and expected there. */
import { said } from './said.ts';

/** What should stand at a place of JSON text. */
const inJson = {
  text: 'a text that ends with a quote on the same line',
  value: 'a value',
  'name of a field': 'the name of a field in double quotes',
  colon: 'a colon after the name of the field',
  'comma or brace': 'a comma or "}"',
  'comma or bracket': 'a comma or "]"',
  end: 'nothing more after the end of the procedure',
};

type List = 'conditions' | 'openings' | 'tools' | 'adapters' | 'seals' | 'consumables' | 'patterns';

const place = (line: number, column: number): string => `line ${line}, column ${column}`;
const versionsUpTo = (current: number): string =>
  current === 1 ? 'expected 1' : `expected a whole number from 1 to ${current}`;

export const procedureFile = said('procedureFile', {
  /** @param expected a sentence about what the field expects */
  found: (found: string, expected: string) => `found ${found}, ${expected}`,
  nothing: 'nothing',
  emptyList: 'an empty list',
  list: 'a list',
  object: 'an object',
  window: (min: string, max: string) => `${min} to ${max}`,

  tooLong: (characters: number, most: number) =>
    `found ${characters} characters, expected a procedure of at most ${most}`,
  tooDeep: (most: number) => `nested more than ${most} levels deep`,
  noObject: (found: string) => `found ${found}, expected a procedure, an object`,
  otherFormat: (found: string, format: string) => `found ${found}, expected "${format}": this file is not a procedure`,
  noVersion: (found: string, current: number) => `found ${found}, ${versionsUpTo(current)}, the version of the format`,
  newer: (version: number, current: number) =>
    `found ${version}, ${versionsUpTo(current)}: this file needs a newer program`,
  tooOld: (version: number, current: number) =>
    `found ${version}, which this program can no longer read, expected ${current}`,

  notJson: (line: number, column: number, why: string) => `not readable as JSON at ${place(line, column)}: ${why}`,
  /** @param found null at the end of the file */
  inJson: (found: string | null, expected: keyof typeof inJson) =>
    `found ${found ?? 'the end of the file'}, expected ${inJson[expected]}`,
  fieldTwice: (line: number, column: number) =>
    `this field stands twice in its object, the second time at ${place(line, column)}`,

  idTwice: (id: string, at: string) => `found ${id}, which ${at} has`,
  saidTwice: (saying: string, outcome: number) => `found ${saying}, which is said for outcome ${outcome}`,
  noneToPointTo: (id: string, list: List) => `found ${id}, but the file has no ${list}`,
  pointsToNothing: (id: string, list: List, known: readonly string[]) =>
    `found ${id}, expected one of the ${list}: ${known.join(', ')}`,

  tooManyCalls: (most: number) => `with this step the procedure calls more than ${most} fasteners`,
  noLever: (tool: string) => `an adapter needs the lever of its wrench, expected "lever" in the tool ${tool}`,
  noGroups: 'found "last group", but the step has no "groups"',
  noFluid: 'missing, expected the fluid that the component retains, with its density',
});
