/** How fasteners are called, with their passes and values. Numbers come in words, in an answer that is shown in figures. */
import { said } from './said.ts';

export const calls = said('calls', {
  pass: (pass: string, of: string, name: string) => `Pass ${pass} of ${of}, ${name}.`,
  passTo: (pass: string, of: string, name: string, value: string, min: string, max: string) =>
    `Pass ${pass} of ${of}, ${name}: ${value}, from ${min} to ${max}.`,
  fastener: (label: string, number: string) => `${label} ${number}.`,
  fastenerTo: (label: string, number: string, value: string) => `${label} ${number}, ${value}.`,
  runningTorque: (label: string, number: string) => `${label} ${number}, running torque.`,
  runningTorques: (label: string) => `Running torque: read each ${label} as it runs down, before it seats.`,
  standsOrTurns: 'Say next if it does not turn, turned if it does.',
  /** Each number with its name: said in a row, 10 would be 1 and 0. */
  order: (of: string, label: string, numbers: readonly string[]) =>
    `order of ${of}: ${numbers.map((number) => `${label} ${number}`).join(', ')}.`,
});
