/** A word as the engine times it: seconds of audio since its recogniser was made. */
export interface TimedWord {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  /** 0 … 1 */
  readonly confidence: number;
}

/** What the engine's worker may answer. */
export type Reply =
  | { readonly kind: 'done' }
  | { readonly kind: 'partial'; readonly text: string }
  /** An utterance has ended; with no speech in it the text is empty. */
  | { readonly kind: 'utterance'; readonly text: string; readonly words: readonly TimedWord[] }
  | { readonly kind: 'fault'; readonly detail: string };

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Reads one message of the worker. The published types say more than it keeps, so nothing is taken on trust. */
export function replyOf(message: unknown): Reply {
  // A finished `create` or `remove` of nothing is answered with an empty message.
  if (message === undefined || message === null) return { kind: 'done' };
  if (!isRecord(message)) return strange(message);
  switch (message['event']) {
    case 'load':
      return { kind: 'done' };
    case 'error':
      // Exceptions from C++ arrive without any text.
      return { kind: 'fault', detail: typeof message['error'] === 'string' ? message['error'] : 'no reason given' };
    case 'partialresult':
    case 'result':
      return isRecord(message['result']) ? resultOf(message['result']) : strange(message);
    default:
      return strange(message);
  }
}

function resultOf(result: Record<string, unknown>): Reply {
  if (typeof result['partial'] === 'string') return { kind: 'partial', text: result['partial'] };
  if (typeof result['text'] !== 'string') return strange(result);
  const words = Array.isArray(result['result']) ? result['result'].map(wordOf) : [];
  return words.every((word) => word !== null) ? { kind: 'utterance', text: result['text'], words } : strange(result);
}

function wordOf(value: unknown): TimedWord | null {
  if (!isRecord(value)) return null;
  const { word, start, end, conf } = value;
  if (typeof word !== 'string' || typeof start !== 'number' || typeof end !== 'number') return null;
  // Sums of lattice posteriors exceed 1 by a rounding error.
  return typeof conf === 'number' ? { word, start, end, confidence: Math.min(Math.max(conf, 0), 1) } : null;
}

const strange = (message: unknown): Reply => ({
  kind: 'fault',
  detail: `A message that is not of the engine: ${JSON.stringify(message)?.slice(0, 200)}`,
});
