import type { Touched } from '../gesture/touch.ts';
import { touch } from '../words/touch.ts';
import { LEAST_SURE } from './touch-signal.ts';

/** What a touch was recognised as, and how surely. */
export function touchedWords(touched: Touched | null): string {
  if (touched === null) return touch.nothingYet;
  if (touched.kind === 'rejected') return touch.rejected[touched.why];
  const percentSure = Math.round(touched.sureness * 100);
  return touched.sureness < LEAST_SURE
    ? touch.unsure(touched.kind, percentSure)
    : touch.taken(touched.kind, percentSure);
}
