import type { Rejection, Touched } from '../gesture/touch.ts';
import { LEAST_SURE } from './touch-signal.ts';

const REJECTIONS: Readonly<Record<Rejection, string>> = {
  palm: 'Too wide: a palm or a forearm. Not taken.',
  resting: 'Rested too long. Not taken.',
  'two at once': 'Two contacts at once. Not taken.',
  'slid too far': 'Slid too far for a press, not far enough for a swipe. Not taken.',
  'taken by the system': 'The system took this touch for itself. Not taken.',
};

/** What a touch was recognised as, and how surely. */
export function touchedWords(touched: Touched | null): string {
  if (touched === null) return '–';
  if (touched.kind === 'rejected') return REJECTIONS[touched.why];
  const sure = `${Math.round(touched.sureness * 100)} % sure`;
  return touched.sureness < LEAST_SURE ? `${touched.kind}? ${sure}: not taken. Once more.` : `${touched.kind}, ${sure}`;
}
