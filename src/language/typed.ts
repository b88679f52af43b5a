import { DECIMAL, parseUnit, Refused, type Unit } from '../units/index.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/**
 * The words of a typed line. Figures stay figures: unlike digits that are said one by one, they can be cut in one way
 * only. Two side by side are a fastener and its value ("4 24.5" is "number 4 at 24.5"), and a unit becomes its spoken
 * form. What could be misread stays as it was typed and is not understood: three numbers in a row, or a comma inside a
 * number ("8,5").
 */
export function typedWords(line: string): readonly string[] {
  const tokens = signsJoined(line.trim()).split(/\s+/).map(withoutStop).filter(Boolean);
  const last = tokens.findLastIndex(isFigures);
  const unit = last < 0 ? null : unitIn(tokens.slice(last + 1).join(' '));
  const before = unit === null ? tokens : tokens.slice(0, last + 1);
  return [...runsOf(before).flatMap(wordsOf), ...(unit === null ? [] : TORQUE_UNIT_SPOKEN[unit][0].split(' '))];
}

/** A sign before figures belongs to them, however it is typed: alone it would fall away, and leave another value. */
const signsJoined = (line: string): string => line.replace(/(?<![^\s])[-−–]\s*(?=\d)/gu, '-');

/** Neighbouring figures together; every other token alone. */
function runsOf(tokens: readonly string[]): readonly (readonly string[])[] {
  return tokens.reduce<readonly (readonly string[])[]>((runs, token) => {
    const run = runs.at(-1);
    return run?.every(isFigures) && isFigures(token) ? [...runs.slice(0, -1), [...run, token]] : [...runs, [token]];
  }, []);
}

function wordsOf(run: readonly string[]): readonly string[] {
  const [first, second] = run;
  return run.length === 2 && first !== undefined && second !== undefined && isFigures(first)
    ? ['number', first, 'at', second]
    : run.map((token) => token.toLowerCase());
}

/** A comma may follow figures; a point after them could be half a number. A question is no statement, so its mark stays. */
const withoutStop = (token: string): string => token.replace(/,$/, '').replace(/(?<=\p{L})[.;:!]$/u, '');

const isFigures = (token: string): boolean => DECIMAL.test(token) && !token.startsWith('-');

function unitIn(text: string): Unit<'torque'> | null {
  try {
    return text === '' ? null : parseUnit('torque', text);
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}
