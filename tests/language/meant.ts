/** What utterances and typed lines mean at a moment of a session. */
import { situationOf } from '../../src/language/situation.ts';
import { typedWords } from '../../src/language/typed.ts';
import { understand, type HeardWord } from '../../src/language/understand.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { procedureOf, start, tighten, type Play } from '../session/play.ts';

export const heard = (text: string, confidence = 1): readonly HeardWord[] =>
  text.split(' ').map((word) => ({ word, confidence }));
/** What an utterance means at a moment, with the doubts about it; null where it means nothing there. */
export const understood = (play: Play, text: string, confidence?: number): Meaning | null => {
  const understanding = understand(heard(text, confidence), situationOf(play.state));
  return understanding.kind === 'meant' ? understanding.meaning : null;
};
/** What an utterance means at a moment, whatever may be asked about it. */
export const meant = (play: Play, text: string, confidence?: number): Meaning | null => {
  const meaning = understood(play, text, confidence);
  return meaning?.kind === 'reading' || meaning?.kind === 'correction'
    ? { kind: meaning.kind, reading: meaning.reading }
    : meaning;
};
export const typed = (play: Play, line: string): Meaning | null => meant(play, typedWords(line).join(' '));
export const several = (...readings: readonly [number | null, string][]): Meaning => ({
  kind: 'unclear',
  doubt: 'several readings',
  readings: readings.map(([fastener, value]) => ({ fastener, value })),
});
export const otherUnit: Meaning = { kind: 'unclear', doubt: 'other unit', readings: [] };

export const ringOf = (count: number) => ({
  id: 'ring',
  name: 'Ring',
  fastener: 'stud',
  layout: { shape: 'ring', count },
  order: { kind: 'circular' },
});
/** A ring of studs, on a wrench from 5 to 60 N·m. */
export const ring = (more: object = {}, procedure: object = {}): Play =>
  start(procedureOf([tighten('ring', { pattern: 'ring', ...more })], { patterns: [ringOf(10)], ...procedure }));
export const outcomes = [
  { id: 'reuse', text: 'Reuse it.', then: 'go on' },
  { id: 'replace', say: ['replace', 'fit a new one'], text: 'Replace it.', then: 'go on' },
  { id: 'negative', text: 'Look again.', then: 'stay' },
];
