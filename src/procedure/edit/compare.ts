/** What differs between two versions of a procedure, in words by place. */
import { at, isFields, isList, type Json, type JsonFields, type Path, wordsAt } from './draft.ts';
import { placeWords } from './place-words.ts';
import { quoted } from '../fault.ts';
import { differences } from '../../words/differences.ts';

export interface Difference {
  readonly what: 'added' | 'removed' | 'changed' | 'moved';
  /** In words, named as in the newer version; what was removed as in the older one. */
  readonly place: string;
  /** "added: 25 N·m", "changed from 24.5 N·m to 25 N·m", … */
  readonly words: string;
}

/**
 * All that differs from one version to another, top down. Members of a list that have ids are followed by them, so that a
 * step put in between does not change all after it. Values are compared as they are written: "24.50" is not "24.5".
 */
export function compare(before: JsonFields, after: JsonFields): readonly Difference[] {
  return differencesOf(before, after, { before, after, at: [], was: [] });
}

interface Place {
  readonly before: Json;
  readonly after: Json;
  /** In the newer and in the older version. */
  readonly at: Path;
  readonly was: Path;
}

const inside = (place: Place, at: string | number, was = at): Place => ({
  ...place,
  at: [...place.at, at],
  was: [...place.was, was],
});

function differencesOf(before: Json | undefined, after: Json | undefined, place: Place): readonly Difference[] {
  if (before === undefined) return after === undefined ? [] : [added(after, place)];
  if (after === undefined) return [removed(before, place)];
  if (isFields(before) && isFields(after) && !isQuantity(before) && !isQuantity(after)) {
    const names = [...new Set([...Object.keys(after), ...Object.keys(before)])];
    return names.flatMap((name) => differencesOf(at(before, [name]), at(after, [name]), inside(place, name)));
  }
  if (isList(before) && isList(after) && !isFlat(before) && !isFlat(after)) {
    return haveIds(before) && haveIds(after) ? byId(before, after, place) : byPlace(before, after, place);
  }
  if (same(before, after)) return [];
  const words = differences.changed(valueWords(before), valueWords(after));
  return [{ what: 'changed', place: placeWords(place.after, place.at), words }];
}

const added = (after: Json, place: Place): Difference => ({
  what: 'added',
  place: placeWords(place.after, place.at),
  words: differences.added(contentWords(after)),
});
const removed = (before: Json, place: Place): Difference => ({
  what: 'removed',
  place: placeWords(place.before, place.was),
  words: differences.removed(contentWords(before)),
});

function byPlace(before: readonly Json[], after: readonly Json[], place: Place): readonly Difference[] {
  return Array.from({ length: Math.max(before.length, after.length) }, (_, i) =>
    differencesOf(before[i], after[i], inside(place, i)),
  ).flat();
}

function byId(before: readonly Json[], after: readonly Json[], place: Place): readonly Difference[] {
  const idsBefore = before.map(idOf);
  const idsAfter = after.map(idOf);
  const standing = longestCommon(idsBefore, idsAfter);
  return [
    ...after.flatMap((item, i) => {
      const was = idsBefore.indexOf(idOf(item));
      const here = inside(place, i, was);
      if (was < 0) return [added(item, here)];
      const moved: Difference[] = standing.has(idOf(item))
        ? []
        : [
            {
              what: 'moved',
              place: placeWords(place.after, here.at),
              words: differences.moved(was + 1, i + 1),
            },
          ];
      return [...moved, ...differencesOf(before[was], item, here)];
    }),
    ...before.flatMap((item, i) => (idsAfter.includes(idOf(item)) ? [] : [removed(item, inside(place, i))])),
  ];
}

/** The ids that stand in the same order in both lists: only the others were moved. */
function longestCommon(before: readonly string[], after: readonly string[]): ReadonlySet<string> {
  // For every member of the newer list, the longest run that ends with it.
  const runs: { readonly was: number; readonly length: number; readonly previous: number }[] = [];
  for (const id of after) {
    const was = before.indexOf(id);
    const best = runs.reduce((found, run, i) => {
      const isLonger = run.was >= 0 && run.was < was && run.length > (runs[found]?.length ?? 0);
      return isLonger ? i : found;
    }, -1);
    runs.push({ was, length: was < 0 ? 0 : (runs[best]?.length ?? 0) + 1, previous: best });
  }
  const kept = new Set<string>();
  let last = runs.reduce((found, run, i) => (run.length > (runs[found]?.length ?? 0) ? i : found), -1);
  while (last >= 0) {
    kept.add(after[last] ?? '');
    last = runs[last]?.previous ?? -1;
  }
  return kept;
}

const idOf = (item: Json): string => wordsAt(item, ['id']);
const haveIds = (list: readonly Json[]): boolean => {
  const ids = list.map(idOf);
  return ids.every((id) => id !== '') && new Set(ids).size === ids.length;
};

/** A list of plain values is told as a whole: an order of which one number moved is another order. */
const isFlat = (list: readonly Json[]): boolean => list.length > 0 && list.every((item) => typeof item !== 'object');

const isQuantity = (json: JsonFields): boolean => 'value' in json && 'unit' in json;

function same(a: Json | undefined, b: Json | undefined): boolean {
  if (isList(a)) return isList(b) && a.length === b.length && a.every((item, i) => same(item, b[i]));
  if (!isFields(a)) return a === b;
  if (!isFields(b)) return false;
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => same(at(a, [name]), at(b, [name])));
}

function valueWords(json: Json): string {
  if (isList(json)) return json.length === 0 ? differences.nothing : json.map((item) => bare(item)).join(', ');
  return typeof json === 'string' ? quoted(json) : bare(json);
}

function bare(json: Json): string {
  if (!isFields(json)) return typeof json === 'string' ? json : JSON.stringify(json);
  if (isQuantity(json)) return `${wordsAt(json, ['value'])} ${wordsAt(json, ['unit'])}`;
  const { min, max } = json;
  return min !== undefined && max !== undefined ? differences.range(bare(min), bare(max)) : JSON.stringify(json);
}

/** A thing with a name is told by its place; a plain value by itself. */
const contentWords = (json: Json): string | null =>
  isFields(json) && ('id' in json || 'kind' in json) ? null : valueWords(json);
