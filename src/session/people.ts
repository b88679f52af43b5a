/** Who takes part, and how that changes: the mechanic hands over between steps; a second person joins and leaves. */
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody, People } from './event.ts';
import { wellFormed, type Meaning } from './intent.ts';
import { pendingValue } from './observed.ts';
import { openReason } from './reasons.ts';
import { currentStep, isUntouched, pendingReading, type SessionState } from './state.ts';

/** A name as it is kept: one way to write each letter, single spaces, and no more letters than a person has. */
export const tidyName = (name: string): string =>
  [...wellFormed(name).normalize('NFC').trim().replace(/\s+/g, ' ')].slice(0, LONGEST_NAME).join('');
/** In letters: more than any person has, and a bound for what goes into the record. */
export const LONGEST_NAME = 60;

/** How names are told apart: spaces and capitals do not make another person. */
const plain = (name: string): string => tidyName(name).toLowerCase();

/** Whether two names are of one person. */
export const isSamePerson = (one: string, other: string): boolean => plain(one) === plain(other);

/** Who may witness: a second person, and never one who does the work or did some of it. Null where there is none. */
export function witnessIn({ people: { second }, doers }: Pick<SessionState, 'people' | 'doers'>): string | null {
  return second !== null && plain(second) !== '' && !isDoer(doers, second) ? second : null;
}

/** Whether somebody was the mechanic at some time in this session. */
export const isDoer = (doers: readonly string[], name: string): boolean =>
  doers.some((each) => plain(each) === plain(name));

/** Whether somebody had a part in the work: as mechanic, second person or helper. */
export const tookPart = ({ doers, helped }: Pick<SessionState, 'doers' | 'helped'>, name: string): boolean =>
  isDoer([...doers, ...helped], name);

/** Whether somebody signs as inspector of what they had a part in: it is taken, and warned of wherever it is told. */
export const inspectsOwnWork = (
  state: Pick<SessionState, 'doers' | 'helped'>,
  { role, person }: { readonly role: 'mechanic' | 'inspector'; readonly person: string },
): boolean => role === 'inspector' && tookPart(state, person);

/** Whose input it is: the second person's where it is a witness's word, the incoming mechanic's at a handover. */
export function speakerOf(state: SessionState, meaning: Meaning): string {
  const { mechanic } = state.people;
  switch (meaning.kind) {
    case 'witness':
    case 'witness says':
      return witnessIn(state) ?? mechanic;
    case 'take over':
    case 'inspects':
    case 'sign':
      return tidyName(meaning.name) || mechanic;
    case 'dispose':
      return tidyName(meaning.by) || mechanic;
    case 'second person':
      return (meaning.name === null ? state.people.second : tidyName(meaning.name)) || mechanic;
    default:
      return mechanic;
  }
}

/** A second person joins under a name, or leaves. Possible at any time: nobody is kept from going. */
export function joinOrLeave({ people, doers }: SessionState, name: string | null): Decision {
  const leaves = people.second === null ? [] : [left(people.second)];
  if (name === null) return leaves.length > 0 ? accept(...leaves) : refuse({ code: 'no second person' });
  if (plain(name) === '') return refuse({ code: 'no name' });
  if (isDoer(doers, name)) return refuse({ code: 'doer is no witness' });
  return accept(...leaves, { kind: 'second person joined', name: tidyName(name) });
}

const left = (name: string): EventBody => ({ kind: 'second person left', name });

/** Whether a step is not begun: between two steps, nothing of the one that is ahead is in anybody's hands. */
export function isBetweenSteps(state: SessionState): boolean {
  const step = currentStep(state);
  const isAsking =
    state.hold !== null ||
    pendingValue(state) !== null ||
    pendingReading(state) !== null ||
    openReason(state) !== null ||
    state.witnessAsked !== null;
  return !isAsking && (step === null || isUntouched(state, step));
}

/** The mechanic leaves the work to another one. Work stands by until that one has said who they are. */
export function handOver(state: SessionState): Decision {
  return isBetweenSteps(state) ? accept({ kind: 'handover begun' }) : refuse({ code: 'between steps' });
}

/** The one who comes in takes over. Who witnessed until now cannot witness their own work. */
export function takeOver({ people, handingOver }: SessionState, name: string): Decision {
  if (!handingOver) return refuse({ code: 'not handing over' });
  if (plain(name) === '') return refuse({ code: 'no name' });
  if (plain(name) === plain(people.mechanic)) return refuse({ code: 'same mechanic' });
  const { second } = people;
  const changesRole = second !== null && plain(second) === plain(name);
  return accept(...(changesRole ? [left(second)] : []), {
    kind: 'handed over',
    from: people.mechanic,
    to: name.trim(),
  });
}

type PeopleEvent = Extract<EventBody, { kind: 'second person joined' | 'second person left' | 'handed over' }>;

/** Who takes part after one of them came, went or handed over. */
export function peopleAfter(people: People, event: PeopleEvent): People {
  switch (event.kind) {
    case 'second person joined':
      return { ...people, second: event.name };
    case 'second person left':
      return { ...people, second: null };
    case 'handed over':
      return { ...people, mechanic: event.to };
  }
}
