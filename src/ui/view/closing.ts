/** What others decide about, and what is left before the record is closed. */
import { sentence } from '../../language/say.ts';
import { beforeClosing, isClosing, type SignatureRole } from '../../session/closing.ts';
import type { FastenerPoint, OpenPoint } from '../../session/deviations.ts';
import type { ObservedValue } from '../../session/observed.ts';
import type { SessionState } from '../../session/state.ts';
import { closing } from '../../words/closing.ts';
import { placed } from './place.ts';

export type ClosingView =
  | { readonly kind: 'disposition'; readonly of: number; readonly text: string }
  /** `who` is the name that is wanted; null where anybody else's is. */
  | { readonly kind: 'signature'; readonly role: SignatureRole; readonly who: string | null };

export function closingView(state: SessionState): ClosingView | null {
  const wanted = isClosing(state) ? beforeClosing(state) : null;
  switch (wanted?.kind) {
    case 'disposition':
      return { kind: 'disposition', of: wanted.point.seq, text: nameOf(state, wanted.point) };
    case 'signature':
      return { ...wanted, who: wanted.role === 'mechanic' ? state.people.mechanic : null };
    default:
      return null;
  }
}

/** What is to be decided about, with the decision where it was put off. */
export function pointText(state: SessionState, point: OpenPoint): string {
  const decided = state.dispositions.get(point.seq);
  const name = nameOf(state, point);
  return decided ? closing.decided(name, decided.what, decided.by) : name;
}

function nameOf(state: SessionState, point: OpenPoint): string {
  if (point.of === 'fastener') return closing.inStep(titleOf(state, point.step), deviationText(state, point));
  return valueText(state, point.value);
}

/** "Oil level: 70 mm, over the window, left open". */
export const valueText = (state: SessionState, { step, value, unit, verdict }: ObservedValue): string =>
  closing.value(titleOf(state, step), value, unit, verdict);

const titleOf = ({ procedure: { steps } }: SessionState, id: string): string =>
  steps.find((step) => step.id === id)?.title ?? id;

/** "Stud 4, pass 1: damage, left open". */
export const deviationText = (
  state: SessionState,
  { what, leftOpen, ...at }: Pick<FastenerPoint, 'step' | 'pass' | 'fastener' | 'what' | 'leftOpen'>,
): string => sentence(closing.fastener(...placed(state, at), what, leftOpen));
