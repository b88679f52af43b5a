/** The work on a record sheet: its steps, weights held, values observed, points to decide about, and signatures. */
import { said } from './said.ts';

type Verdict = 'in' | 'under' | 'over' | 'no window';
type Status = 'observed' | 'confirmed' | 'rejected' | 'disregarded' | 'replaced' | 'set aside';
type Deviation = 'over torque' | 'under torque' | 'takes no torque' | 'damage';
type Disposition = 'accepted as is' | 'repaired' | 'part replaced' | 'deferred' | 'worked again';
type Role = 'mechanic' | 'inspector';

/** What may have come of a point: why, as it was said, and whether it was left open. */
interface Left {
  readonly reason: string | null;
  readonly isOpen: boolean;
}

const STANDINGS = { done: 'done', 'does not apply': 'does not apply', begun: 'begun', 'not done': 'not done' };

export const sheetWork = said('sheetWork', {
  standings: STANDINGS,
  answered: (answer: string) => `answered: ${answer}`,
  doneAt: { done: (utc: string) => `done ${utc}`, 'does not apply': (utc: string) => `does not apply, ${utc}` },
  takenBack: (utc: string) => `taken back ${utc}`,
  looked: (person: string, agrees: boolean, independent: boolean) => {
    const passed = agrees ? 'inspected independently' : 'NOT PASSED';
    const witnessed = agrees ? 'witnessed' : 'NOT AGREED TO';
    return `${independent ? passed : witnessed} by ${person}`;
  },

  closures: { cap: 'cap', plug: 'plug' },
  /** @param utc null where the step is not done */
  inStep: (number: number, standing: keyof typeof STANDINGS, utc: string | null) =>
    `step ${number}: ${STANDINGS[standing]}${utc === null ? '' : `, ${utc}`}`,
  inNoStep: 'in no step',

  /** @param seconds null where it was held to the end of the record */
  held: (step: string, seconds: number | null, from: string, helps: number) =>
    `${step}: ${seconds === null ? 'held to the end of the record' : `held for ${seconds} s`}, from ${from}${helpCalled(helps)}`,

  judged: (value: string, unit: string, verdict: Verdict, { min, max }: { min: string; max: string }) =>
    `${value} ${unit}, ${VERDICTS[verdict]} ${min} to ${max} ${unit}`,
  notJudged: (value: string, unit: string) => `${value} ${unit}, no window is stated`,
  /** @param waited seconds; null where there was no wait before it */
  value: (
    step: string,
    judged: string,
    { waited, status, person, leftOpen }: { waited: number | null; status: Status; person: string; leftOpen: boolean },
    utc: string,
  ) =>
    `${step}: ${judged}${waited === null ? '' : `, after a wait of ${waited} s`}; ${status}, by ${person}, ${utc}${leftOpen ? '. LEFT OPEN' : ''}`,
  /** What was answered to a point or a check, or was said by who looked, and whether it stands. */
  answeredSo: {
    stands: (fact: string) => fact,
    anew: (fact: string) => `${fact} (ANSWERED ANEW)`,
    'taken back': (fact: string) => `${fact} (STEP TAKEN BACK)`,
  },
  valueOf: (what: string, judged: string) => `${what}: ${judged}`,

  point: {
    value: (step: string, value: string, unit: string, verdict: Verdict, left: Left) =>
      `${step}: ${value} ${unit}, ${verdict} the window${leftSo(left)}`,
    /** @param pass null where its running torque was measured */
    fastener: (
      step: string,
      label: string | undefined,
      fastener: number,
      pass: number | null,
      what: Deviation,
      left: Left,
    ) =>
      `${step}, ${label ?? 'fastener'} ${fastener}, ${pass === null ? 'running torque' : `pass ${pass}`}: ${what}${leftSo(left)}`,
    notDecided: (point: string) => `${point}. NOT DECIDED`,
    decided: (point: string, what: Disposition, by: string, note: string | null) =>
      `${point}. Decided by ${by}: ${what}${note === null ? '' : ` (“${note}”)`}`,
    undone: (step: number, title: string, standing: 'begun' | 'not done') =>
      `Step ${step}, ${title}: ${STANDINGS[standing].toUpperCase()}`,
  },

  signed: (role: Role, person: string, utc: string, tookPart: boolean) =>
    `Signed as ${role} by ${person}, ${utc}: name typed, pressed on purpose${tookPart ? '. TOOK PART IN THIS WORK' : ''}`,
  notSigned: (role: Role) => `NOT SIGNED by the ${role}`,
});

const VERDICTS = { in: 'inside', under: 'UNDER', over: 'OVER', 'no window': 'not judged' };

const helpCalled = (times: number): string =>
  times === 0 ? '' : `. HELP CALLED ${times === 1 ? 'once' : `${times} times`}`;

const leftSo = ({ reason, isOpen }: Left): string =>
  `${reason === null ? '' : `, reason given: “${reason}”`}${isOpen ? '. LEFT OPEN' : ''}`;
