import { planOf, RUNNING_ROUND } from '../session/calls.ts';
import type { Reading, SessionState } from '../session/state.ts';
import type { Written } from '../units/index.ts';
import { place } from '../words/place.ts';
import { spokenSigns } from '../words/spoken-signs.ts';
import { sayDigits } from './numbers/index.ts';

/** Digit by digit, so that it can be checked word by word. */
export const digits = (decimal: string): string =>
  decimal.startsWith('-') ? `${spokenSigns.minus} ${digits(decimal.slice(1))}` : sayDigits(decimal).join(' ');
export const count = (whole: number): string => digits(String(whole));
export const sayTorque = ({ value, unit }: Written<'torque'>): string => `${digits(value)} ${spokenSigns.torque[unit]}`;

/** How numbers, values and plain sentences stand in an answer. */
export interface Form {
  readonly count: (whole: number) => string;
  /** A value of a reading: what is heard needs no unit each time. */
  readonly value: (torque: Written<'torque'>) => string;
  readonly torque: (torque: Written<'torque'>) => string;
  readonly name: (name: string) => string;
  readonly plain: (text: string) => string;
}

/** A sentence begins with a capital: what is spoken is shown as well. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the fasteners of a step are called. */
export function labelOf(state: SessionState, stepId: string): string {
  const step = state.procedure.steps.find(({ id }) => id === stepId);
  return (step && planOf(state.procedure, step).calls[0]?.label) ?? place.anyFastener;
}

type Fastener = Pick<Reading, 'step' | 'fastener'>;

/** A fastener by what it is called and its number, as sentences take it. */
export const named = (
  state: SessionState,
  { step, fastener }: Fastener,
  form: Pick<Form, 'count'> = SPOKEN,
): readonly [label: string, number: string] => [labelOf(state, step), form.count(fastener)];

/** The number of a pass in words; null in the round of running torques, which has none. */
export const passInWords = (pass: number): string | null => (pass === RUNNING_ROUND ? null : count(pass));

/** A symbol of a unit in words; as it is where there are none. */
const symbolInWords = (symbol: string): string => wordFor(symbol, { ...spokenSigns.torque, ...spokenSigns.others });

const wordFor = (symbol: string, words: Readonly<Record<string, string>>): string =>
  Object.hasOwn(words, symbol) ? (words[symbol] ?? symbol) : symbol;

/** A sign that stands before figures, and not between them as in a date or a part number. */
const MINUS_SIGN = /(?<![\p{L}\d.])[-−](?=\d)/gu;

/** A name as it is spoken: "30 %" is "three zero per cent". Marks such as M10 stay as they are. */
export const sayName = (name: string): string =>
  name
    .replace(MINUS_SIGN, `${spokenSigns.minus} `)
    .replace(/(?<![\p{L}\d.])(\d+(?:\.\d+)?)(?!\d)(?:\s?([^\s\d.,;:()]+))?/gu, (_, figures: string, after?: string) =>
      [digits(figures), ...(after === undefined ? [] : [symbolInWords(after)])].join(' '),
    );

/** Plain sentences as they are spoken: dates digit by digit, figures and their units in words. */
export const sayPlain = (text: string): string =>
  sayName(
    text
      .replace(/\b(\d{4})-(\d{2})-(\d{2})\b/g, (date) => date.split('-').map(digits).join(', '))
      .replace(
        /(?<=\d )(US|Imp) (gal|qt)\b/g,
        (_, country: string, measure: string) => `${country} ${wordFor(measure, spokenSigns.measures)}`,
      )
      // A list of whole numbers; what has a unit is a value of its own.
      .replace(/(?<=\d), \d+(?!\.?\d)(?:\s?([^\s\d.,;:()]+))?/gu, (found, after?: string) =>
        after !== undefined && symbolInWords(after) !== after ? found : found.replace(',', ` ${spokenSigns.and}`),
      ),
  ).replace(/(?<=^|[.?!] )\p{Ll}/gu, (first) => first.toUpperCase());

const inFigures = ({ value, unit }: Written<'torque'>): string => `${value} ${unit}`;

/** For the ear: figures digit by digit, signs in words. */
export const SPOKEN: Form = {
  count,
  value: ({ value }) => digits(value),
  torque: sayTorque,
  name: sayName,
  plain: sayPlain,
};
/** For the eye: figures as they are. */
export const WRITTEN: Form = {
  count: String,
  value: inFigures,
  torque: inFigures,
  name: (name) => name,
  plain: (text) => text,
};
