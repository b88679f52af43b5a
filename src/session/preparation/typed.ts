/** Fields of a page read into values. What cannot be read is told with what to write. */
import { isDay } from '../../procedure/day.ts';
import { DECIMAL, fromWritten, type Kind, type Quantity, type Unit } from '../../units/index.ts';
import { typing } from '../../words/typing.ts';

/** A value, nothing where nothing was typed, or why it cannot be read. */
export type Typed<Value> =
  | { readonly kind: 'value'; readonly value: Value }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'wrong'; readonly why: string };

/** More digits than any rule or label shows. */
const LONGEST = 12;

/** A quantity above zero, written as a plain decimal in a unit. A decimal comma is asked about, never guessed. */
export function typedQuantity<K extends Kind>(kind: K, text: string, unit: Unit<NoInfer<K>>): Typed<Quantity<K>> {
  const plain = text.trim();
  if (plain === '') return { kind: 'nothing' };
  if (plain.includes(',')) return wrong(typing.comma(plain));
  if (!DECIMAL.test(plain) || plain.length > LONGEST) return wrong(typing.noNumber(plain, unit));
  const value = fromWritten(kind, { value: plain, unit });
  return value.value > 0 ? { kind: 'value', value } : wrong(typing.notAboveZero(plain, unit));
}

/** A day of the calendar as 'YYYY-MM-DD'. */
export function typedDay(text: string): Typed<string> {
  const plain = text.trim();
  if (plain === '') return { kind: 'nothing' };
  return isDay(plain) ? { kind: 'value', value: plain } : wrong(typing.noDay(plain));
}

/** How many there are: a whole number above zero. */
export function typedCount(text: string): Typed<number> {
  const plain = text.trim();
  if (plain === '') return { kind: 'nothing' };
  return /^\d{1,4}$/.test(plain) && Number(plain) > 0
    ? { kind: 'value', value: Number(plain) }
    : wrong(typing.noCount(plain));
}

const wrong = (why: string): Typed<never> => ({ kind: 'wrong', why });
