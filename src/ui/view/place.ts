/** Where in the work a reading or a deviation is, as the screen and the record name it. */
import { labelOf } from '../../language/say.ts';
import { RUNNING_ROUND } from '../../session/calls.ts';
import type { Reading, SessionState } from '../../session/state.ts';
import { place } from '../../words/place.ts';

type Place = Pick<Reading, 'step' | 'pass' | 'fastener'>;

/** A fastener and its pass, as lines take them; no pass in the round of running torques. */
export const placed = (
  state: SessionState,
  { step, pass, fastener }: Place,
): readonly [label: string, number: string, pass: string | null] => [
  labelOf(state, step),
  String(fastener),
  pass === RUNNING_ROUND ? null : String(pass),
];

/** "stud 4, pass 1". */
export const placeOf = (state: SessionState, at: Place): string => place.inPass(...placed(state, at));
