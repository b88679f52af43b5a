/** What warns, in the sentences in which it is said: what is announced, and what must be heard, are these. */
import type { Hazard, Step } from '../procedure/procedure.ts';
import { prompting } from '../words/prompting.ts';
import { sentence } from './say.ts';

type Said = Pick<Hazard, 'signal' | 'text'>;

/** A warning that is acknowledged by its own word. */
export const sayWarning = ({ signal, text }: Said): string => sentence(prompting.hazardToAffirm(signal, text));

/** What a step says before its own text: its cautions, and notices as well where they are asked for. */
export const sayHazards = ({ hazards }: Step, ...signals: readonly Hazard['signal'][]): readonly string[] =>
  hazards
    .filter(({ signal }) => signals.includes(signal))
    .map(({ signal, text }) => sentence(prompting.hazard(signal, text)));
