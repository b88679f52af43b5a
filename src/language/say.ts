import { planOf } from '../session/calls.ts';
import type { SessionState } from '../session/state.ts';
import type { Written } from '../units/index.ts';
import { sayDigits } from './numbers/index.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/** Digit by digit, so that it can be checked word by word. */
export const digits = (decimal: string): string =>
  decimal.startsWith('-') ? `minus ${digits(decimal.slice(1))}` : sayDigits(decimal).join(' ');
export const count = (whole: number): string => digits(String(whole));
export const sayTorque = ({ value, unit }: Written<'torque'>): string =>
  `${digits(value)} ${TORQUE_UNIT_SPOKEN[unit][0]}`;

/** A sentence begins with a capital: what is spoken is shown as well. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the fasteners of a step are called. */
export function labelOf(state: SessionState, stepId: string): string {
  const step = state.procedure.steps.find(({ id }) => id === stepId);
  return (step && planOf(state.procedure, step).calls[0]?.label) ?? 'fastener';
}

const SPOKEN_SYMBOLS: ReadonlyMap<string, string> = new Map([
  ...Object.entries(TORQUE_UNIT_SPOKEN).map(([symbol, [spoken]]) => [symbol, spoken] as const),
  ['%', 'per cent'],
  ['°', 'degrees'],
  ['h', 'hours'],
  ['kg', 'kilograms'],
  ['lb', 'pounds'],
  ['L', 'litres'],
  ['mL', 'millilitres'],
  ['mm', 'millimetres'],
  ['psi', 'pounds per square inch'],
  ['kPa', 'kilopascals'],
  ['min', 'minutes'],
]);

/** A sign that stands before figures, and not between them as in a date or a part number. */
const MINUS_SIGN = /(?<![\p{L}\d.])[-−](?=\d)/gu;

/** A name as it is spoken: "30 %" is "three zero per cent". Marks such as M10 stay as they are. */
export const sayName = (name: string): string =>
  name
    .replace(MINUS_SIGN, 'minus ')
    .replace(/(?<![\p{L}\d.])(\d+(?:\.\d+)?)(?!\d)(?:\s?([^\s\d.,;:()]+))?/gu, (_, figures: string, after?: string) =>
      [digits(figures), ...(after === undefined ? [] : [SPOKEN_SYMBOLS.get(after) ?? after])].join(' '),
    );

/** Plain sentences as they are spoken: dates digit by digit, figures and their units in words. */
export const sayPlain = (text: string): string =>
  sayName(
    text
      .replace(/\b(\d{4})-(\d{2})-(\d{2})\b/g, (date) => date.split('-').map(digits).join(', '))
      .replace(
        /(?<=\d )(US|Imp) (gal|qt)\b/g,
        (_, country: string, measure: string) => `${country} ${MEASURES[measure]}`,
      ),
  ).replace(/(?<=^|[.?!] )\p{Ll}/gu, (first) => first.toUpperCase());

const MEASURES: Readonly<Partial<Record<string, string>>> = { gal: 'gallons', qt: 'quarts' };
