/** A value keyed in with figures and one point. */
import { isWellFormed } from '../session/intent.ts';

/** What may become a value with more figures: no second point, no sign, no noughts before a figure. */
const BEGUN = /^(|(0|[1-9]\d*)(\.\d*)?)$/;

/** Whether a text is a whole value, or one figure more could make it one. */
const isBegun = (text: string): boolean =>
  BEGUN.test(text) && (text === '' || isWellFormed({ fastener: null, value: text.endsWith('.') ? `${text}0` : text }));

/**
 * The text after a figure or the point is keyed in. A key that leads to no value changes nothing: nothing is guessed.
 * The comma of a keypad is shown as the point that it stands for.
 */
export function keyedIn(text: string, key: string): string {
  const mark = key === ',' ? '.' : key;
  const after = text === '' && mark === '.' ? '0.' : text + mark;
  return isBegun(after) ? after : text;
}

/** The text after the last of it is deleted. */
export const deleted = (text: string): string => text.slice(0, -1);

/** A text that came in another way, pasted or typed over; null where it leads to no value. */
export function typedOver(text: string): string | null {
  const plain = text.trim().replace(',', '.');
  return isBegun(plain) ? plain : null;
}

/** Whether a text is a value that can be read out. */
export const isValue = (text: string): boolean => isWellFormed({ fastener: null, value: text });
