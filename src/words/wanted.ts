/** The work panel: what is wanted now, and what came of the last reading. */
import { said } from './said.ts';
import type { Signal } from './signal.ts';

export const wanted = said('wanted', {
  whatIsWanted: 'What is wanted now',
  putAway: 'Tap to put this away.',
  beforeClosing: 'Before the record is closed',
  stepOf: (number: number, count: number, title: string) => `Step ${number} of ${count}: ${title}`,
  skipped: (titles: readonly string[]) => `Skipped, does not apply: ${titles.join(', ')}`,
  notTaken: (why: string) => `Not taken. ${why}`,
  unheard: {
    'being said': (signal: Signal) => `Not taken. Hear the ${signal} to its end first.`,
    'to be read': (signal: Signal) => `Not taken. It came too soon for the ${signal} to be read: read it first.`,
  },
  /** What a fastener is called whose pattern is not known here. */
  number: 'number',
  skippedWhereNo: 'Affirm or negative. Steps that do not apply are skipped.',
  readBefore: (value: string, unit: string, verdict: string) =>
    `Read ${value} ${unit}: ${verdict}. The manual decides.`,
  window: (window: string, left: number) => `Window ${window}. Still to do in this pass: ${left}.`,
  minimum: (minimum: string, left: number) => `Minimum ${minimum}. Still to do: ${left}.`,
  verdict: {
    in: 'inside the window',
    under: '▼ under the window',
    over: '▲ over the window',
    'not provable': 'too near the limit to prove',
    'nut worn': '▼ below the minimum: the nut is worn',
  },
  runningTorque: 'running torque',
  tooMuchRunningTorque: '▲ too much for the tools of this step',
  secondReads: 'Second person: read the tool and say witness and the value.',
  firstShownAfter: 'The first value is shown after the second one is taken.',
  witnessRead: (name: string, value: string, unit: string) => `Witness ${name}: ${value} ${unit}`,
  signalWord: { danger: 'danger', warning: 'warning', caution: 'caution', notice: 'notice' },
});
