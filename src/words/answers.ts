/** Answers to questions about the work, and where it stands. Numbers come in words or figures, and as they are where they choose. */
import { said } from './said.ts';

export const answers = said('answers', {
  allDone: 'All steps are done.',
  place: (step: string, of: string, title: string) => `Step ${step} of ${of}: ${title}.`,
  stepsAfter: (number: number, inWords: string) => `${inWords} ${number === 1 ? 'step' : 'steps'} after this one.`,
  toDecide: (inWords: string) => `${inWords} still to be decided.`,
  inThisPass: (inWords: string) => `In this pass, ${inWords} to do.`,
  inThisAndLater: (here: string, later: string) => `In this pass, ${here} to do; in later passes, ${later}.`,
  nothingLogged: 'Nothing is logged yet.',
  nothingLoggedFor: (label: string, number: string) => `Nothing is logged for ${label} ${number}.`,
  /** @param values each with its pass */
  logged: (label: string, number: string, values: readonly string[]) => `${label} ${number}: ${values.join('; ')}.`,
  lastReading: (label: string, number: string, value: string) => `${label} ${number}, ${value}.`,
  /** @param pass null for the running torque */
  valueIn: (pass: string | null, value: string) => `${pass === null ? 'running torque' : `pass ${pass}`}, ${value}`,

  whyBlind: 'Two people read the tool, and neither is told what the other read. The second person reads now.',
  whyConfirm: 'A value counts once it is confirmed. Say affirm if it is what you read, negative if not.',
  whyReason: 'Whoever decides about it after the work reads why it is so.',
  /** @param what "over torque" @param order what the procedure has done about that */
  whyOrdered: (label: string, number: string, what: string, order: string) =>
    `${label} ${number}: ${what}. Before it is worked again, the procedure has this done: ${order}`,
  whyProcedure: (document: string, revision: string) =>
    `The procedure says so. It follows ${document}, revision ${revision}.`,

  /** @param pass null in the round of running torques @param done the numbers: each with its name, or 10 is 1 and 0 */
  doneNamed: (pass: string | null, label: string, done: readonly string[]) =>
    `${ofRound(pass)}, done: ${done.map((number) => `${label} ${number}`).join(', ')}.`,
  doneCounted: (pass: string | null, done: string) => `${ofRound(pass)}, ${done} done.`,
  toDo: (inWords: string) => `${inWords} to do.`,
  toDoAndPasses: (inWords: string, passes: number, passesInWords: string) =>
    `${inWords} to do, and ${passesInWords} more ${passes === 1 ? 'pass' : 'passes'}.`,
});

const ofRound = (pass: string | null): string => (pass === null ? 'Of the running torques' : `In pass ${pass}`);
