import { get, update } from 'idb-keyval';
import * as v from 'valibot';
import { isSamePerson } from '../session/people.ts';

const Decibels = v.pipe(v.number(), v.finite());

const Trial = v.strictObject({
  /** What the person was asked to say, and what was heard; '' where nothing was. */
  asked: v.string(),
  heard: v.string(),
  /** The least of its words, 0 to 1. */
  confidence: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  isRight: v.boolean(),
});

const Voice = v.strictObject({
  name: v.pipe(v.string(), v.nonEmpty()),
  /** UTC. */
  checkedAt: v.pipe(v.string(), v.isoTimestamp()),
  /** dBFS; null where it could not be measured. */
  noise: v.nullable(Decibels),
  speech: v.nullable(Decibels),
  isClipped: v.boolean(),
  trials: v.array(Trial),
});

/** How one person was heard at their last microphone check: figures and words, no sound. It stays on this device. */
export type Voice = v.InferOutput<typeof Voice>;

const KEY = 'voices';

/** The voices kept here, by name. What cannot be read is left out: that person is checked anew. */
export async function loadVoices(): Promise<readonly Voice[]> {
  return readable(await get<unknown>(KEY).catch(() => undefined));
}

/** Keeps a voice in place of the same person's last one. @returns all that are kept, and this one where the browser will not keep it */
export async function keepVoice(voice: Voice): Promise<readonly Voice[]> {
  return change((voices) => [...without(voices, voice.name), voice]);
}

/** Deletes what is kept of a person's voice. @throws where it cannot be deleted: nobody must believe that it was */
export async function forgetVoice(name: string): Promise<readonly Voice[]> {
  let left: readonly Voice[] = [];
  await update<unknown>(KEY, (kept) => (left = without(readable(kept), name)));
  return left;
}

async function change(to: (voices: readonly Voice[]) => readonly Voice[]): Promise<readonly Voice[]> {
  let changed = byName(to([]));
  await update<unknown>(KEY, (kept) => (changed = byName(to(readable(kept))))).catch(() => undefined);
  return changed;
}

export const voiceOf = (voices: readonly Voice[], name: string): Voice | null =>
  voices.find((voice) => isSamePerson(voice.name, name)) ?? null;

const without = (voices: readonly Voice[], name: string): readonly Voice[] =>
  voices.filter((voice) => !isSamePerson(voice.name, name));

const byName = (voices: readonly Voice[]): readonly Voice[] =>
  voices.toSorted((one, other) => one.name.localeCompare(other.name));

const readable = (kept: unknown): readonly Voice[] =>
  Array.isArray(kept) ? kept.flatMap((each) => (v.is(Voice, each) ? [each] : [])) : [];
