/** What is spoken after something has happened. */
import { said } from './said.ts';

type Deviation = 'over torque' | 'under torque' | 'takes no torque' | 'damage';
type Disposition = 'accepted as is' | 'repaired' | 'part replaced' | 'deferred' | 'worked again';

export const announcing = said('announcing', {
  opened: (title: string, document: string, revision: string) => `${title}. ${document}, revision ${revision}.`,
  invented: 'Demonstration only. All values are invented.',
  goingOn: 'Going on where the record stops.',
  closed: 'All steps are done. The record is closed.',
  saveIt: 'It is on this device only. Save it.',
  takenBack: (title: string) => `Taken back: ${title}.`,
  skipped: (title: string) => `Skipped, it does not apply: ${title}.`,
  turned: (label: string) => `One ${label} turned. Go round once more.`,
  standingBy: 'Standing by.',
  passRestarted: (pass: string) => `Pass ${pass} begins again, from its first fastener.`,

  logged: 'Logged.',
  notLogged: 'Not logged.',
  disregarded: 'Disregarded.',
  readingDisregarded: (place: string) => `Disregarded: ${place}.`,
  disputed: (label: string, number: string) => `Stop. The two values of ${label} ${number} differ.`,
  bothReadAgain: 'Both read again.',
  /** Of a correction that came to nothing. */
  stands: (label: string, number: string, value: string) => `${label} ${number} stands at ${value}, as before.`,
  correctAgain: 'If it is wrong, say correction and the right value.',
  noAnswer: 'No answer. Tap affirm or negative.',
  noValue: 'No answer. Read it again, or tap negative.',
  noAnswerOfWitness: 'No answer. Second person, type or tap your value.',

  stepInspected: (person: string) => `Inspected by ${person}.`,
  stepNotPassed: (person: string) => `Stop. ${person} does not pass it. Put it right, then it is inspected again.`,
  stepWitnessed: 'Witnessed.',
  stepNotAgreed: 'Stop. The second person does not agree. Put it right. To read the last pass again, say back.',

  deviation: (label: string, number: string, what: Deviation) => `${label} ${number}, ${what}.`,
  notedAlready: 'Noted: it is reported already. One decision is for both.',
  deviationDisregarded: (place: string, what: Deviation) => `Disregarded: ${place}, ${what}.`,
  decideByManual: 'The procedure does not say what to do. Decide by the manual.',
  workAgainOrLeave: (label: string, number: string) => `Then do ${label} ${number} again, or say leave open.`,
  fastenerLeftOpen: (label: string, number: string) => `${label} ${number} is left open.`,
  valueLeftOpen: 'It is left open.',
  disposed: (what: Disposition, by: string) => `Logged: ${what}, by ${by}.`,
  signed: (person: string) => `Signed: ${person}.`,
  notIndependent: (person: string) =>
    `Mind: ${person} took part in this work, and signs as inspector. Common practice is somebody who did not.`,

  held: 'Held.',
  setDown: (duration: string) => `Set down. Held for ${duration}.`,
  setDownEarly: 'The last word of the carry was not reached: the step is not done. Say held when you lift it again.',
  waitBegins: 'The wait begins.',
  waitOfBegins: (duration: string) => `The wait begins: ${duration}.`,

  criterionFailed: (name: string) => `Failed: ${name}.`,
  findFirst: (name: string) => `Find it first: ${name}. The record stays open until then.`,
  seeToIt: 'See to it first.',
  fetched: (name: string, expires: string | null) => `${name}${expires === null ? '' : `, use by ${expires}`}.`,

  secondJoined: (name: string) => `Second person: ${name}.`,
  secondLeft: (name: string) => `${name} is no longer the second person.`,
  handingOver: 'Handing over.',
  handedOver: (to: string, from: string) => `${to} takes over from ${from}.`,
});
