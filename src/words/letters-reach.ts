/** How far away the large digits can be read. */
import { said } from './said.ts';

export const lettersReach = said('lettersReach', {
  metres: (metres: string) => `${metres} m`,
  /** Until large digits have stood on the screen. */
  display: 'Display',
  digitsTo: <T>(reach: T) => ['Display: digits to ', reach],
  /** Goes on from `digitsTo`, where it is less far than somebody stands. */
  notTo: (metres: number) => `, not ${metres} m`,
});
