/** The torque tables of a record sheet: what holds for a whole table, and what stands of each value. */
import { said } from './said.ts';

type Doubt =
  | ('not sure' | 'off the scale' | 'between marks' | 'sounds like another')
  | ('out by ten' | 'digits swapped' | 'digit count' | 'too soon');

export const sheetTorque = said('sheetTorque', {
  thread: (thread: string) => `Thread: ${thread}`,
  tool: (name: string) => `Tool: ${name}`,
  runningTorque: (tool: string) => `Running torque: ${tool}`,
  adapter: (name: string, length: string, angle: string) => `Adapter: ${name}, ${length} at ${angle}`,
  judgedBy: (rule: 'simple' | 'guard band' | 'relative tool error') =>
    `Judged by: ${rule === 'simple' ? 'the window as stated' : rule}`,

  pass: (number: number, name: string) => `${number} ${name}`,
  atLeast: (minimum: string) => `at least ${minimum}`,
  /** @param running the running torque that was added; null where none was */
  window: (window: string, atWrench: boolean, running: string | null) =>
    `${window}${atWrench ? ' at the wrench' : ''}${running === null ? '' : `, with running torque ${running}`}`,

  verdicts: {
    in: 'inside',
    under: 'UNDER',
    over: 'OVER',
    'not provable': 'NOT PROVABLE',
    'nut worn': 'NUT WORN',
  },
  withoutReading: { 'by hand': 'by hand', 'left open': 'LEFT OPEN', open: 'OPEN', skipped: 'skipped' },
  witness: (person: string, value: string, difference: string) => `${person}: ${value} (${difference})`,
  byClick: 'by the click of the wrench',
  inDoubt: (doubts: readonly Doubt[]) => `in doubt: ${doubts.join(', ')}`,
});
