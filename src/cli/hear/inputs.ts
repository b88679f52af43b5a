/** From the names on the command line to recordings, and what cannot be used among them. */
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { readManifest } from './manifest.ts';
import { NotUsable, openingTrouble } from './refusal.ts';

/** What a manifest says of a recording. */
export interface Listed {
  readonly transcript: string;
  readonly kind: string | null;
}

export interface Input {
  /** Where it lies, as shown and as opened. */
  readonly file: string;
  readonly listed: Listed | null;
}

/** A name that gives no recording, and why. */
export interface Refused {
  readonly file: string;
  readonly trouble: string;
}

const MANIFEST = 'manifest.tsv';
/** No list of recordings is larger; something else is. */
const LARGEST_MANIFEST = 16 * 2 ** 20;

const isWav = (name: string): boolean => /\.wave?$/i.test(name);

/** The recordings that a file, a folder or a manifest stands for. Never throws: what cannot be used is told. */
export async function inputsOf(name: string): Promise<readonly (Input | Refused)[]> {
  try {
    const found = await stat(name);
    if (found.isDirectory()) return await inFolder(name);
    return /\.tsv$/i.test(name) ? await inManifest(name) : [{ file: name, listed: null }];
  } catch (error) {
    return [{ file: name, trouble: error instanceof NotUsable ? error.message : openingTrouble(error) }];
  }
}

async function inFolder(folder: string): Promise<readonly (Input | Refused)[]> {
  const names = (await readdir(folder)).sort();
  if (names.includes(MANIFEST)) return inputsOf(path.join(folder, MANIFEST));
  const files = names.filter(isWav).map((name) => ({ file: path.join(folder, name), listed: null }));
  if (files.length === 0)
    throw new NotUsable(`there is no WAV file in this folder, and no ${MANIFEST}; name a folder that has some`);
  return files;
}

async function inManifest(manifest: string): Promise<readonly (Input | Refused)[]> {
  if ((await stat(manifest)).size > LARGEST_MANIFEST)
    throw new NotUsable(`it is larger than ${LARGEST_MANIFEST / 2 ** 20} MB, so it is no manifest; name another`);
  const { rows, faults } = readManifest(await readFile(manifest));
  const inputs = await Promise.all(
    rows.map(async ({ line, file, transcript, kind }): Promise<Input | Refused> => {
      const place =
        path.resolve(path.dirname(manifest), file) === file ? file : path.join(path.dirname(manifest), file);
      const trouble = await stat(place).then(() => null, openingTrouble);
      return trouble === null
        ? { file: place, listed: { transcript, kind } }
        : { file: manifest, trouble: `line ${line}: ${file}: ${trouble}` };
    }),
  );
  return [...faults.map((trouble) => ({ file: manifest, trouble })), ...inputs];
}
