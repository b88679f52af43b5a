/** The record in a mechanic's words: what happened, as lines that an auditor reads as well. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

type Verdict = 'in' | 'under' | 'over' | 'no window';
type Deviation = 'over torque' | 'under torque' | 'takes no torque' | 'damage';
type Disposition = 'accepted as is' | 'repaired' | 'part replaced' | 'deferred' | 'worked again';

export const entries = said('entries', {
  opened: (
    { title, document, revision, invented }: { title: string; document: string; revision: string; invented: boolean },
    mechanic: string,
    second: string | null,
  ) =>
    `Session opened: ${title}, by ${document}, revision ${revision}.${invented ? ' All values are invented.' : ''} Mechanic ${mechanic}, ${second === null ? 'no second person' : `second person ${second}`}`,
  reopened: 'Page opened again: the work goes on where the record stops',
  closed: 'All steps are done: record closed',
  soundsDeleted: (number: number) => `Sounds deleted: ${number}; their hashes stay`,

  hazard: (signal: Signal, text: string) => `${signal} acknowledged: ${text}`,
  unknownHazard: (number: number, step: string) => `Warning ${number} of step ${step} acknowledged`,
  stepDone: (step: string) => `Step done: ${step}`,
  stepTakenBack: (step: string) => `Step taken back: ${step}`,
  stepSkipped: (step: string, because: string) => `Step skipped, it does not apply: ${step} (${because})`,
  condition: (question: string, is: boolean) => `${question} ${is ? 'Yes' : 'No'}`,
  answered: (step: string, answer: string) => `${step}, answered “${answer}”`,
  answeredWith: (step: string, answer: string, text: string) => `${step}, answered “${answer}”: ${text}`,

  waitBegun: (step: string) => `Wait begun: ${step}`,
  /** @param seconds of the wait before it; null where there was none */
  value: (step: string, value: string, unit: string, seconds: number | null) =>
    `${step}: ${value} ${unit}${afterWait(seconds)}`,
  valueJudged: (
    step: string,
    value: string,
    unit: string,
    verdict: Verdict,
    window: { min: string; max: string },
    seconds: number | null,
  ) => `${step}: ${value} ${unit}, ${VERDICTS[verdict]} ${window.min} to ${window.max} ${unit}${afterWait(seconds)}`,
  valueNamed: (step: string, value: string, unit: string) => `${step}, ${value} ${unit}`,
  noValue: (entry: number) => `entry ${entry}, which is not a value`,

  held: (step: string) => `Held: ${step}`,
  holdCall: (call: string) => `Said to those who carry: “${call}”`,
  unknownCall: (number: number, step: string) => `call ${number} of step ${step}`,
  setDown: (seconds: number, step: string) => `Set down after ${seconds} s: ${step}`,
  helpCalled: (step: string | null) => `HELP CALLED${step === null ? '' : `: ${step}`}`,

  fastenerDone: (place: string, pass: string | null, what: 'turned' | 'did not turn' | 'done') =>
    `${place}${pass === null ? '' : ` (${pass})`}: ${what}`,
  confirmed: (what: string) => `Confirmed: ${what}`,
  rejected: (what: string) => `Rejected: ${what}`,
  disregarded: (what: string) => `Disregarded: ${what}`,
  leftOpen: (what: string) => `Left open: ${what}`,
  witnessed: (person: string, value: string, reading: string) => `Witnessed by ${person}: ${value}, against ${reading}`,
  disputed: (reading: string) => `Disputed, both read again: ${reading}`,
  noAnswer: (reading: string) => `No answer, asked again: ${reading}`,

  witnessAsked: (step: string) => `Second person asked to look: ${step}`,
  stepWitnessed: (person: string, step: string, agrees: boolean) =>
    `${agrees ? 'Witnessed' : 'Not agreed to'} by ${person}: ${step}`,
  stepInspected: (person: string, step: string, agrees: boolean) =>
    `${agrees ? 'Inspected' : 'Not passed'} by ${person}: ${step}`,

  /**
   * @param reading as it was read; null where nothing was
   * @param again the entry that reports it already; null where none does
   */
  deviation: (place: string, what: Deviation, reading: string | null, again: number | null) =>
    `Deviation reported${again === null ? '' : ' once more'}: ${place}, ${what}${reading === null ? '' : `, read as ${reading}`}${again === null ? '' : `, as in entry ${again}`}`,
  noDeviation: (entry: number) => `entry ${entry}, which is not a deviation`,
  reasonGiven: (place: string, reason: string) => `Reason given for ${place}: “${reason}”`,
  reasonConfirmed: (place: string, reason: string) => `Reason confirmed for ${place}: “${reason}”`,
  reasonRejected: (place: string) => `Reason rejected for ${place}`,
  deviationDisregarded: (place: string) => `Deviation disregarded: ${place}`,
  disposed: (entry: number, what: Disposition, by: string, note: string | null) =>
    `Decision on entry ${entry}: ${what}, by ${by}${note === null ? '' : `: “${note}”`}`,
  signed: (person: string, role: 'mechanic' | 'inspector', tookPart: boolean) =>
    `Signed by ${person} as ${role}${tookPart ? ', who took part in this work' : ''}`,

  secondJoined: (name: string) => `${name} joined as second person`,
  secondLeft: (name: string) => `${name} is no longer second person`,
  handoverBegun: 'Work stopped: handing over',
  handedOver: (from: string, to: string) => `Handed over from ${from} to ${to}`,
  breakNoticed: 'Somebody came back after a long break',
  breakAccepted: 'After the break: everything is as it was left',
  passRestarted: (pass: number, step: string) => `Pass ${pass} of ${step} begun again; its readings are set aside`,
  stoodBy: 'Work stopped: standing by',
  continued: 'Work continued',

  repeatAsked: 'Asked to say again',
  asked: {
    place: 'Asked: where the work stands',
    left: 'Asked: what is left to do',
    'last readings': 'Asked: the last readings',
    why: 'Asked: why',
    slowly: 'Asked: to say it slowly',
  },
  askedLogged: (fastener: number) => `Asked: what is logged for number ${fastener}`,
});

const VERDICTS: Readonly<Record<Verdict, string>> = {
  in: 'inside',
  under: 'under',
  over: 'over',
  'no window': 'not judged',
};

const afterWait = (seconds: number | null): string => (seconds === null ? '' : `, after a wait of ${seconds} s`);
