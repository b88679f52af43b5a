/** How computed values came about. */
import { said } from './said.ts';

export const explaining = said('explaining', {
  /**
   * "target 175, plus 12 running, times 0.833 for the adapter: set 156".
   * @param parts what the value is made of, in order
   */
  setTo: (parts: readonly string[], value: string) => `${parts.join(', ')}: set ${value}`,
  pullTo: (parts: readonly string[], value: string) => `${parts.join(', ')}: pull to ${value}`,
  noMark: (parts: readonly string[]) => `${parts.join(', ')}: the tool has no mark to set`,
  target: (value: string) => `target ${value}`,
  plusRunning: (value: string) => `plus ${value} running`,
  timesAdapter: (ratio: string) => `times ${ratio} for the adapter`,
  accepted: (setting: string, rule: 'guard band' | 'relative tool error', min: string, max: string) =>
    `${setting}; by ${rule} ${min} to ${max} is accepted`,
  nothingAccepted: (setting: string, rule: 'guard band' | 'relative tool error') =>
    `${setting}; by ${rule} no reading is accepted`,

  runningFirst: 'First the running torque of each is read.',
  atFastener: 'These are values at the fastener; what to set is worked out.',

  weight: (mass: string) => `The component weighs ${mass}.`,
  weightWithFluid: (mass: string, ofFluid: string, fluid: string) =>
    `The component weighs ${mass}, with ${ofFluid} of ${fluid} inside.`,
  liftingIndex: (index: string) => `Lifting index ${index} for one person with the whole load.`,

  tool: (name: string, reasons: string) => `${name}: ${reasons}`,
  toolForbidden: (name: string, reasons: string) =>
    `${name}: may not be used here. ${reasons} Choose another tool by the manual.`,
});
