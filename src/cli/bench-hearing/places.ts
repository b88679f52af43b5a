/** Moments at which recordings are heard. */
import { stateIn, type SituationName } from '../../language/named-situations.ts';
import { situationOf, type ReadingRoom, type Situation } from '../../language/situation.ts';
import { torque } from '../../units/index.ts';

export type Place =
  /** Each phrase is an answer to a check, and a whole utterance. */
  | { readonly kind: 'answers'; readonly phrases: readonly string[] }
  /** A tool that shows three figures, up to 999 in steps of 1, and one fastener: a reading of three digits is whole. */
  | { readonly kind: 'three figures' }
  | { readonly kind: 'situation'; readonly name: SituationName };

export function situationFor(place: Place): Situation {
  switch (place.kind) {
    case 'situation':
      return situationOf(stateIn(place.name));
    case 'answers':
      return {
        ...situationOf(stateIn('closed')),
        sayings: place.phrases.map((words) => ({ words, meaning: { kind: 'answer', outcome: words } })),
      };
    case 'three figures': {
      const situation = situationOf(stateIn('inches'));
      return { ...situation, reading: wide(situation.reading), correction: wide(situation.correction) };
    }
  }
}

const wide = (room: ReadingRoom | null): ReadingRoom | null =>
  room && {
    ...room,
    fasteners: new Set([room.called]),
    scale: { min: torque(0, room.unit), max: torque(999, room.unit) },
  };
