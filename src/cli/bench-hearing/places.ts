/** Moments at which recordings are heard. */
import { stateIn, type SituationName } from '../../language/named-situations.ts';
import type { Held, ReadingRoom } from '../../language/reading-room.ts';
import { situationOf, type Situation } from '../../language/situation.ts';
import { torque } from '../../units/index.ts';

export type Place =
  /** Each phrase is an answer to a check, and a whole utterance. */
  | { readonly kind: 'answers'; readonly phrases: readonly string[] }
  /**
   * A tool that shows three figures, up to 999 in steps of 1, all of three figures in the window, and one fastener with a
   * number of three digits: a reading of three digits is whole, and no fastener and reading.
   */
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

const FASTENER = 100;

const wide = (room: ReadingRoom | null): ReadingRoom | null => {
  if (!room) return null;
  const scale = { min: torque(0, room.unit), max: torque(999, room.unit) };
  const held: Held = {
    scale,
    unit: room.unit,
    resolution: torque(1, room.unit),
    window: { min: torque(100, room.unit), max: torque(999, room.unit) },
  };
  return {
    ...room,
    called: FASTENER,
    fasteners: new Set([FASTENER]),
    scale,
    held: new Map([null, FASTENER].map((fastener) => [fastener, held])),
  };
};
