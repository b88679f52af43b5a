import { toWritten, type Kind, type Quantity } from '../../units/index.ts';

/** A quantity as it stands in the procedure: "24.5 N·m". */
export function asWritten<K extends Kind>(quantity: Quantity<K>): string {
  const { value, unit } = toWritten(quantity);
  return unit === '°' ? `${value}°` : `${value} ${unit}`;
}
