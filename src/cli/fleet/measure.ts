/** Values of a record as plain numbers, through the exact factors of the units room. */
import { fromWritten, subtract, valueIn, type Torque, type Written } from '../../units/index.ts';

/** A torque, N·m. */
export const inNewtonMetres = (torque: Torque): number => valueIn(torque, 'N·m');

/** A torque as it was written, N·m. */
export const writtenInNewtonMetres = (written: Written<'torque'>): number =>
  inNewtonMetres(fromWritten('torque', written));

/** (value − setting) / setting in per cent, whatever units the two have; null for a setting of nothing. */
export function deviationPercent(value: Written<'torque'>, setting: Written<'torque'>): number | null {
  const [read, called] = [fromWritten('torque', value), fromWritten('torque', setting)];
  return called.value === 0 ? null : (subtract(read, called).value / valueIn(called, read.unit)) * 100;
}

/** Seconds from one moment to a later one; null where the clock was set back between them. */
export function secondsBetween(from: Date, to: Date): number | null {
  const milliseconds = to.getTime() - from.getTime();
  return milliseconds < 0 ? null : milliseconds / 1000;
}
