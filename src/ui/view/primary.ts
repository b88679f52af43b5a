/** Which button is the likely one. */
import type { Meaning } from '../../session/intent.ts';
import type { WorkView } from '../view.ts';
import type { MeasureView } from './measure.ts';

/** A meaning by its kind; an answer by which one it is. */
export type Primary = Meaning['kind'] | 'replace';

/** What is asked for: a word where one is asked, the next step where one is worked, none where a value or a choice is. */
export function primaryOf(view: WorkView): Primary | null {
  const { phase, warning, pending, question, call, step } = view;
  if (phase === 'standing by') return view.handingOver ? null : 'continue';
  if (view.breakOf !== null || view.deviation || view.toWitness !== null) return null;
  if (warning || (pending && pending.verdict === 'in' && view.doubt === null)) return 'affirm';
  // Both hands carry: it is set down after the last call.
  if (view.held) return view.held.ahead.length > 0 ? 'next' : 'set down';
  // To a point as to a check no answer is the likelier one, but where there is only one.
  if (view.point) return view.point.only;
  if (view.mustReplace !== null) return 'replace';
  if (view.awaitsHold) return 'held';
  if (view.measure)
    return view.measure.pending && !view.measure.isOutside ? 'affirm' : waitsForNext(view.measure) ? 'next' : null;
  if (step === null || pending || question || step.kind === 'check') return null;
  return call?.target || call?.instead === 'read it' ? null : 'next';
}

const waitsForNext = ({ wait }: MeasureView): boolean => wait !== null && wait.over === null;
