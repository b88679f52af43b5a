/** The wrench: its setting, adapter and running torque, and reasons not to use it. */
import { said } from './said.ts';

export const wrench = said('wrench', {
  noLever: (amount: string) => `The lever must be longer than zero; it is ${amount}.`,
  badAdapterLength: (amount: string) => `An adapter cannot be ${amount} long.`,
  badAdapterAngle: (degrees: number) => `The angle of an adapter is from 0° to 180°; it is ${degrees}°.`,
  adapterPastTheDrive: 'The adapter points back as far as the hand or past it; no setting gives this torque.',
  runDownNotMeasured: 'A used self-locking nut needs its running torque measured before it is tightened.',
  negativeRunDown: (torque: string) => `A running torque cannot be negative; it is ${torque}.`,
  wornNut: (runDown: string, minimum: string) =>
    `The nut runs down with ${runDown}, below the minimum of ${minimum}; reject it and fit another.`,

  badRange: (min: string, max: string) => `A tool cannot have the range ${min} to ${max}.`,
  badResolution: (torque: string) => `A tool cannot resolve ${torque}.`,
  notADay: (text: string) => `"${text}" is no day; write it as 2026-03-31.`,
  unknownError: (type: 'indicating' | 'setting', toolClass: string) =>
    `${type === 'indicating' ? 'An' : 'A'} ${type} tool of class "${toolClass}" has no known error; state its maximum error.`,

  calibrationUnknown: 'The tool has no calibration date; look for its label.',
  calibrationEnded: (day: string) => `The calibration of the tool ended on ${day}; take another tool.`,
  belowUsable: (setting: string, from: string) =>
    `The setting of ${setting} is below ${from}, where the tool begins to be accurate; take a smaller one.`,
  aboveFullScale: (setting: string, fullScale: string) =>
    `The setting of ${setting} is above the tool's full scale of ${fullScale}.`,
  tooCoarse: (mark: string, setting: string) => `The tool's marks, ${mark} apart, are too coarse for ${setting}.`,
  noMark: 'No mark of the tool is inside the window.',
  noMarkByRule: (rule: 'guard band' | 'relative tool error') =>
    `No mark of the tool is inside what is accepted of the window by the rule "${rule}".`,
  showsNoTorque: 'The tool shows no torque to read.',
  runningUncertain: (torque: string, from: string) =>
    `The running torque of ${torque} is below ${from}, where the tool begins to be accurate.`,
  noUncertainty: (amount: string) => `A standard uncertainty must be above zero; it is ${amount}.`,
  negativeGuardBand: (amount: string) => `A guard band cannot be negative; it is ${amount}.`,
  badToolError: (percent: number) => `The error of a tool must be from 0 to below 100 per cent; it is ${percent}.`,
});
