import type { Signal } from '../gesture/bindings.ts';
import type { Situation } from '../language/situation.ts';
import type { Meaning } from '../session/intent.ts';
import type { SessionState } from '../session/state.ts';
import { forwardMeaning } from './forward.ts';

/** Signals that mean something in the work itself; `pick` and `value` open a choice of such meanings. */
export type WorkSignal = Exclude<Signal, 'pick' | 'value'>;

/** What a signal asks for at this moment. What may not be meant now is refused aloud like every other input. */
export function meaningOf(signal: WorkSignal, state: SessionState, situation: Situation): Meaning {
  switch (signal) {
    case 'forward':
      return forwardMeaning(state, situation);
    case 'backward':
      return backwardMeaning(situation);
    case 'stand by':
      // The same switch that hushed the work wakes it.
      return { kind: may(situation, 'continue') ? 'continue' : 'stand by' };
    case 'say again':
    case 'help':
      return { kind: signal };
  }
}

/**
 * A step back; where there is none to go back to, “negative”: to a read-back, which is then asked for anew. To a point that
 * somebody looks at it never says “negative”: that a seal failed is told by its own word or tap.
 */
const backwardMeaning = (situation: Situation): Meaning =>
  may(situation, 'back') || !may(situation, 'negative') ? { kind: 'back' } : { kind: 'negative' };

const may = ({ sayings }: Situation, kind: Meaning['kind']): boolean =>
  sayings.some(({ meaning }) => meaning.kind === kind);
