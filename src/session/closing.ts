/**
 * After the last step: what is out of the ordinary is decided about by a person with a name, and the record is signed by
 * a deliberate act. Only then it is closed.
 */
import { openedIn, type Procedure, type Step } from '../procedure/procedure.ts';
import { RUNNING_ROUND } from './calls.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { openPoints, type OpenPoint } from './deviations.ts';
import type { EventBody, SessionEvent } from './event.ts';
import { wellFormed, type DispositionKind, type Instant, type Meaning } from './intent.ts';
import { isDoer, isSamePerson, tidyName } from './people.ts';
import type { Refusal } from './refusal.ts';
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
  stillOpen(state).filter(({ seq }) => state.dispositions.get(seq)?.what !== 'deferred');

/** The same, with what was put off. */
export const stillOpen = (state: SessionState): readonly OpenPoint[] =>
  openPoints(state).filter(({ seq, leftOpen }) => {
    const what = state.dispositions.get(seq)?.what;
    // What was to be worked again and is left open once more is decided about once more.
    return what === undefined || what === 'deferred' || (what === 'worked again' && leftOpen);
  });

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

function dispose(state: SessionState, { of, what, by, note }: Extract<Meaning, { kind: 'dispose' }>): Decision {
  if (tidyName(by) === '') return refuse({ code: 'no name' });
  // Common practice: who did the work does not pass its faults.
  if (what === 'accepted as is' && isDoer(state.doers, by)) return refuse({ code: 'own work', name: tidyName(by) });
  const text = [...wellFormed(note).trim()].slice(0, LONGEST_NOTE).join('');
  const disposed = { kind: 'disposed', of, what, by: tidyName(by), note: text === '' ? null : text } as const;
  if (what !== 'worked again') return accept(disposed);
  const point = openPoints(state).find(({ seq }) => seq === of);
  const because = point ? againstWorkingAgain(state, point) : 'not left open';
  if (because !== null || !point) return refuse({ code: 'not worked again', because: because ?? 'not left open' });
  return accept(disposed, { kind: 'step taken back', step: point.step });
}

/**
 * Why a step is not gone back to from the end of the work; null where it may be. Common practice: only what was left open is
 * worked again as if the work had not ended, and only as long as nothing was opened or moved after it.
 */
function againstWorkingAgain(
  { procedure: { steps }, doneSteps }: SessionState,
  point: OpenPoint,
): Extract<Refusal, { code: 'not worked again' }>['because'] | null {
  if (!point.leftOpen) return 'not left open';
  if (point.of === 'fastener' && point.pass === RUNNING_ROUND) return 'nut seated';
  const at = steps.findIndex(({ id }) => id === point.step);
  return steps.slice(at + 1).some((step) => doneSteps.has(step.id) && opensOrMoves(step)) ? 'moved since' : null;
}

const opensOrMoves = (step: Step): boolean =>
  step.kind === 'loosen' || step.kind === 'hold' || openedIn(step).length > 0;

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
      const dispositions = new Map([...state.dispositions, [of, { what, by, note }]]);
      const deviations = state.deviations.map((each) =>
        (each.seq === of || each.again === of) && what === 'worked again' ? { ...each, leftOpen: false } : each,
      );
      return { ...state, dispositions, deviations };
    }
    case 'signed':
      return { ...state, signatures: [...state.signatures, { role: body.role, person: body.person, at }] };
  }
}
