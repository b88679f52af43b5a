/** What stops the work before it begins, and what is warned of: each with what to do. */
import { said } from './said.ts';

/** A torque as it is shown, the pass and step that need it, and whether an adapter is between. */
interface Wanted {
  readonly pass: number;
  readonly step: string;
  readonly value: string;
  readonly onWrench: boolean;
}

const isOrAre = (count: number): string => (count === 1 ? 'is' : 'are');
const inPass = (pass: number, step: string): string => `pass ${pass} of “${step}”`;
const wants = ({ pass, step, value, onWrench }: Wanted): string =>
  `${inPass(pass, step)} needs ${value}${onWrench ? ' on the wrench' : ''}`;
const takeAnother = 'Take a tool that can, and have the procedure name it.';

export const preparation = said('preparation', {
  /** What is wrong with what was typed of a thing. */
  wrong: (name: string, why: string) => `${name}: ${why}`,

  people: {
    noMechanic: 'Nobody is named as mechanic. Type the name: the record says by whom the work was done.',
    ownWitness: 'The second person must be somebody else: nobody can witness their own work.',
    tooFew: (wanted: number, named: number) =>
      `The procedure needs ${wanted} people, and ${named} ${isOrAre(named)} named. Name the others, or wait for them.`,
    noSecond: (step: string) =>
      `“${step}” needs a second person, and none is named. One can join during the work; until then it stops there.`,
    notHeard: (person: string) =>
      `${person} was not heard well enough at the microphone check: the job starts muted, and pedal, keys and touch do the work.`,
  },

  dataNotCompared: (document: string, revision: string, issued: string | undefined) =>
    `Nobody has confirmed yet that ${document}, revision ${revision}${issued === undefined ? '' : ` of ${issued}`}, is the current approved data. Compare it with the register; if it is not, do not work by it.`,
  hazardsOpen: (count: number) =>
    `${count === 1 ? 'One hazard is' : `${count} hazards are`} not acknowledged yet. Read each one and acknowledge it.`,

  consumable: {
    noExpiry: (name: string) =>
      `${name}: its use-by date is not entered. Read it off the packing; if it has none, fetch another.`,
    expired: (name: string, expiry: string, today: string) =>
      `${name}: it expired on ${expiry}, and today is ${today}. Throw it away and fetch a fresh one.`,
  },

  tool: {
    wrongCalibration: (name: string, why: string) => `Calibration of ${name}: ${why}`,
    noCalibration: (name: string) =>
      `${name}: its calibration date is not entered. Read it off the label; where none stands there, take one that has it.`,
    calibrationEnded: (name: string, due: string, today: string) =>
      `${name}: its calibration ended on ${due}, and today is ${today}. Take another of the same kind and enter the date on its label.`,
    otherLabel: (name: string, label: string, filed: string) =>
      `${name}: the label says ${label}, the procedure file says ${filed}. The label counts.`,
    noAccuracy: (name: string) => `${name}: neither class nor error is stated, so nothing says how far to trust it.`,
    tooInaccurate: (name: string, errorPercent: number, pass: number, step: string) =>
      `${name}: its error of ±${errorPercent} % is more than the window of ${inPass(pass, step)} leaves. A value that reads inside may be outside; take a finer tool where there is one.`,
    reachesTo: (tool: string, max: string, wanted: Wanted) =>
      `${tool} reaches ${max}; ${wants(wanted)}. ${takeAnother}`,
    accurateFrom: (tool: string, min: string, wanted: Wanted) =>
      `${tool} is accurate from ${min}; ${wants(wanted)}. ${takeAnother}`,
    noMark: (tool: string, every: string, wanted: Wanted, why: string) =>
      `${tool} has a mark every ${every}; ${wants(wanted)}. ${why} ${takeAnother}`,
    doubtful: (tool: string, wanted: Wanted, why: string) => `${tool}: ${wants(wanted)}. ${why}`,
    doubtfulForRunning: (tool: string, step: string, why: string) =>
      `${tool} is to measure the running torque in “${step}”. ${why}`,
    notForRunning: (tool: string, step: string, why: string) =>
      `${tool} is to measure the running torque in “${step}”. ${why} ${takeAnother}`,
  },

  adapter: {
    notMeasured: (name: string, filed: string) =>
      `${name}: not measured, so settings take the ${filed} of the procedure file. Measure from the middle of the drive to the middle of the fastener.`,
    another: (name: string, measured: string, filed: string) =>
      `${name} measures ${measured}; the procedure file says ${filed}. That is another adapter, or a slip: measure again, and take the one that the procedure names.`,
    noSetting: (name: string, measured: string, filed: string) =>
      `${name} measures ${measured}; the procedure file says ${filed}. With this length no setting gives the torque: it points back as far as the hand.`,
    differs: (name: string, measured: string, filed: string, millimetres: number, changes: readonly string[]) =>
      `${name} measures ${measured}; the procedure file says ${filed}, ${millimetres} mm apart. Settings follow the measured length${changes.length > 0 ? `: ${changes.join('; ')}` : ''}.`,
    inPass: (pass: number) => `pass ${pass}`,
    change: (place: string, measured: string, filed: string) => `${place} ${measured} instead of ${filed}`,
  },

  container: {
    wrong: (why: string) => `Container: ${why}`,
    none: (drains: string) => `${drains} may drain, and no container is named. Enter what the one in place holds.`,
    tooSmall: (why: string) => `${why} Put a larger one under it and enter what it holds.`,
  },

  lift: {
    notByHand: 'At this reach, height, turn or rate nothing may be lifted by hand: use a sling, a hoist or a stand.',
    aboveThree: (load: string, three: string) =>
      `${load} is above the ${three} that three may carry together by common practice.`,
    withinOne: (load: string, one: string) => `${load} is within the ${one} recommended for one person.`,
    together: (load: string, one: string, persons: 2 | 3, together: string) =>
      `${load} is above the ${one} recommended for one person; ${persons === 2 ? 'two' : 'three'} may carry ${together} together by common practice.`,
    notDescribed: (load: string) =>
      `The component weighs ${load}, and the file does not say how it is lifted. Agree on it first.`,
    notSaid: (load: string, follows: string) => `Nobody has said yet how the ${load} are carried. ${follows}`,
    fewerThanFile: (wanted: number, persons: number) =>
      `The procedure lifts it with ${wanted} persons, not with ${persons}. Do as it says, or use a sling.`,
    fewerNamed: (persons: number, named: number) =>
      `${persons} persons are to carry, and ${named} ${isOrAre(named)} named. Name the others, or use a sling.`,
    /** The number of the procedure holds; what is reckoned warns, and says what helps. */
    procedureHolds: (persons: number, follows: string) =>
      `The procedure has ${persons === 1 ? 'one person carry it, and that' : `${persons} persons carry it, and that number`} holds. Guidance, the lifting equation, warns all the same: ${follows} Have a hoist or a stand help, or a competent person plan the lift.`,
  },
});
