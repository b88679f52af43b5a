import type { Situation } from '../language/situation.ts';
import type { Meaning } from '../session/intent.ts';
import { pendingReading, type SessionState } from '../session/state.ts';

/**
 * What one pedal means: it goes on where work stands by, affirms where that is asked for, and else takes the next step.
 * A value outside its window wants a word or a tap: there it only has the question said again.
 */
export function forwardMeaning(state: SessionState, { sayings }: Situation): Meaning {
  const pending = pendingReading(state);
  if (pending && pending.verdict !== 'in') return { kind: 'say again' };
  const wanted = (['continue', 'affirm'] as const).find((kind) => sayings.some(({ meaning }) => meaning.kind === kind));
  return { kind: wanted ?? 'next' };
}
