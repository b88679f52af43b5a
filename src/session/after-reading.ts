/** What becomes of readings as the record goes on. */
import { withToolUsed } from './account.ts';
import { confirmed, offItsSeat } from './confirmed.ts';
import type { EventBody, SessionEvent } from './event.ts';
import { mark } from './reading.ts';
import type { SessionState } from './state.ts';

type ReadingEvent = Extract<
  EventBody,
  {
    kind:
      | ('reading captured' | 'witnessed' | 'disputed')
      | ('reading confirmed' | 'reading rejected' | 'reading disregarded');
  }
>;

/** The state after a reading was captured, witnessed or decided about. */
export function afterReading(state: SessionState, body: ReadingEvent, { seq, at, person }: SessionEvent): SessionState {
  const { readings } = state;
  switch (body.kind) {
    case 'reading captured':
      return {
        ...withToolUsed(state, body.basis.tool),
        silences: 0,
        // What is looked at by the second person may no longer be what they are asked about.
        witnessAsked: null,
        // A reading still waiting for its confirmation gives way at once; a confirmed one stands until its correction is confirmed.
        readings: [
          ...mark(readings, body.corrects, (old) => (old.status === 'captured' ? 'replaced' : old.status)),
          { ...body, seq, at, person, status: 'captured' },
        ],
      };
    case 'witnessed': {
      const witnessed = { person: body.person, reading: body.reading };
      return { ...state, readings: readings.map((each) => (each.seq === body.of ? { ...each, witnessed } : each)) };
    }
    case 'disputed':
      return { ...state, readings: mark(readings, body.of, () => 'disputed') };
    case 'reading confirmed':
      return confirmed(state, body.of);
    case 'reading rejected':
      return { ...state, readings: mark(readings, body.of, () => 'rejected') };
    case 'reading disregarded': {
      const without = { ...state, witnessAsked: null, readings: mark(readings, body.of, () => 'disregarded') };
      const dropped = readings.find((each) => each.seq === body.of);
      return dropped?.status === 'confirmed' && dropped.basis.of === 'running torque'
        ? offItsSeat(without, dropped)
        : without;
    }
  }
}
