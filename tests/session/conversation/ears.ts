/** How numbers are said, and what a listener makes of what is said: its own small table, so that the voice is not asked about itself. */
const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Digit by digit: '24.5' is "two four point five". */
export const spelled = (decimal: string): string =>
  [...decimal].map((figure) => (figure === '.' ? 'point' : (DIGITS[Number(figure)] ?? figure))).join(' ');

const DIGIT = `(?:${DIGITS.join('|')})`;
const NUMBER = new RegExp(`\\b${DIGIT}(?: ${DIGIT}| point(?= ${DIGIT}))*\\b`, 'g');

/** An announcement with its numbers in figures: "stud one, two four point five" is "stud 1, 24.5". */
export const figuresIn = (said: string): string =>
  said.toLowerCase().replace(NUMBER, (words) =>
    words
      .split(' ')
      .map((word) => (word === 'point' ? '.' : DIGITS.indexOf(word)))
      .join(''),
  );

export interface ReadBack {
  readonly stud: number;
  readonly value: string;
  readonly witness: string | null;
}

const READ_BACK = /\bstud (\d+),(?: running torque| click at)? (\d+(?:\.\d+)?)(?:, witness, (\d+(?:\.\d+)?))?/;

/** The value that an announcement reads back, or calls out, with its stud; null where it says none. */
export function readBackIn(said: string): ReadBack | null {
  const [, stud, value, witness] = READ_BACK.exec(figuresIn(said)) ?? [];
  return value === undefined ? null : { stud: Number(stud), value, witness: witness ?? null };
}

/** Studs and what is left of them are counted in small whole numbers. */
const MAY_COUNT = /^[1-4]?\d$/;

/** Whether a value is given away: read back or called out with any stud, or said as it is. */
export const tells = (said: string, value: string): boolean =>
  readBackIn(said) !== null ||
  (!MAY_COUNT.test(value) &&
    figuresIn(said)
      .split(/[^\d.]+|\.(?!\d)/)
      .includes(value));

/** The values that an answer tells of what is logged: "stud one, pass two, two five". */
export const valuesToldIn = (said: string): readonly string[] =>
  [...figuresIn(said).matchAll(/(?:pass \d+|running torque), (\d+(?:\.\d+)?)/g)].flatMap(([, value]) => value ?? []);
