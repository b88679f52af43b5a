/** The drawing of a pattern of fasteners. */
import { said } from './said.ts';

type Standing = 'next' | 'doubt' | 'done' | 'open';

const standing = { open: 'open', next: 'next', done: 'done', doubt: 'in doubt' };

export const patternPlan = said('patternPlan', {
  standing,
  /** The whole drawing, for whom does not see it. */
  drawing: (name: string, groups: readonly { readonly standing: Standing; readonly numbers: readonly number[] }[]) =>
    `${name}. ${groups.map((group) => `${standing[group.standing]}: ${group.numbers.join(', ')}`).join('; ')}.`,
});
