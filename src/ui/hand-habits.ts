/** How each person works switches and touch on this device, checked by the room that knows what they mean. */
import { readBindings, type Bindings } from '../gesture/bindings.ts';
import { openHabitBook } from '../storage/habits.ts';

export const switchBook = openHabitBook<Bindings>('switches', (raw) => {
  const read = readBindings(raw);
  return read.kind === 'valid' ? read.bindings : null;
});
