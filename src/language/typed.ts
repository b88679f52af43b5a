import { DECIMAL } from '../units/index.ts';
import { sayDigits } from './numbers/index.ts';

/**
 * The words of a typed line, as if they had been spoken: figures become digits, and two numbers side by side are a
 * fastener and its value ("4 24.5" is "number four at two four point five").
 */
export function typedWords(line: string): readonly string[] {
  const tokens = line.trim().replaceAll(',', ' ').split(/\s+/).filter(Boolean);
  return tokens.flatMap((token, i) => {
    if (!isFigures(token)) return [token.toLowerCase()];
    const isFastener = isFigures(tokens[i + 1]) && !isFigures(tokens[i - 1]);
    return isFastener ? ['number', ...sayDigits(token), 'at'] : sayDigits(token);
  });
}

const isFigures = (token: string | undefined): boolean =>
  token !== undefined && DECIMAL.test(token) && token[0] !== '-';
