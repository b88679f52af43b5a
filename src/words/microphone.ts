/** The microphone: how loud it is there, how a person is heard, and the check of both. */
import { said } from './said.ts';

export const microphone = said('microphone', {
  level: 'Microphone level',
  notMeasured: 'Background: not measured yet',
  tooLoud: (measured: string) => `▲ Too loud to trust: ${measured}. Tap or use the pedal.`,
  tooClose: '▲ Too close: the microphone cuts the sound off.',
  tooQuiet: '▲ Voice too quiet: come closer to the microphone.',
  loud: (measured: string) => `△ Loud: ${measured}. Check each read-back.`,
  quiet: (measured: string) => `Quiet: ${measured}`,
  background: (measured: string) => `Background ${measured}`,
  decibels: (decibels: string) => `${decibels} dB`,
  overNoise: (decibels: number) => `voice ${decibels} dB over the noise`,

  typeName: 'Type a name to check how the microphone hears that person here.',
  checkOf: (name: string) => `Microphone check: ${name}`,
  fitness: {
    fit: 'Fit to work by voice',
    'fit with care': 'Fit with care',
    'do not start by voice': 'Do not start by voice here',
  },
  /** What it is, and what to do about it. */
  finding: {
    'no sound': 'No sound comes from the microphone. Is it switched on, and the one chosen in the browser?',
    'too loud': 'It is too loud here. Take a headset microphone, come closer to it, or go on by pedal and touch.',
    'not heard': 'No word was heard. Come closer, take a headset microphone, or go on by pedal and touch.',
    'too many wrong': 'Too many words were misheard. Come closer, speak evenly, or go on by pedal and touch.',
    loud: 'It is loud here. Listen to each read-back before you affirm it. A headset microphone helps.',
    'some wrong': 'Not all was heard right. Listen to each read-back before you affirm it.',
    faint: 'Your voice comes in very quiet. Come closer, or turn the microphone up.',
    clipped: 'The microphone cuts your voice off. Go further away, or turn it down.',
  },
  noSound: 'No sound.',
  backgroundWas: (decibels: string) => `Background ${decibels} dB.`,
  voiceWas: (decibels: string) => `Voice ${decibels} dB over it.`,
  heardRight: (right: number, count: number) => `${right} of ${count} heard right.`,

  beSilent: 'Microphone check. Be silent for two seconds.',
  say: (phrase: string) => `Say: ${phrase}.`,
  iHeard: (words: string) => `I heard: ${words}.`,
  iHeardNothing: 'I heard nothing.',

  checked: <T>(name: T, moment: string, fitness: string, measured: string) => [
    name,
    `, ${moment}: ${fitness}. ${measured}`,
  ],
  keptHere: 'Kept on this device',
  figuresOnly: 'Only the figures of each person’s last check, no sound.',
  delete: 'Delete',
  deletes: (name: string) => `Delete ${name}`,
  notDeleted: (name: string, why: string) => `What is kept of ${name} could not be deleted: ${why}`,
});
