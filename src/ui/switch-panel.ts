/** What one or two switches choose from: what may be done now, or the figures of a value. Pure. */
import { beginScan, inRows, litNow, moveOn, takeLit, type Scan, type ScanItem } from '../gesture/scan.ts';
import type { Situation } from '../language/situation.ts';
import { isReadCall } from '../session/calls.ts';
import type { Meaning } from '../session/intent.ts';
import { pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { currentCall, pendingReading, type SessionState } from '../session/state.ts';
import { asksValue, awaitsWitness } from '../session/witness.ts';
import { valueKeys } from '../words/value-keys.ts';
import { forwardMeaning } from './forward.ts';
import { beginEntry, movedOn, offered, taken, type HandEntry } from './hand-entry.ts';

/** A choice: something that may be meant now, the entry of a value, or nothing. */
export type Choice = { readonly kind: 'means'; readonly meaning: Meaning } | { readonly kind: 'value' | 'leave' };

export type Panel =
  { readonly kind: 'choices'; readonly scan: Scan<Choice> } | { readonly kind: 'value'; readonly entry: HandEntry };

/** What a press in the panel leads to. */
export type PanelStep =
  | { readonly kind: 'panel'; readonly panel: Panel }
  | { readonly kind: 'means'; readonly meaning: Meaning }
  | { readonly kind: 'value'; readonly value: string }
  | { readonly kind: 'left' };

/**
 * Whether a value is wanted now, so that it can be entered by hand: of the fastener that is called, or of what is measured,
 * and none waits for its answer, nor does a point; or of what waits, where its value is what is asked.
 */
export function wantsValue(state: SessionState, { reading, observed, dictation }: Situation): boolean {
  const pending = pendingReading(state);
  if (pending) return reading !== null && !awaitsWitness(state, pending) && asksValue(state, pending);
  if (dictation || pendingValue(state) || currentPoint(state)) return false;
  const call = currentCall(state);
  return observed !== null || (reading !== null && call !== null && isReadCall(call));
}

/** What only its own person says, what must be typed afterwards, and what is a word for another device. */
const NOT_BY_FOOT: ReadonlySet<Meaning['kind']> = new Set(['witness says', 'second person', 'hand over', 'unclear']);

/** What may be done now: what goes on first, then in the order in which it is said; what only asks comes last. */
export function choicesNow(state: SessionState, situation: Situation): Panel {
  const forward = JSON.stringify(forwardMeaning(state, situation));
  const isValueWanted = wantsValue(state, situation);
  const isAffirmed = !(isValueWanted && pendingReading(state));
  const seen = new Set<string>();
  const sayings = situation.sayings.filter(({ meaning }) => {
    const same = JSON.stringify(meaning);
    if (seen.has(same) || NOT_BY_FOOT.has(meaning.kind) || (meaning.kind === 'affirm' && !isAffirmed)) return false;
    seen.add(same);
    return true;
  });
  const isForward = ({ meaning }: (typeof sayings)[number]): boolean =>
    meaning.kind !== 'say again' && JSON.stringify(meaning) === forward;
  const rank = (saying: (typeof sayings)[number]): number =>
    isForward(saying) ? 0 : saying.meaning.kind === 'question' ? 2 : 1;
  const means = sayings
    .toSorted((one, other) => rank(one) - rank(other))
    .map(({ words, meaning }): ScanItem<Choice> => ({ label: words, value: { kind: 'means', meaning } }));
  const value: readonly ScanItem<Choice>[] = isValueWanted
    ? [{ label: valueKeys.enterValue, value: { kind: 'value' } }]
    : [];
  const items = [...value, ...means, { label: valueKeys.nothing, value: { kind: 'leave' } } as const];
  return { kind: 'choices', scan: beginScan(inRows(items)) };
}

export const valuePanel = (by: HandEntry['by']): Panel => ({ kind: 'value', entry: beginEntry(by) });

/** The light moves on; null where nobody is choosing any more. */
export function panelMovedOn(panel: Panel): Panel | null {
  if (panel.kind === 'choices') {
    const scan = moveOn(panel.scan);
    return scan && { ...panel, scan };
  }
  const entry = movedOn(panel.entry);
  return entry && { ...panel, entry };
}

/** Takes what is lit. */
export function panelTaken(panel: Panel, by: HandEntry['by']): PanelStep {
  if (panel.kind === 'value') {
    const entered = taken(panel.entry);
    return entered.kind === 'goes on' ? { kind: 'panel', panel: { kind: 'value', entry: entered.entry } } : entered;
  }
  const took = takeLit(panel.scan);
  if (took.kind === 'moved') return { kind: 'panel', panel: { ...panel, scan: took.scan } };
  switch (took.value.kind) {
    case 'means':
      return took.value;
    case 'value':
      return { kind: 'panel', panel: valuePanel(by) };
    case 'leave':
      return { kind: 'left' };
  }
}

/** What is lit now, in words: shown large, and spoken where that is wanted. */
export const litWords = (panel: Panel): string =>
  panel.kind === 'choices' ? (litNow(panel.scan)?.label ?? '') : offered(panel.entry);
