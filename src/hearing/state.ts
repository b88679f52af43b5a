import type { HearingFailure } from './failures.ts';
import type { HearingState, ModelSource, MuteReason } from './types.ts';

export interface Progress {
  readonly received: number;
  readonly total: number | null;
  readonly isWaiting?: boolean;
}

/** Before the first byte of a model has come. How large a kept one is, nobody asks. */
export function begun(source: ModelSource): Progress {
  switch (source.kind) {
    case 'served':
      return { received: 0, total: source.bytes };
    case 'file':
      return { received: 0, total: source.file.size };
    case 'kept':
      return { received: 0, total: null };
  }
}

interface Parts {
  /** Of a model that is being loaded. */
  readonly progress: Progress | null;
  readonly failure: HearingFailure | null;
  /** Whether there are both a model and a microphone. */
  readonly isReady: boolean;
  readonly muted: MuteReason | null;
  readonly partial: string;
}

/** What a person is told of the ear: of all that holds, the first that keeps it from hearing. */
export function stateOf({ progress, failure, isReady, muted, partial }: Parts): HearingState {
  if (progress) return { kind: 'loading', ...progress };
  if (failure) return { kind: 'failed', failure };
  if (!isReady) return { kind: 'off' };
  if (muted) return { kind: 'muted', why: muted };
  return partial ? { kind: 'hearing', partial } : { kind: 'listening' };
}
