/** A preparation under way, kept so that neither a reload nor a look at the microphone loses what was typed. */
import { del, get, set } from 'idb-keyval';
import * as v from 'valibot';
import { HANDLINGS } from '../lifting/index.ts';
import type { Entered } from '../session/preparation/entered.ts';

const texts = v.map(v.string(), v.string());

const EnteredSchema = v.strictObject({
  mechanic: v.string(),
  second: v.string(),
  helpers: v.string(),
  isCurrentData: v.boolean(),
  conditions: v.map(v.string(), v.boolean()),
  calibrations: texts,
  adapters: texts,
  expiries: texts,
  capacity: v.string(),
  handling: v.nullable(v.picklist(HANDLINGS)),
  hazards: v.set(v.string()),
}) satisfies v.GenericSchema<unknown, Entered>;

const Draft = v.strictObject({
  /** The text of the procedure file. */
  text: v.string(),
  file: v.string(),
  sound: v.picklist(['agreed', 'not agreed']),
  day: v.string(),
  entered: EnteredSchema,
});

export interface PreparationDraft {
  readonly text: string;
  readonly file: string;
  /** Whether everybody agreed that the sound around readings is kept. */
  readonly sound: 'agreed' | 'not agreed';
  /** The calendar day ('YYYY-MM-DD') for which people gave their word in it. */
  readonly day: string;
  readonly entered: Entered;
}

const KEY = 'preparation';

/**
 * The draft kept here; null where there is none, or it cannot be read. What was typed stays; the word that the data is
 * current, that hazards are known and that sound may be kept is given for a day, and asked for again on another.
 * @param today UTC, 'YYYY-MM-DD'
 */
export async function loadDraft(today: string): Promise<PreparationDraft | null> {
  const kept = v.safeParse(Draft, await get<unknown>(KEY).catch(() => undefined));
  if (!kept.success) return null;
  const { day, entered } = kept.output;
  if (day === today) return kept.output;
  const askedAgain = { ...entered, isCurrentData: false, hazards: new Set<string>() };
  return { ...kept.output, day: today, sound: 'not agreed', entered: askedAgain };
}

/** A draft after more was entered. Under other names it is asked anew whether sound may be kept: nobody agrees for another. */
export function withEntered(draft: PreparationDraft, part: Partial<Entered>): PreparationDraft {
  const entered = { ...draft.entered, ...part };
  const isAsWas = (['mechanic', 'second', 'helpers'] as const).every((name) => entered[name] === draft.entered[name]);
  return { ...draft, entered, sound: isAsWas ? draft.sound : 'not agreed' };
}

/** Keeps a draft in place of the last, or none. A browser that will not keep it is no reason to stop work. */
export async function keepDraft(draft: PreparationDraft | null): Promise<void> {
  await (draft === null ? del(KEY) : set(KEY, draft)).catch(() => undefined);
}
