import type { SavedMark } from '../storage/saved-marks.ts';

/** What of a session was not saved; null where all of it was. */
export function unsavedText(entries: number, saved: SavedMark): string | null {
  const unsaved = entries - saved.entries;
  if (unsaved === entries) return 'On this device only: it was never saved as a sealed file.';
  const newer = `Not all of it was saved: ${unsaved} ${unsaved === 1 ? 'entry is' : 'entries are'} newer than the sealed file.`;
  const sounds = 'Its sounds were too large for the sealed file: they are not in it.';
  return [...(unsaved > 0 ? [newer] : []), ...(saved.lacksSounds ? [sounds] : [])].join(' ') || null;
}
