/** The sealed files under a folder, one after another, however many there are. */
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { EXTENSION } from '../../record/sealed-file.ts';

/** A sealed file, or a place that could not be looked into. `name` is its place under the folder. */
export interface Found {
  readonly name: string;
  /** Null for a file that can be opened. */
  readonly fault: string | null;
}

/**
 * What is found under a folder, each folder in the order of its names. Only the names of the folders on the way down are
 * kept in memory. Links are not followed: they may lead out of the folder, or round in a circle.
 */
export async function* sealedFilesUnder(folder: string): AsyncGenerator<Found> {
  const waiting = [''];
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    const listed = await list(path.join(folder, place));
    if (typeof listed === 'string') {
      yield { name: place === '' ? '.' : place, fault: listed };
      continue;
    }
    const folders: string[] = [];
    for (const each of listed) {
      const name = path.join(place, each.name);
      if (each.isDirectory()) folders.push(name);
      else if (each.isFile()) {
        if (isNamedSealed(name)) yield { name, fault: null };
      } else if (each.isSymbolicLink()) {
        if (isNamedSealed(name) || (await isFolder(path.join(folder, name))))
          yield { name, fault: 'It is a link, and links are not followed.' };
      } else if (isNamedSealed(name)) yield { name, fault: 'It is no file.' };
    }
    waiting.push(...folders.reverse());
  }
}

const isNamedSealed = (name: string): boolean => name.toLowerCase().endsWith(EXTENSION);

async function list(folder: string) {
  try {
    const found = await readdir(folder, { withFileTypes: true });
    return found.sort((one, other) => (one.name < other.name ? -1 : 1));
  } catch (error) {
    return `It cannot be listed (${(error as NodeJS.ErrnoException).code ?? String(error)}).`;
  }
}

/** Whether a link leads to a folder. One that leads nowhere, or back to itself, leads to none. */
async function isFolder(name: string): Promise<boolean> {
  try {
    return (await stat(name)).isDirectory();
  } catch {
    return false;
  }
}
