import type { SavedMark } from '../storage/saved-marks.ts';
import { keptHere } from '../words/kept-here.ts';

/** What of a session was not saved; null where all of it was. */
export function unsavedText(entries: number, saved: SavedMark): string | null {
  const unsaved = entries - saved.entries;
  if (unsaved === entries) return keptHere.neverSaved;
  const newer = unsaved > 0 ? [keptHere.notAllSaved(unsaved)] : [];
  return [...newer, ...(saved.lacksSounds ? [keptHere.soundsNotInFile] : [])].join(' ') || null;
}
