/** A reading read back, what is asked about it, and what its verdict asks for. */
import { said } from './said.ts';

export const readBack = said('readBack', {
  reading: (label: string, number: string, how: 'read' | 'click' | 'running torque', value: string) =>
    `${label} ${number}, ${HOW[how]}${value}.`,
  witnessed: (
    label: string,
    number: string,
    how: 'read' | 'click' | 'running torque',
    value: string,
    witness: string,
  ) => `${label} ${number}, ${HOW[how]}${value}, witness, ${witness}.`,
  outside: {
    under: 'That is under the window.',
    over: 'That is over the window.',
    'not provable': 'That is too near the limit to prove.',
    'nut worn': 'That is below the minimum.',
  },
  runsTooHard: 'That is too much for the tools of this step.',
  isCorrect: 'Is that correct?',
  next: (label: string, number: string) => `Next, ${label} ${number}.`,
  nextRound: (call: string) => `Next: ${call}`,
  awaitsWitness: (label: string, number: string) =>
    `${label} ${number} is read. Second person, say witness and the value.`,
  witnessMustJoin: (label: string, number: string) =>
    `${label} ${number} is read. A second person must join, then say witness and the value.`,

  verdict: {
    under: (label: string, number: string) => `${label} ${number} is under. Tighten further and read again.`,
    over: (label: string, number: string) => `${label} ${number} is over. Stop. Decide by the manual.`,
    'not provable': (label: string, number: string) =>
      `${label} ${number} cannot be proved. Read it again or decide by the manual.`,
  },
  tooHard: (label: string, number: string) =>
    `${label} ${number} runs too hard for the tools of this step. Measure it again or decide by the manual.`,
  worn: (label: string, number: string, minimum: string | null) =>
    `${label} ${number} is worn: it runs below the minimum${minimum === null ? '' : ` of ${minimum}`}. Reject it, fit another, and measure again.`,

  /** Questions of a doubt hold no number: who is asked must not be told what would be right. */
  doubt: {
    'not sure': 'That was not clear.',
    'off the scale': 'That is off the scale of the tool.',
    'between marks': 'That is between the marks of the tool.',
    'sounds like another': 'Another number sounds like that.',
    'out by ten': 'Check the place of the point.',
    'digits swapped': 'Check the order of the digits.',
    'digit count': 'Check the number of digits.',
    'too soon': 'That was quick. Was the wrench on it?',
  },
  sayAgain: 'What does the tool show? Say it digit by digit.',
  affirmOrSay: 'Affirm, or say what the tool shows.',
  /** Of a value that two people read blind: none of its questions offers a yes. */
  bothAgain: 'Both read again, digit by digit.',
  inDoubt: (label: string, number: string, question: string) => `${label} ${number} is in doubt. ${question}`,
  doubtful: (value: string, question: string) => `${value}. ${question}`,
});

const HOW = { read: '', click: 'click at ', 'running torque': 'running torque ' };
