/** Places in a procedure that is being written: 'step 4 "Tighten the ring", pass 1, target'. */
import { said } from './said.ts';

export const draftPlaces = said('draftPlaces', {
  whole: 'the procedure',
  /** A member of a list of the file, counted from 1, with its name in quotes. */
  member: (list: string, number: number, quotedName: string | null) =>
    `${ONE_OF.get(list) ?? list} ${number}${quotedName === null ? '' : ` ${quotedName}`}`,
  /** A field of the file: "dryMass" is "dry mass". */
  field: (name: string) => FIELDS.get(name) ?? name.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`),
});

const ONE_OF: ReadonlyMap<string, string> = new Map([
  ['passes', 'pass'],
  ['patterns', 'pattern'],
  ['steps', 'step'],
  ['tools', 'tool'],
  ['adapters', 'adapter'],
  ['seals', 'seal'],
  ['consumables', 'consumable'],
  ['openings', 'opening'],
  ['conditions', 'condition'],
  ['hazards', 'hazard'],
  ['notes', 'note'],
  ['outcomes', 'outcome'],
  ['places', 'place'],
  ['numbers', 'number'],
  ['stages', 'stage'],
  ['parts', 'part'],
  ['criteria', 'criterion'],
]);

/** Fields whose names in the file do not tell a person enough. */
const FIELDS: ReadonlyMap<string, string> = new Map([
  ['say', 'spoken text'],
  ['text', 'text'],
  ['then', 'what follows'],
  ['is', 'answer'],
  ['of', 'reversed order'],
]);
