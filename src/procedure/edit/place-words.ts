/** Places in a draft, in words: `steps.3.passes.0.target` is 'step 4 "Tighten the ring", pass 1, target'. */
import { quoted } from '../fault.ts';
import { draftPlaces } from '../../words/draft-places.ts';
import { at, type Json, type Path } from './draft.ts';

/** A place in words, with the names that the things on the way to it have. */
export function placeWords(json: Json, path: Path): string {
  const words: string[] = [];
  for (const [i, key] of path.entries()) {
    const next = path[i + 1];
    if (typeof key === 'string' && typeof next === 'number') continue;
    const list = path[i - 1];
    words.push(
      typeof key === 'number'
        ? memberWords(String(list ?? ''), key, at(json, path.slice(0, i + 1)))
        : draftPlaces.field(key),
    );
  }
  return words.length === 0 ? draftPlaces.whole : words.join(', ');
}

function memberWords(list: string, index: number, member: Json | undefined): string {
  const name = [at(member, ['title']), at(member, ['name'])].find((each) => typeof each === 'string');
  return draftPlaces.member(list, index + 1, typeof name === 'string' ? quoted(name) : null);
}

/** The path that a fault names: 'steps.3.title'. Names that hold dots are not looked for. */
export const pathOfPlace = (place: string): Path =>
  place === '' ? [] : place.split('.').map((name) => (/^\d+$/.test(name) ? Number(name) : name));
