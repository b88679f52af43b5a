import type { Procedure } from './schema.ts';

export type Step = Procedure['steps'][number];
export type StepOf<Kind extends Step['kind']> = Extract<Step, { kind: Kind }>;
export type TightenStep = StepOf<'tighten'>;

/** What is spoken for a step: its short form where it has one. */
export const stepText = (step: Step): string => step.say ?? step.text;

/** The openings that come open in a step, each to be capped or plugged at once. */
export const openedIn = (step: Step): readonly string[] =>
  step.kind === 'open' ? [step.opening] : step.kind === 'do' ? step.opens : [];

/** The openings whose cap or plug is taken out in a step, to make the connection again. */
export const closedIn = (step: Step): readonly string[] =>
  step.kind === 'close' ? [step.opening] : step.kind === 'do' ? step.closes : [];
