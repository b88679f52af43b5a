/** The time line of a session, and lengths of time. */
import { said } from './said.ts';

export const timeLine = said('timeLine', {
  seconds: (seconds: number) => `${seconds} s`,
  minutes: (minutes: number) => `${minutes} min`,
  hours: (hours: number, minutes: number) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
  days: (days: number, hours: number) => (hours === 0 ? `${days} days` : `${days} days ${hours} h`),

  lanes: {
    steps: 'Steps',
    readings: 'Readings',
    doubts: 'Doubts, corrections',
    deviations: 'Deviations, refusals',
    holds: 'Holds, interruptions',
  },
  shapes: {
    step: 'Step, or work without a value',
    reading: 'Reading',
    outside: 'Value outside its window',
    correction: 'Correction',
    doubt: 'Doubt',
    refusal: 'Refused',
    deviation: 'Deviation',
    hold: 'Hold, standing by',
    interruption: 'Interruption',
  },
  /** @param ofShape how many of the events here are of that shape */
  mark: (shape: string, entry: number, events: number, ofShape: number) =>
    events > 1
      ? `${shape}: ${ofShape} of ${events} events here, the first of them entry ${entry}`
      : `${shape}, entry ${entry}`,
  step: (number: number, title: string) => `Step ${number}: ${title}`,
  stoodBy: 'Standing by',
  stoodByToEnd: 'Standing by, to the end',
  held: (step: string, seconds: number, helped: boolean) =>
    `Held for ${seconds} s: ${step}${helped ? ', help called' : ''}`,
  heldToEnd: (step: string, helped: boolean) => `Held, to the end: ${step}${helped ? ', help called' : ''}`,
  gap: (lasted: string) => `${lasted} without an entry, shortened here`,
  legend: 'On the time line',
  counted: (shape: string, count: number) => `${shape}: ${count}`,

  /** The drawing in words. */
  summary: (from: string, to: string, entries: number, stepsDone: number) =>
    `Time line from ${from} to ${to}, ${entries} ${entries === 1 ? 'entry' : 'entries'}, ${stepsDone} ${stepsDone === 1 ? 'step' : 'steps'} done.`,
  gapBefore: (lasted: string, entry: number) => `${lasted} before entry ${entry}`,
  longGaps: (gaps: readonly string[], areMore: boolean) =>
    `Long gaps: ${gaps.join('; ')}${areMore ? ' and more' : ''}.`,
  severalHere:
    'Where events of a lane lie close, one mark stands for all of them, in the shape of the gravest, with the number of all; the list has each.',
  setBack: (times: number) => `The clock was set back ${times === 1 ? 'once' : `${times} times`}.`,
});
