/**
 * After the last step: what is out of the ordinary is decided about by a person with a name, and the record is signed by
 * a deliberate act. Only then it is closed.
 */
import type { Procedure } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { openPoints, type OpenPoint } from './deviations.ts';
import type { EventBody, SessionEvent } from './event.ts';
import { wellFormed, type DispositionKind, type Instant, type Meaning } from './intent.ts';
import { isDoer, isSamePerson, tidyName } from './people.ts';
import { currentStep, type SessionState } from './state.ts';

export type SignatureRole = Procedure['signatures'][number];

/** What was decided about a deviation, by whom. */
export interface Disposition {
  readonly what: DispositionKind;
  readonly by: string;
  readonly note: string | null;
}

export interface Signature {
  readonly role: SignatureRole;
  readonly person: string;
  readonly at: Instant;
}

/** What is out of the ordinary and not decided about yet, in the order of the record. */
export const undecided = (state: SessionState): readonly OpenPoint[] =>
  openPoints(state).filter(({ seq }) => !state.dispositions.has(seq));

/** What keeps the record from being closed once all steps are done; null where nothing does. */
export function beforeClosing(
  state: SessionState,
):
  | { readonly kind: 'disposition'; readonly point: OpenPoint }
  | { readonly kind: 'signature'; readonly role: SignatureRole }
  | null {
  const [point] = undecided(state);
  if (point) return { kind: 'disposition', point };
  const role = state.procedure.signatures.find((each) => !state.signatures.some((signed) => signed.role === each));
  return role === undefined ? null : { kind: 'signature', role };
}

/** Whether all steps are done and the record is not closed yet. */
export const isClosing = (state: SessionState): boolean => state.phase !== 'closed' && currentStep(state) === null;

/** More than anybody types, and a bound for what comes from outside; in letters. */
const LONGEST_NOTE = 500;

/** All steps are done: what is left is decided about, then signed. */
export function whileClosing(state: SessionState, meaning: Meaning): Decision {
  const wanted = beforeClosing(state);
  switch (meaning.kind) {
    case 'dispose':
      return wanted?.kind === 'disposition' && wanted.point.seq === meaning.of
        ? dispose(state, meaning)
        : refuse({ code: 'nothing to decide' });
    case 'sign':
      return wanted?.kind === 'signature' && wanted.role === meaning.role
        ? sign(state, meaning.role, meaning.name)
        : refuse({ code: wanted?.kind === 'disposition' ? 'closing' : 'nothing to sign' });
    default:
      return refuse({ code: 'closing' });
  }
}

function dispose({ doers }: SessionState, { of, what, by, note }: Extract<Meaning, { kind: 'dispose' }>): Decision {
  if (tidyName(by) === '') return refuse({ code: 'no name' });
  // Common practice: who did the work does not pass its faults.
  if (what === 'accepted as is' && isDoer(doers, by)) return refuse({ code: 'own work', name: tidyName(by) });
  const text = [...wellFormed(note).trim()].slice(0, LONGEST_NOTE).join('');
  return accept({ kind: 'disposed', of, what, by: tidyName(by), note: text === '' ? null : text });
}

function sign({ people: { mechanic }, doers }: SessionState, role: SignatureRole, name: string): Decision {
  if (tidyName(name) === '') return refuse({ code: 'no name' });
  if (role === 'mechanic' && !isSamePerson(name, mechanic))
    return refuse({ code: 'not the mechanic', name: tidyName(name) });
  if (role === 'inspector' && isDoer(doers, name)) return refuse({ code: 'own work', name: tidyName(name) });
  return accept({ kind: 'signed', role, person: role === 'mechanic' ? mechanic : tidyName(name) });
}

type ClosingEvent = Extract<EventBody, { kind: 'disposed' | 'signed' }>;

/** The state after one more decision or signature. */
export function afterClosing(state: SessionState, body: ClosingEvent, { at }: Pick<SessionEvent, 'at'>): SessionState {
  switch (body.kind) {
    case 'disposed': {
      const { of, what, by, note } = body;
      return { ...state, dispositions: new Map([...state.dispositions, [of, { what, by, note }]]) };
    }
    case 'signed':
      return { ...state, signatures: [...state.signatures, { role: body.role, person: body.person, at }] };
  }
}
