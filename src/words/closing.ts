/** What is left before the record is closed: what is decided about, who signs. */
import { said } from './said.ts';

type Deviation = 'over torque' | 'under torque' | 'takes no torque' | 'damage';
type Disposition = 'accepted as is' | 'repaired' | 'part replaced' | 'deferred' | 'worked again';
type Verdict = 'in' | 'under' | 'over' | 'no window';

export const closing = said('closing', {
  allDone: 'All steps are done.',
  toDecide: (number: number, inWords: string) =>
    number === 1 ? 'One deviation needs a decision.' : `${inWords} deviations need a decision.`,
  decideEach: 'For each, type the name of whoever decides, and tap the decision.',
  deferred: (number: number, inWords: string) =>
    `${inWords} deferred: ${number === 1 ? 'it is' : 'they are'} still open.`,
  mechanicSigns: (name: string) =>
    `All steps are done. ${name} signs: type the name, then hold the button for two seconds.`,
  inspectorSigns: 'All steps are done. The inspector signs: type the name, then hold the button for two seconds.',

  /** As it is spoken. @param pass null in the round of running torques */
  sayFastener: (label: string, number: string, pass: string | null, what: Deviation, leftOpen: boolean) =>
    `${label} ${number}, ${round(pass)}, ${what}${leftOpen ? ', left open' : ''}.`,
  /** As it is shown. */
  fastener: (label: string, number: string, pass: string | null, what: Deviation, leftOpen: boolean) =>
    `${label} ${number}, ${round(pass)}: ${what}${leftOpen ? ', left open' : ''}`,
  /** Studs of the same number are in several patterns. */
  inStep: (step: string, fault: string) => `${step}. ${fault}`,
  sayValue: (title: string, value: string, unit: string, verdict: Verdict, leftOpen: boolean) =>
    `${title}: ${value} ${unit}, ${verdict} the window${leftOpen ? ', left open' : ''}.`,
  value: (title: string, value: string, unit: string, verdict: Verdict) =>
    `${title}: ${value} ${unit}, ${verdict} the window, left open`,
  decided: (point: string, what: Disposition, by: string) => `${point}: ${what}, by ${by}`,
});

const round = (pass: string | null): string => (pass === null ? 'running torque' : `pass ${pass}`);
