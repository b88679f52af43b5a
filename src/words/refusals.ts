/** Why something was not carried out, and what to say instead. Numbers come in words. */
import { said } from './said.ts';

export const refusals = said('refusals', {
  plain: {
    'standing by': 'Standing by. Say continue first.',
    'not standing by': 'Not standing by.',
    'session closed': 'The record is closed.',
    'warning first': 'Acknowledge the warning first: say affirm.',
    'condition first': 'Answer the question first: say affirm or negative.',
    'no such consumable': 'The procedure has no such consumable.',
    'no second person':
      'A second person is needed here, and none is named. One must join; the mechanic cannot witness.',
    'nothing to witness': 'There is nothing to witness.',
    'step witness first': 'The second person looks first. Second person, say witness affirm or witness negative.',
    'doer is no witness': 'The mechanic cannot witness their own work. Name another person.',
    'no name': 'A name is needed. Type it.',
    'between steps': 'Hand over between two steps. Finish this one first, or say stand by.',
    'not handing over': 'Nobody is handing over. Say hand over first.',
    'same mechanic': 'That is the same mechanic. Say continue.',
    'break first': 'Work was broken off. Is everything as it was left? Affirm or negative.',
    'no reason wanted': 'No reason is needed here.',
    'nothing to report on': 'No fastener is called, so there is nothing to report on.',
    'report first': 'Report what is wrong before it is left open. Say report, and what.',
    'nothing to confirm': 'There is nothing to confirm.',
    'value first': 'A value is needed. Say it, or type it.',
    'value unconfirmed': 'The value is not confirmed. Say affirm or negative.',
    'scale ends at zero': 'This scale does not go below zero. Look again, and say what it shows.',
    'wait first': 'The wait has not begun. Say next when it begins.',
    'inspector first':
      'An inspector looks first: somebody who took no part in the work types a name and taps what was found.',
    'nothing to decide': 'There is nothing to decide about that now.',
    'nothing to sign': 'There is nothing to sign now.',
    'hold first': 'Say held first, when you hold it.',
    holding: 'You hold it. Next, help, or set down.',
    'set down first': 'Say set down when it is down.',
    'nothing to hold': 'Nothing is held here.',
    'not holding': 'Nothing is held.',
    'nothing to correct': 'There is no reading to correct.',
    'answer first': 'This check needs an answer.',
    'no such answer': 'That is no answer here.',
    'no reading here': 'No reading is taken here.',
    'not a setting tool': 'This tool shows a value. Say the value.',
    'first step': 'This is the first step.',
    'readings stand': 'Readings stand here. Say correction and the right value.',
  },
  notWorkedAgain: {
    'not left open': 'That was put right in the work already. Decide what becomes of it.',
    'moved since':
      'The unit was opened or moved after that step: going back does not put it right. Decide otherwise, and open a job for it.',
    'nut seated':
      'The nut is seated: its running torque can no longer be measured. Decide otherwise, and open a job for it.',
  },

  toolNotUsable: 'The tool may not be used here.',
  notYet: (question: string) => `Not yet. ${question}`,
  somePointOpen: 'A point of this step is open.',
  unaccounted: (points: readonly string[]) => `Not yet. Not accounted for: ${points.join('; ')}. One by one.`,
  sealNeverReused: (seal: string) => `The ${seal} cannot be used again: the manual forbids it. Say replace.`,
  sealFailed: (seal: string, criterion: string) =>
    `The ${seal} cannot be used again: it failed: ${criterion}. Say replace.`,
  sealNotSeated: (seal: string) => `Do not tighten: the ${seal} is not seated. Go back and seat it, or stop and ask.`,
  notStarted: (label: string, pattern: string) =>
    `Do not run down: not all ${label}s of ${pattern} are started by hand. Go back and start them, or stop and ask.`,
  expired: (consumable: string, expires: string) =>
    `The ${consumable} expired on ${expires}. Fetch a fresh one, and enter on the screen what its packing says.`,
  usedUp: (consumable: string) =>
    `The ${consumable} is used up. Fetch another, and enter on the screen what its packing says.`,
  noExpiry: (consumable: string) =>
    `Type the use-by date of the fresh ${consumable}, as 2027-01-31. If it has none, fetch another.`,
  noQuantity: (consumable: string) => `How many of the ${consumable} are there now? Type a whole number, one or more.`,

  runningTorqueIsRead: (label: string, number: string) =>
    `The running torque of ${label} ${number} is read. Say the value.`,
  notConfirmed: (label: string, number: string) => `${label} ${number} is not confirmed. Say affirm or negative.`,
  inDoubt: (label: string, number: string) =>
    `${label} ${number} cannot be confirmed like that. Say the value again, or negative.`,
  wantsWitness: (label: string, number: string) =>
    `${label} ${number} needs its witness. Second person, say witness and the value.`,
  wantsReading: (label: string, number: string) => `${label} ${number} needs a reading.`,
  outOfOrder: (label: string, offered: string, expected: string) =>
    `${label} ${offered} is out of order. Next is ${label} ${expected}.`,
  noSuchFastener: (label: string, offered: string, expected: string) =>
    `There is no ${label} ${offered}. Next is ${label} ${expected}.`,
  notTheLast: (label: string, last: string) =>
    `The last reading is of ${label} ${last}. Only that one can be corrected.`,

  isReasonCorrect: 'Is the reason correct? Affirm or negative.',
  reasonWanted: 'Say the reason in your own words, or say: cancel that.',
  waitNotOver: (duration: string) => `Too early: wait ${duration} more.`,
  ownWork: (name: string) => `${name} took part in this work, so somebody else must do that: type another name.`,
  notTheMechanic: (name: string, mechanic: string) => `${name} is not the mechanic. ${mechanic} signs here.`,

  severalValues: 'That can be understood in more than one way. Say it digit by digit.',
  severalReadings: (label: string) =>
    `That can be understood in more than one way. Say ${label}, its number, at, and the value.`,
  notClear: 'That was not clear. Say again.',
  notClearAnswer: 'That was not clear. Affirm or negative?',
  otherUnit: (unit: string) => `The tool reads ${unit}. Say the value that it shows.`,
  someOtherUnit: 'The tool reads another unit. Say the value that it shows.',
});
