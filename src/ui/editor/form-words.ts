/** Faults of a file in words for somebody who fills in a form and never sees the file. */
import { remarks } from '../../words/remarks.ts';

/** "missing, expected words in quotes" is "Fill in words". */
export function formWords(message: string): string {
  const words = remarks.inForm(message);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Whether a fault only says that nothing was filled in yet. */
export const isMissing = (message: string): boolean => remarks.isMissing(message);
