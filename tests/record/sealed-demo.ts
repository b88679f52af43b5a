/** A sealed file of a demonstration under way, and ways to pack it anew as somebody would who has this program. */
import { readFileSync } from 'node:fs';
import { strToU8, unzipSync } from 'fflate';
import { packParts, PARTS, type PartName, type Parts } from '../../src/record/container.ts';
import { canonical, type Entry } from '../../src/record/entry.ts';
import { openSessionFile, type SessionFile } from '../../src/record/sealed-file.ts';
import { affirm, demo, next, start, tell } from '../session/play.ts';
import { makeKey } from './keys.ts';
import { packed, recordOf } from './sealed.ts';

const file = new URL('../../demo-data/ropeway-oil-cooler.json', import.meta.url);
export const procedure = JSON.parse(readFileSync(file, 'utf8')) as object;
export const played = tell(start(demo()), affirm, affirm, next, next, affirm, affirm, next);
export const key = await makeKey();
export const { bytes, entries, record, seal } = await packed(await recordOf(procedure, played.events), key);
export const last = entries.length - 1;

export const NOW = '2026-03-02T00:00:00.000Z';
export const open = (found: Uint8Array, now = NOW): Promise<SessionFile> => openSessionFile(found, { now });
export async function verdictOn(found: Uint8Array, now = NOW) {
  const opened = await open(found, now);
  if (opened.kind === 'refused') throw new Error(opened.why);
  return opened.verdict;
}
export const parts: Parts = new Map(
  Object.entries(unzipSync(bytes)).map(([name, content]) => [name as PartName, content]),
);
export const textOf = (name: PartName): string => new TextDecoder().decode(parts.get(name));
/** The file packed anew with some parts changed or left out, as a forger with this program would. */
export const repacked = (changes: Readonly<Partial<Record<PartName, string | null>>>): Uint8Array => {
  const changed = new Map(parts);
  for (const name of PARTS) {
    const text = changes[name];
    if (text === null) changed.delete(name);
    else if (text !== undefined) changed.set(name, strToU8(text));
  }
  return packParts(changed);
};
export const lines = textOf('entries.jsonl').trimEnd().split('\n');
export const withLines = (changed: readonly string[]): Uint8Array =>
  repacked({ 'entries.jsonl': changed.map((line) => `${line}\n`).join('') });
export const withEntries = (changed: readonly Entry[]): Uint8Array =>
  withLines(changed.map((entry) => canonical(entry)));
