/** What the second person's window shows: what is wanted of them, and what the two found. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

export const secondView = said('secondView', {
  passOf: (pass: number, of: number) => `Pass ${pass} of ${of}`,
  runningTorque: 'Running torque',

  wait: {
    signing: 'The record is signed in the other window.',
    deciding: 'A deviation is being decided in the other window.',
    closed: 'All steps are done. The record is closed.',
    handingOver: 'The work is being handed over.',
    standingBy: 'The work stands by.',
    brokenOff: 'Work was broken off. The mechanic says first whether everything is as it was left.',
    reason: (deviation: string) => `The mechanic gives the reason for a deviation. ${deviation}.`,
    held: 'The mechanic holds the weight. Be ready.',
    heldAt: (call: string) => `The mechanic holds the weight: ${call}. Be ready.`,
    hazard: (signal: Signal, text: string) => `The mechanic acknowledges a ${signal} first: ${text}`,
    joinToRead: (place: string) => `${place} needs a witness. Join under your name.`,
    joinToLook: (what: string) => `To be witnessed: ${what}. Join under your name.`,
    confirming: 'The mechanic confirms the reading.',
    readingAgain: 'The mechanic reads again first.',
    nothing: 'Nothing is asked of you now.',
  },

  agree: (value: string, witness: string, unit: string) => `The two agree: ${value} and ${witness} ${unit}`,
  readBy: (mechanic: string, witness: string) =>
    `Read by ${mechanic} and by ${witness}, equal to within one mark of the tool.`,
  dispute: 'Dispute: the pass stops here',
  bothReadAgain: 'The two values differ, and neither counts. Both read again: the mechanic first, then you.',
  notAgreed: 'Not agreed: the step stops here',
  lookedAtAgain: (person: string) =>
    `${person} does not agree to this step. When it is put right, it is looked at again.`,

  status: {
    captured: 'not confirmed yet',
    confirmed: 'confirmed',
    rejected: 'rejected',
    disregarded: 'disregarded',
    replaced: 'replaced',
    disputed: 'disputed',
    'set aside': 'set aside',
  },
  withWitness: (mechanic: string, witness: string) => `${mechanic}; witness ${witness}`,
  withWitnessed: (mechanic: string, witness: string, value: string) => `${mechanic}; witness ${witness}: ${value}`,
});
