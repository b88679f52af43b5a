import { get, set } from 'idb-keyval';
import * as v from 'valibot';

const Settings = v.object({
  /** The speech model chosen last; this browser keeps it. */
  model: v.optional(v.object({ name: v.string(), sha256: v.string(), from: v.picklist(['served', 'disk']) })),
  mechanic: v.optional(v.string(), ''),
  second: v.optional(v.string(), ''),
  voice: v.optional(v.picklist(['embedded', 'system']), 'embedded'),
  /** How fast the voice speaks. */
  speed: v.optional(v.picklist(['slower', 'normal', 'faster']), 'normal'),
  /** Whether short signals sound. */
  tones: v.optional(v.boolean(), true),
  /** Whether practice was begun, or put off, on this device. */
  practised: v.optional(v.boolean(), false),
});

/** What this browser remembers between visits. Nothing of a job: that is in the record. */
export type Settings = v.InferOutput<typeof Settings>;

const KEY = 'settings';

/** The kept settings; the defaults where there are none or they cannot be read. */
export async function loadSettings(): Promise<Settings> {
  const kept = v.safeParse(Settings, await get<unknown>(KEY).catch(() => undefined));
  return kept.success ? kept.output : v.parse(Settings, {});
}

/** Keeps settings. A browser that will not keep them is no reason to stop work. */
export async function saveSettings(settings: Settings): Promise<void> {
  await set(KEY, settings).catch(() => undefined);
}
