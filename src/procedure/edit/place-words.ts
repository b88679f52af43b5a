/** Places in a draft, in words: `steps.3.passes.0.target` is 'step 4 "Tighten the ring", pass 1, target'. */
import { quoted } from '../fault.ts';
import { at, type Json, type Path } from './draft.ts';

const ONE_OF: Readonly<Partial<Record<string, string>>> = {
  passes: 'pass',
  patterns: 'pattern',
  steps: 'step',
  tools: 'tool',
  adapters: 'adapter',
  seals: 'seal',
  consumables: 'consumable',
  openings: 'opening',
  conditions: 'condition',
  hazards: 'hazard',
  notes: 'note',
  outcomes: 'outcome',
  places: 'place',
  numbers: 'number',
  stages: 'stage',
  parts: 'part',
  criteria: 'criterion',
};

const SPOKEN: Readonly<Partial<Record<string, string>>> = {
  say: 'spoken text',
  text: 'text',
  then: 'what follows',
  is: 'answer',
  of: 'reversed order',
};

/** A field of the file as words: "dryMass" is "dry mass". */
export const fieldWords = (name: string): string =>
  SPOKEN[name] ?? name.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A place in words, with the names that the things on the way to it have. */
export function placeWords(json: Json, path: Path): string {
  const words: string[] = [];
  for (const [i, key] of path.entries()) {
    const next = path[i + 1];
    if (typeof key === 'string' && typeof next === 'number') continue;
    const list = path[i - 1];
    words.push(
      typeof key === 'number' ? memberWords(String(list ?? ''), key, at(json, path.slice(0, i + 1))) : fieldWords(key),
    );
  }
  return words.length === 0 ? 'the procedure' : words.join(', ');
}

function memberWords(list: string, index: number, member: Json | undefined): string {
  const name = [at(member, ['title']), at(member, ['name'])].find((each) => typeof each === 'string');
  return `${ONE_OF[list] ?? list} ${index + 1}${typeof name === 'string' ? ` ${quoted(name)}` : ''}`;
}

/** The path that a fault names: 'steps.3.title'. Names that hold dots are not looked for. */
export const pathOfPlace = (place: string): Path =>
  place === '' ? [] : place.split('.').map((name) => (/^\d+$/.test(name) ? Number(name) : name));
