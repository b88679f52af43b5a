import type { Heard, Source } from '../session/intent.ts';

/** How the words of an entry came in. What was entered was counted or chosen, by switches, touches or gestures. */
export type CameIn = 'heard' | 'typed' | 'entered' | 'seen';

export function cameIn(source: Source, { spoken }: Heard): CameIn {
  if (source === 'voice') return 'heard';
  if (source === 'key') return 'typed';
  // A gesture that stands for a word has its own time; figures that gestures counted have none.
  return source === 'gesture' && spoken ? 'seen' : 'entered';
}

/** Whether it was measured how surely words came in: what is typed, tapped or stepped is there or not. */
export const isMeasured = (source: Source): boolean => source === 'voice' || source === 'gesture';
