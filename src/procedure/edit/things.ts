/** New members for the lists of a draft, each with an id that nothing else in its list has. */
import { type Draft, emptyDraft, insert, type JsonFields, listAt, type Path, put, take, wordsAt } from './draft.ts';
import { layoutOfShape, orderOfKind, passOfKind, type StepKind, stepOfKind } from './variants.ts';

const LONGEST_ID = 60;

/** Words as an id: small letters, digits and hyphens, starting with a letter. */
export function idFrom(words: string, otherwise: string): string {
  const plain = words
    .normalize('NFD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+/, '')
    .slice(0, LONGEST_ID)
    .replace(/-+$/, '');
  return plain === '' ? otherwise : plain;
}

/** An id that no member of the list has: the stem, or the stem with the first number that is free. */
export function freshId(draft: Draft, list: Path, stem: string): string {
  const taken = new Set(listAt(draft, list).map((item) => wordsAt(item, ['id'])));
  if (!taken.has(stem)) return stem;
  let number = 2;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}

/** A title, and with it the id of the procedure as long as nobody gave it one of their own. */
export function retitle(draft: Draft, title: string): Draft {
  const before = idFrom(wordsAt(draft, ['title']), 'procedure');
  const id = wordsAt(draft, ['id']);
  const titled = put(draft, ['title'], title);
  return id === '' || id === before ? put(titled, ['id'], idFrom(title, 'procedure')) : titled;
}

/** A draft to begin with: one pattern, one wrench, and the step that tightens the one with the other. */
export function startingDraft(): Draft {
  return addStep(addTool(addPattern({ ...emptyDraft(), id: 'procedure' })), 'tighten');
}

const add = (draft: Draft, list: string, stem: string, item: JsonFields): Draft =>
  insert(draft, [list], { id: freshId(draft, [list], stem), ...item });

export const addPattern = (draft: Draft): Draft =>
  add(draft, 'patterns', 'pattern', {
    fastener: 'bolt',
    layout: layoutOfShape('ring'),
    order: orderOfKind('crosswise'),
  });
export const addTool = (draft: Draft): Draft => add(draft, 'tools', 'wrench', {});
export const addOpening = (draft: Draft): Draft => add(draft, 'openings', 'opening', { closure: 'cap' });
export const addSeal = (draft: Draft): Draft => add(draft, 'seals', 'seal', { reuse: 'never' });
export const addCondition = (draft: Draft): Draft => add(draft, 'conditions', 'condition', {});
export const addAdapter = (draft: Draft): Draft =>
  add(draft, 'adapters', 'adapter', { angle: { value: '0', unit: '°' } });
export const addConsumable = (draft: Draft): Draft => add(draft, 'consumables', 'consumable', {});

/** A new step of a kind; before the one at `index`, or at the end. */
export function addStep(draft: Draft, kind: StepKind, index?: number): Draft {
  const step = { id: freshId(draft, ['steps'], kind), ...stepOfKind(kind, undefined, draft) };
  return insert(draft, ['steps'], step, index);
}

export const addPass = (draft: Draft, step: number): Draft =>
  insert(draft, ['steps', step, 'passes'], passOfKind('percent'));

export const addHazard = (draft: Draft, step: number): Draft =>
  insert(draft, ['steps', step, 'hazards'], { signal: 'warning', consequence: 'person' });

export const addOutcome = (draft: Draft, step: number): Draft =>
  insert(draft, ['steps', step, 'outcomes'], {
    id: freshId(draft, ['steps', step, 'outcomes'], 'other'),
    then: 'stay',
  });

/** Puts an id into a list of ids, or takes it out; a list that becomes empty goes. */
export function toggled(draft: Draft, list: Path, id: string, isIn: boolean): Draft {
  const others = listAt(draft, list).filter((each) => each !== id);
  const changed = isIn ? [...others, id] : others;
  return changed.length === 0 ? take(draft, list) : put(draft, list, changed);
}
