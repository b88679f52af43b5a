/**
 * The closed loop of one step, as the standards have it and told plainly. It shares nothing with the program: the program is
 * held against it, word by word.
 * DOE-STD-1031-92, 4.1.2.3 to 4.1.2.5: what was said is repeated, who said it confirms or corrects, nothing counts before
 * that, and a missing confirmation is no consent. CAPTURED → ECHOED → (COMMITTED | corrected → ECHOED | time-out → ECHOED).
 * 14 CFR 121.371: nobody inspects own work. Radiotelephony words as in ICAO Doc 9432.
 */
import { settingOf, torqueOf, windowOf, type Call, type Rules } from './rules.ts';
import type { Kind, Said, Word } from './words.ts';

export interface Taken {
  readonly call: Call;
  /** Exactly as it was understood. */
  readonly text: string;
  readonly fate: 'waiting' | 'committed' | 'rejected' | 'disregarded' | 'replaced' | 'disputed';
  readonly isInside: boolean;
  readonly isDoubted: boolean;
  /** No word confirms it: no scale of the tool shows it, or it may be another that sounds like it. */
  readonly isAskedFor: boolean;
  /** Which of those taken it stands in for. */
  readonly insteadOf: number | null;
  readonly witness: string | null;
}

export interface Model {
  readonly rules: Rules;
  readonly place: 'before' | 'at it' | 'after' | 'closed';
  readonly isStandingBy: boolean;
  /** Nobody has worked for long; and, once work is come back to, whether all is as it was left is still to be said. */
  readonly isLate: boolean;
  readonly isBroken: boolean;
  /** Nothing is ever taken out. */
  readonly taken: readonly Taken[];
}

type Rows = { readonly [K in Kind]?: (model: Model, said: Said<K>) => Model };

/** CAPTURED: kept from everybody until the witness has read. ECHOED: read back, and waits for its word. */
export type Stage = 'free' | 'captured' | 'echoed';

/** What each word does in each stage. Whatever is not here changes nothing. */
export const TABLE: { readonly [S in Stage]: Rows } = {
  free: {
    value: (model, said) => take(model, said),
    click: (model, said) => take(model, said),
    correction: (model, said) => correct(model, said),
    disregard: (model) => drop(model),
    next: (model) => (model.place === 'at it' ? model : { ...model, place: AFTER_NEXT[model.place] }),
    back: (model) => (model.place === 'at it' && newestCommitted(model) < 0 ? { ...model, place: 'before' } : model),
  },
  captured: {
    witness: (model, said) => compare(model, said),
    correction: (model, said) => sayAnew(model, said),
    negative: (model) => given(model, waiting(model), 'rejected'),
    disregard: (model) => given(model, waiting(model), 'disregarded'),
  },
  echoed: {
    // What cannot have been read is not confirmed, however often it is said; what sounds like another once it is said again.
    affirm: (model) => (pending(model)?.isAskedFor ? model : commit(model)),
    correction: (model, said) => sayAnew(model, said),
    negative: (model) => given(model, waiting(model), 'rejected'),
    disregard: (model) => given(model, waiting(model), 'disregarded'),
    next: (model) => (confirmsByGoingOn(model) ? commit(model) : model),
    click: (model, said) => (confirmsByGoingOn(model) ? goOnWith(model, said) : model),
    value: (model, said) =>
      confirmsByGoingOn(model) && said.stud !== pending(model)?.call.stud
        ? goOnWith(model, said)
        : sayAnew(model, said),
  },
};
const AFTER_NEXT = { before: 'at it', after: 'closed', closed: 'closed' } as const;

/** The loop after one more word. */
export function hear(model: Model, said: Word): Model {
  if (model.place === 'closed') return model;
  if (said.word === 'long pause') return { ...model, isLate: true };
  if (said.word === 'reload') return cameBack(model);
  const after = worked(model, said);
  return after === model ? model : { ...after, isLate: false };
}

const cameBack = (model: Model): Model => ({ ...model, isBroken: model.isBroken || model.isLate });
function worked(model: Model, said: Word): Model {
  if (model.isStandingBy) return said.word === 'continue' ? cameBack({ ...model, isStandingBy: false }) : model;
  if (said.word === 'stand by') return { ...model, isStandingBy: true };
  // What is said now answers this question, and no other.
  if (model.isBroken && said.word === 'affirm') return { ...model, isBroken: false };
  if (model.isBroken) return said.word === 'negative' ? { ...model, isStandingBy: true } : model;
  const row = TABLE[stageOf(model)][said.word] as ((model: Model, said: Word) => Model) | undefined;
  return row ? row(model, said) : model;
}

/** What must be read back after a word, and nothing else: whatever was newly taken or witnessed, and what is asked again. */
export function echoAfter(before: Model, said: Word, after: Model): Taken | null {
  const isNew = pending(after) !== pending(before) || before.isStandingBy || before.isBroken;
  const isAskedAgain = said.word === 'silence' || said.word === 'say again' || said.word === 'reload';
  const isOpen = stageOf(after) === 'echoed' && !isKept(after) && !after.isStandingBy && !after.isBroken;
  return isOpen && (isNew || isAskedAgain) ? pending(after) : null;
}

/** Both have read, and both read again: nothing may tell what. */
export const isKept = (model: Model): boolean =>
  model.rules.confirm === 'witness each' && Boolean(pending(model)?.isAskedFor);

const waiting = (model: Model): number => model.taken.findIndex(({ fate }) => fate === 'waiting');
const newestCommitted = (model: Model): number => model.taken.findLastIndex(({ fate }) => fate === 'committed');
export const pending = (model: Model): Taken | null => model.taken[waiting(model)] ?? null;

export function stageOf(model: Model): Stage {
  const taken = pending(model);
  if (taken === null) return 'free';
  return model.rules.confirm === 'witness each' && taken.witness === null ? 'captured' : 'echoed';
}

/** The value that counts of a call: the newest that was committed. It settles the call where it is inside its window. */
const standing = (model: Model, call: Call): Taken | undefined =>
  model.taken.findLast((taken) => taken.call === call && taken.fate === 'committed');

/** The stud that is called: the first that is not settled. */
export const calledIn = (model: Model): Call | null =>
  model.place === 'at it' ? (model.rules.calls.find((call) => !standing(model, call)?.isInside) ?? null) : null;

/** The call that a value without a stud is of. */
export function callOfValue(model: Model): Call | null {
  const after = confirmsByGoingOn(model) ? commit(model) : model;
  return pending(after)?.call ?? calledIn(after);
}

/** The drag of a nut, where a measured one counts. */
function dragOf({ taken }: Model, { stud, round }: Call): number {
  const drag = taken.findLast(({ call, fate }) => call.stud === stud && call.round === 0 && fate === 'committed');
  return round > 0 && drag?.isInside ? torqueOf(drag.text) : 0;
}
export const settingIn = (model: Model, call: Call): string | null => settingOf(model.rules, call, dragOf(model, call));

function take(model: Model, said: Said<'value'> | Said<'click'>): Model {
  const call = calledIn(model);
  if (!call || (said.stud !== null && said.stud !== call.stud)) return model;
  if (model.rules.confirm === 'witness each' && !model.rules.hasWitness) return model;
  if (said.word === 'value') return capture(model, call, said, null);
  const setting = model.rules.clicks ? settingIn(model, call) : null;
  return setting === null ? model : capture(model, call, { text: setting, isDoubted: false, isAlike: false }, null);
}

type Unjudged = Pick<Said<'value'>, 'text' | 'isDoubted' | 'isAlike'>;
function capture(model: Model, call: Call, { text, isDoubted, isAlike }: Unjudged, insteadOf: number | null): Model {
  const { least, most } = windowOf(model.rules, call, dragOf(model, call));
  const isInside = torqueOf(text) >= least && torqueOf(text) <= most;
  const [first, last] = call.scale;
  const isOffScale = isDoubted && (torqueOf(text) < first || torqueOf(text) > last);
  const isSaidAgain = insteadOf !== null && model.taken[insteadOf]?.text === text;
  // What two people read blind is read again by both where it is in doubt at all, and neither is told of the first.
  const isUnsettled = isAlike || (isDoubted && model.rules.confirm === 'witness each');
  const isAskedFor = isOffScale || (isUnsettled && !isSaidAgain);
  const older = given(model, waiting(model), 'replaced');
  const taken = { call, text, isDoubted, isAskedFor, isInside, insteadOf, fate: 'waiting', witness: null } as const;
  return { ...model, taken: [...older.taken, taken] };
}

/** The same reading said anew. What was committed stands until its correction is. */
function sayAnew(model: Model, said: Said<'value'> | Said<'correction'>): Model {
  const at = waiting(model);
  const call = pending(model)?.call;
  return call && (said.stud === null || said.stud === call.stud) ? capture(model, call, said, at) : model;
}

/** A reading and those that it stands in for, the newest first. */
const chainFrom = (model: Model, at: number | null): readonly number[] =>
  at === null ? [] : [at, ...chainFrom(model, model.taken[at]?.insteadOf ?? null)];

/** With nothing waiting, a correction is of the newest reading, or of the one it was to stand in for; else it is a new value. */
function correct(model: Model, said: Said<'correction'>): Model {
  if (model.taken.length === 0) return model;
  const at = chainFrom(model, model.taken.length - 1).find((each) => model.taken[each]?.fate === 'committed') ?? null;
  const call = at === null ? undefined : model.taken[at]?.call;
  if (!call) return take(model, { ...said, word: 'value' });
  return said.stud === null || said.stud === call.stud ? capture(model, call, said, at) : model;
}

/** With nothing waiting, the newest that counts is dropped; not where one that does not count was said after it. */
function drop(model: Model): Model {
  const newest = model.taken.at(-1)?.fate;
  const isGone = newest === 'rejected' || newest === 'disputed';
  return model.place === 'at it' && !isGone ? given(model, newestCommitted(model), 'disregarded') : model;
}

/** The second person reads the same to one mark of the tool, on the same side of each limit, or neither value counts. */
function compare(model: Model, { stud, text }: Said<'witness'>): Model {
  const first = pending(model);
  if (!first || (stud !== null && stud !== first.call.stud)) return model;
  const { least, most } = windowOf(model.rules, first.call, dragOf(model, first.call));
  const isInside = torqueOf(text) >= least && torqueOf(text) <= most;
  const agrees = Math.abs(torqueOf(text) - torqueOf(first.text)) <= first.call.mark && isInside === first.isInside;
  const taken = model.taken.with(waiting(model), { ...first, witness: text, fate: agrees ? 'waiting' : 'disputed' });
  return { ...model, taken };
}

/** A value outside its window or in doubt always wants its own word, and so does one of a step that was left. */
const confirmsByGoingOn = ({ rules, place, taken }: Model): boolean =>
  rules.confirm === 'by going on' &&
  place === 'at it' &&
  taken.some(({ fate, isInside, isDoubted }) => fate === 'waiting' && isInside && !isDoubted);

/** Both happen, or neither. */
function goOnWith(model: Model, said: Said<'value'> | Said<'click'>): Model {
  const committed = commit(model);
  const after = take(committed, said);
  return after === committed ? model : after;
}

function commit(model: Model): Model {
  const [at = -1, ...older] = chainFrom(model, waiting(model));
  const without = older.reduce((each, old) => given(each, old, 'replaced'), model);
  const after: Model = { ...given(without, at, 'committed'), place: 'at it' };
  return calledIn(after) === null ? { ...after, place: 'after' } : after;
}

function given(model: Model, at: number, fate: Taken['fate']): Model {
  const taken = model.taken[at];
  return taken === undefined ? model : { ...model, taken: model.taken.with(at, { ...taken, fate }) };
}
