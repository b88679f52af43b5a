/** How the screen of this device is looked at: kept apart from the settings, since every window of the app follows it. */
import { get, set } from 'idb-keyval';
import * as v from 'valibot';

export const THEMES = ['as the device', 'light', 'dark', 'bright sun'] as const;
export type Theme = (typeof THEMES)[number];

const Display = v.object({
  /** From how far away it is read, in metres. */
  distance: v.pipe(v.number(), v.minValue(0.5), v.maxValue(5)),
  /**
   * Pixels of the device to a millimetre, by a ruler; null where none was held to the screen. From a wall of lamps to the
   * finest telephone. Not CSS pixels: those change with the zoom of the browser.
   */
  pixelsPerMm: v.nullable(v.pipe(v.number(), v.minValue(0.2), v.maxValue(50))),
  theme: v.picklist(THEMES),
});
export type DisplayChoice = v.InferOutput<typeof Display>;

const KEY = 'display';

/** What stands until something else is chosen. */
export const DISPLAY_AT_FIRST: DisplayChoice = { distance: 3, pixelsPerMm: null, theme: 'as the device' };

/** The kept choice; the default where there is none or it cannot be read. */
export async function loadDisplay(): Promise<DisplayChoice> {
  const kept = v.safeParse(Display, await get<unknown>(KEY).catch(() => undefined));
  return kept.success ? kept.output : DISPLAY_AT_FIRST;
}

/** Keeps the choice. A browser that will not keep it is no reason to stop work. */
export async function saveDisplay(choice: DisplayChoice): Promise<void> {
  await set(KEY, choice).catch(() => undefined);
}
