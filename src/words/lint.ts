/** What a careful reader would ask about a procedure that has no fault. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

export const lint = said('lint', {
  neverClosed: (opening: string, closure: 'cap' | 'plug') =>
    `${opening} is opened here, but no later step takes its ${closure} out; it would stay in`,
  neverOpened: (opening: string) => `${opening} is closed here, but no earlier step opens it`,
  notOpened: (opening: string) => `no step opens ${opening}, so no cap or plug is asked for`,
  portsNotKeptUp: 'fluid stays inside, but the file does not say which ports are kept up',
  drainedVolumeMissing: 'nothing says how much runs out, so the container cannot be checked',

  workInHazard: (verb: string) => `"${verb}" is work; put it into a step, a hazard only informs`,
  hazardsOutOfOrder: (signal: Signal, before: Signal) =>
    `a ${signal} stands after a ${before}; the gravest comes first`,
  otherHarm: (signal: Signal, consequence: 'person' | 'equipment') =>
    `"${signal}" does not stand for harm to ${consequence === 'person' ? 'a person' : 'equipment'}`,

  sealNotSeated: (seal: string) => `no step before this one seats the seal ${seal}`,
  sealNotInspected: 'reuse depends on an inspection, but no step inspects this seal',
  noCriteria: 'reuse depends on an inspection, but nothing says what to look for',
  singleUseOffered: 'this seal is never used again, but reuse is offered',
  notTightened: (pattern: string) => `no step tightens the pattern "${pattern}"`,
  notStartedByHand: (pattern: string) =>
    `no earlier step starts all fasteners of ${pattern} by hand, and the first pass is not snug`,
  threadConditionMissing: 'dry or lubricated is not stated; the same torque pulls oiled threads much harder',
  lubricantNotNamed: (condition: string) => `"${condition}" does not say with what`,
  usedNutsWithoutMinimum: 'used self-locking nuts have no minimum running torque, so a worn one would pass',
  fullTorqueFirst: 'the first round goes to the full value; bring all snug crosswise before',
  releasedUnheld: 'a lift is described, but no release waits for somebody to hold the weight; give "heldBefore"',

  sourceWithoutDate: 'the source document has no date; state it, so that an old issue is noticed',
  inventedNotMarked: 'the title or source speaks of invented values; mark the procedure as invented',
  nobodyToWitness: 'a second person is asked for, but the file does not say that the work needs two',
  liftNeedsMore: (lifting: number, working: number) =>
    `the lift takes ${lifting} persons, but the work is for ${working}`,
  longToSay: (words: number) => `${words} words are long to listen to; give a shorter "say"`,

  calibrationDateMissing: 'no calibration date; it must be read off the tool each time',
  toolErrorUnknown: 'neither class nor maximum error, so nothing says how far to trust it',
  belowUsable: (setting: string, from: string) =>
    `the setting ${setting} is below ${from}, where the tool is good from`,
  aboveScale: (setting: string, max: string) => `the setting ${setting} is above the tool's ${max}`,
  tooCoarse: (mark: string, setting: string) => `the tool's marks, ${mark} apart, are too coarse for ${setting}`,
  noMark: (setting: string, isByRule: boolean) =>
    `the tool has no mark inside the window around ${setting}${isByRule ? ', as far as its rule of judging accepts it' : ''}`,
  nothingAccepted: 'by its rule of judging no reading could be accepted',
  windowTooNarrow: (min: string, max: string, errorPercent: number) =>
    `the window ${min} to ${max} is narrower than the tool's error of ±${errorPercent} %`,
  otherUnit: (unit: string, toolUnit: string) => `the value is in ${unit}, but the tool shows ${toolUnit}`,
  showsNoTorque: (tool: string) => `the tool ${tool} shows no torque; name one that does`,
  largeToolForRunning: (from: string) =>
    `running torque is measured with the tool of the step, which is good from ${from}; name a smaller one`,
  runningBelowTool: (tool: string, from: string, minimum: string) =>
    `the tool ${tool} is good from ${from}, above the minimum ${minimum}`,

  unused: (what: 'tool' | 'adapter' | 'condition' | 'seal', id: string) => `no step uses the ${what} ${id}`,
});
