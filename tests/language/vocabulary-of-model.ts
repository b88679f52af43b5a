import { readFileSync } from 'node:fs';
import { gunzipSync } from 'fflate';

/** The words of the model that the project ships: the first column of graph/words.txt in its tar archive. */
export function vocabularyOfModel(): ReadonlySet<string> {
  const tar = gunzipSync(readFileSync(new URL('../../models/bothhands-en-small.tar.gz', import.meta.url)));
  const text = (from: number, length: number): string => new TextDecoder().decode(tar.subarray(from, from + length));
  for (let at = 0; at + 512 <= tar.length;) {
    const name = text(at, 100).replace(/\0.*$/s, '');
    const size = parseInt(text(at + 124, 12), 8) || 0;
    if (name.endsWith('graph/words.txt')) {
      const lines = text(at + 512, size).split('\n');
      return new Set(lines.map((line) => line.split(' ')[0] ?? ''));
    }
    at += 512 + Math.ceil(size / 512) * 512;
  }
  throw new Error('The model has no graph/words.txt.');
}
