/** What an import did not take over, or a person must settle. */
import { said } from './said.ts';

/** What has no place in a procedure file. */
const things = {
  figure: 'the figure',
  graphic: 'the picture',
  symbol: 'the symbol',
  multimedia: 'the film or sound',
  table: 'the table',
  dmRef: 'the reference to another data module',
  pmRef: 'the reference to another publication',
  externalPubRef: 'the reference to another document',
  footnote: 'the footnote',
  foldout: 'the fold-out',
};

const beginningWith = (words: string): string => (words === '' ? '' : `: ${words}`);
const keptAsWords = 'it is kept as words: where it is a torque, make the step a tightening and fill it in';

export const leftOut = said('leftOut', {
  place: (line: number, step: string | null) => `line ${line}${step === null ? '' : `, step ${step}`}`,
  /** @param words its first ones, so that a person finds it; the empty text where it has none */
  element: (name: string, words: string) => `<${name}> is not taken over${beginningWith(words)}`,
  breakers: (words: string) => `the list of circuit breakers is not taken over${beginningWith(words)}`,
  thing: (what: keyof typeof things, called: string) =>
    `${things[what]}${called === '' ? '' : ` ${called}`} is not taken over`,
  meaning: (element: string) => `the words inside <${element}> are taken over, what it means is not`,
  link: (id: string) => `the link to ${id} is not taken over`,

  hazardElsewhere: (id: string) => `the warning or caution "${id}" is not in this module: look it up and add it`,
  twoTorques: 'two torques stand in one step: it stays plain work; make a step of each',
  whichFasteners: 'which fasteners are tightened is not in the module: draw the pattern and choose it',
  unknownApplicability: (id: string) => `this step applies only to ${id}, of which the module says no more`,
  twoApplicabilities: 'this step and the one around it each apply only to some units: only its own is asked',
  independentCheck: (code: string) =>
    `the independent check "${code}" is not taken over: look up whom the code asks for, and add a witness step`,

  manyValues: (quantity: string) =>
    `the quantity ${quantity} holds more than one value with its limits; ${keptAsWords}`,
  noUnit: (quantity: string) => `the quantity ${quantity} has no unit that is marked as one; ${keptAsWords}`,
  commaInNumber: (number: string) =>
    `the number ${number} may have a decimal comma or a thousands mark; it is kept as written: write it with a point`,
  noPlainNumber: (number: string) =>
    `${number} is no plain number; it is kept as written: write it in figures with a point and without a sign`,

  toolFacts: (tool: string) => `type, range and marks of the tool "${tool}" are not in the module: fill them in`,
  person: (facts: readonly string[]) =>
    `category, skill, trade and time of a person are not taken over: ${facts.join(', ')}`,
});
