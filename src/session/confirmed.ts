/** What the confirmation of a reading changes. Deciding looks ahead with it; the fold goes on with it. */
import { correctedBy, mark } from './reading.ts';
import type { Reading, SessionState } from './state.ts';

/** The state once a reading is confirmed: those that it corrects give way. */
export function confirmed(state: SessionState, seq: number): SessionState {
  const readings = mark(state.readings, seq, () => 'confirmed');
  const after = {
    ...state,
    readings: correctedBy(state.readings, seq).reduce((all, old) => mark(all, old, () => 'replaced'), readings),
  };
  const reading = readings.findLast((each) => each.seq === seq);
  return reading?.basis.of === 'running torque' && reading.verdict !== 'in' ? offItsSeat(after, reading) : after;
}

/** A nut that is replaced, or measured anew, comes off its seat: what was done to it by hand is done again. */
export function offItsSeat(state: SessionState, { step, fastener }: Pick<Reading, 'step' | 'fastener'>): SessionState {
  const isOfNut = (key: string): boolean => key.startsWith(`${step}/`) && key.endsWith(`/${fastener}`);
  return { ...state, doneFasteners: new Set([...state.doneFasteners].filter((key) => !isOfNut(key))) };
}
