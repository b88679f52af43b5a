/** What was said beside what was heard, word by word. */

/** One place of an alignment: a word kept, changed, passed over (heard is null) or put in (said is null). */
export type Pair =
  | { readonly said: string; readonly heard: string }
  | { readonly said: string; readonly heard: null }
  | { readonly said: null; readonly heard: string };

/**
 * The alignment with the fewest changes (Levenshtein's distance over words, all changes at one). Of several, the one that
 * changes a word rather than passing one over and putting one in.
 */
export function align(said: readonly string[], heard: readonly string[]): readonly Pair[] {
  const cost = costs(said, heard);
  const at = (i: number, j: number): number => cost[i]?.[j] ?? Infinity;
  const pairs: Pair[] = [];
  let [i, j] = [said.length, heard.length];
  while (i > 0 || j > 0) {
    const [last, other] = [said[i - 1], heard[j - 1]];
    if (last !== undefined && other !== undefined && at(i, j) === at(i - 1, j - 1) + (last === other ? 0 : 1)) {
      pairs.push({ said: last, heard: other });
      [i, j] = [i - 1, j - 1];
    } else if (last !== undefined && at(i, j) === at(i - 1, j) + 1) {
      pairs.push({ said: last, heard: null });
      i -= 1;
    } else {
      pairs.push({ said: null, heard: other ?? '' });
      j -= 1;
    }
  }
  return pairs.reverse();
}

/** How many words differ between two texts: the fewest changes that make one into the other. */
export const distance = (said: readonly string[], heard: readonly string[]): number =>
  align(said, heard).filter((pair) => pair.said !== pair.heard).length;

/** Of the first i words of one and the first j of the other. */
function costs(said: readonly string[], heard: readonly string[]): readonly (readonly number[])[] {
  const table: number[][] = [Array.from({ length: heard.length + 1 }, (_, j) => j)];
  for (const [i, word] of said.entries()) {
    const above = table[i] ?? [];
    const row = [i + 1];
    for (const [j, other] of heard.entries()) {
      row.push(Math.min((above[j] ?? 0) + (word === other ? 0 : 1), (above[j + 1] ?? 0) + 1, (row[j] ?? 0) + 1));
    }
    table.push(row);
  }
  return table;
}
