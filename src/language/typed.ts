import { DECIMAL, parseUnit, Refused, type Unit } from '../units/index.ts';
import { sayDigits } from './numbers/index.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/**
 * The words of a typed line, as if they had been spoken: figures become digits, two numbers side by side are a fastener
 * and its value ("4 24.5" is "number four at two four point five"), and a unit becomes its spoken form. What could be
 * misread stays as it was typed and is not understood: three numbers in a row, or a comma inside a number ("8,5").
 */
export function typedWords(line: string): readonly string[] {
  const tokens = line
    .trim()
    .split(/\s+/)
    .map((token) => token.replace(/,$/, ''))
    .filter(Boolean);
  const last = tokens.findLastIndex(isFigures);
  const unit = last < 0 ? null : unitIn(tokens.slice(last + 1).join(' '));
  const before = unit === null ? tokens : tokens.slice(0, last + 1);
  return [
    ...runsOf(before).flatMap((run) => wordsOf(run)),
    ...(unit === null ? [] : TORQUE_UNIT_SPOKEN[unit][0].split(' ')),
  ];
}

/** Neighbouring figures together; every other token alone. */
function runsOf(tokens: readonly string[]): readonly (readonly string[])[] {
  return tokens.reduce<readonly (readonly string[])[]>((runs, token) => {
    const run = runs.at(-1);
    return run?.every(isFigures) && isFigures(token) ? [...runs.slice(0, -1), [...run, token]] : [...runs, [token]];
  }, []);
}

function wordsOf(run: readonly string[]): readonly string[] {
  const [first, second, third] = run;
  if (!isFigures(first) || third !== undefined) return run.map((token) => token.toLowerCase());
  return second === undefined ? sayDigits(first) : ['number', ...sayDigits(first), 'at', ...sayDigits(second)];
}

/** More figures than any scale shows are a slip, and are left as they are. */
const LONGEST_FIGURES = 12;

const isFigures = (token: string | undefined): token is string =>
  token !== undefined && token.length <= LONGEST_FIGURES && DECIMAL.test(token) && !token.startsWith('-');

function unitIn(text: string): Unit<'torque'> | null {
  try {
    return text === '' ? null : parseUnit('torque', text);
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}
