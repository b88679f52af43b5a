import type { EventBody } from './event.ts';
import { fold } from './fold.ts';
import type { Instant } from './intent.ts';
import type { SessionState } from './state.ts';

/** The state as it would be after events that are not in the record, and may never be. */
export const ahead = (state: SessionState, events: readonly EventBody[], at: Instant): SessionState =>
  events.reduce<SessionState>(
    (each, body, i) =>
      fold(each, { seq: NO_ENTRY + i, at, source: 'program', person: state.people.mechanic, heard: null, body }),
    state,
  );

/** Numbers that no entry has yet. */
const NO_ENTRY = Number.MAX_SAFE_INTEGER - 1000;
