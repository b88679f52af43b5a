/** What is wanted now, as it is spoken. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

export const prompting = said('prompting', {
  takeOver: 'Whoever takes over types their name. To go on as before, say continue.',
  standingBy: 'Standing by. Say continue.',
  brokenOff: (duration: string) => `Work was broken off for ${duration}.`,
  isAsLeft: 'Is everything as it was left? Affirm or negative?',
  affirm: 'Say affirm.',
  affirmOrNegative: 'Say affirm or negative.',
  reason: 'Say the reason in your own words.',
  isReasonCorrect: (reason: string) => `Reason: ${reason}. Is that correct?`,
  hazard: (signal: Signal, text: string) => `${signal}. ${text}`,
  hazardToAffirm: (signal: Signal, text: string) => `${signal}. ${text} Say affirm.`,
  /** To a word that takes something back, where it may have been no word. */
  tooLoudToUndo: (words: string) =>
    `Was that ${words}? It is too loud to be sure, and nothing is taken back. Tap it, or use the pedal.`,
  /** To a word that would go past what was not said to its end. */
  readFirst: (signal: Signal) => `The ${signal} was not said to its end. Read it first, or say: say again.`,
  question: (question: string) => `${question} Affirm or negative?`,
  /** After the last point of a step that has more to it: the step is ended by the mechanic. */
  allAsked: 'When all of this step is done, say next.',
  held: 'Say held when you hold it.',

  lookAt: (step: string) => `Second person, look at this step: ${step}.`,
  inspector: 'The inspector types a name and taps what was found.',
  stepWitness: 'Second person, say witness affirm or witness negative.',
  stepWitnessMustJoin: 'No second person is named: one must join. Then say witness affirm or witness negative.',
});
