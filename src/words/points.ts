/** The points of a step: as they are asked, as they are named, and what was answered. */
import { said } from './said.ts';

type Closure = 'cap' | 'plug';

export const points = said('points', {
  ask: {
    capped: (opening: string, closure: Closure) =>
      `${opening}: is its ${closure} ${closure === 'cap' ? 'on' : 'in'}? Affirm or negative?`,
    connected: (opening: string, closure: Closure) =>
      `${opening}: is its ${closure} ${closure === 'cap' ? 'off' : 'out'}, and is it connected? Affirm or negative?`,
    criterion: (seal: string, criterion: string) => `${seal}: ${criterion}. Is that true? Affirm or negative?`,
    coated: (seal: string, fluid: string | null) =>
      `${seal}: is it coated thinly with ${fluid ?? 'the fluid of the manual'}? Affirm or negative?`,
    seated: (seal: string) => `${seal}: is it seated by hand? Affirm or negative?`,
    started: (what: string) => `${what}: started by hand? Affirm or negative?`,
    held: 'Does somebody hold the weight? Say held.',
    ordered: (label: string, number: number, order: string, mayBeLeft: boolean) =>
      `${label} ${number}. ${order} Is it done? Affirm or negative${mayBeLeft ? ', or leave open' : ''}?`,
    accountedFor: (what: string) => `${what}: accounted for? Affirm or negative?`,
    /** @param part the number of the new one; null where it has none */
    reuseOrReplace: (seal: string, part: string | null) => `${seal}: reuse or replace?${newPart(part)}`,
    replaceFailed: (seal: string, criterion: string, part: string | null) =>
      `${seal}. It failed: ${criterion}.${newPart(part)} Say replace.`,
    replaceAlways: (seal: string, part: string | null) =>
      `${seal}. The manual forbids using it again.${newPart(part)} Say replace.`,
  },
  newSeal: (seal: string) => `new ${seal}`,
  keepInPlace: 'Hold it in place.',

  /** As it is named within a sentence. */
  name: {
    closureOf: (closure: Closure, opening: string) => `the ${closure} of the ${opening}`,
    connection: (opening: string) => `the connection of the ${opening}`,
    criterion: (seal: string, criterion: string) => `the ${seal}, ${criterion}`,
    seal: (seal: string) => `the ${seal}`,
    allFasteners: (label: string, pattern: string) => `all ${label}s of ${pattern}`,
    fasteners: (label: string, numbers: readonly number[]) =>
      `${label}${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')}`,
    fastenersOfPart: (part: string, label: string, numbers: readonly number[]) =>
      `${part}, ${label}${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')}`,
    weight: 'the weight',
    /** What is accounted for, counted out: without its article. */
    countedClosure: (closure: Closure, opening: string) => `${closure} of the ${opening}`,
    wrapper: (consumable: string) => `wrapper of the ${consumable}`,
    reading: (label: string, number: number, value: string, unit: string) => `${label} ${number}, ${value} ${unit}`,
    deviation: (label: string, number: number, what: string) => `${label} ${number}, ${what}`,
    someEntry: (entry: number) => `entry ${entry}`,
    /** @param order null where it is not quoted */
    ordered: (about: string, order: string | null) =>
      `what the procedure has done about ${about}${order === null ? '' : `, “${order}”`}`,
  },
  someCriterion: (number: number) => `criterion ${number}`,

  /** As a fact of the record. */
  fact: {
    capped: fact('closed off'),
    connected: fact('connected'),
    coated: fact('coated'),
    seated: fact('seated by hand'),
    started: fact('started by hand'),
    held: fact('held by somebody'),
    tool: fact('accounted for'),
    closure: fact('accounted for'),
    consumable: fact('accounted for'),
    ordered: fact('done'),
  },
  criterionFact: (seal: string, criterion: string, isSo: boolean) =>
    `${seal}, “${criterion}”: ${isSo ? 'met' : 'FAILED'}`,
  unknownFact: (point: string, step: string, answer: string) => `Point ${point} of step ${step}: ${answer}`,
  sealFact: {
    usedAgain: (seal: string) => `${seal}: used again`,
    replaced: (seal: string) => `${seal}: replaced`,
    neverUsedAgain: (seal: string, part: string | null) =>
      `${seal}: replaced, the manual forbids using it again${newPartFact(part)}`,
    failed: (seal: string, part: string | null, criterion: string) =>
      `${seal}: replaced, it failed “${criterion}”${newPartFact(part)}`,
    chosen: (seal: string, part: string | null) => `${seal}: replaced, as the mechanic chose${newPartFact(part)}`,
  },
});

const newPart = (part: string | null): string => (part === null ? '' : ` New part: ${part}.`);
const newPartFact = (part: string | null): string => (part === null ? '' : `. New part ${part}`);

function fact(what: string): (about: string, isSo: boolean) => string {
  // A line of the record begins with the thing itself.
  return (about, isSo) => `${about.replace(/^the /, '')}: ${isSo ? '' : 'not yet '}${what}`;
}
