/** What the tests of points share: what is asked, what is told, and openings and a seal to ask about. */
import { sayRefusal } from '../../src/language/say-refusal.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { pointKey } from '../../src/session/point.ts';
import { currentPoint } from '../../src/session/points.ts';
import { currentStep } from '../../src/session/state.ts';
import { refused, type Play } from './play.ts';

export const held: Meaning = { kind: 'held' };

export const asked = ({ state }: Play): string | null => {
  const point = currentPoint(state);
  return point && pointKey(point);
};
/** What a mechanic is told who was just refused. */
export const told = (play: Play): string => {
  const refusal = refused(play);
  if (!refusal) throw new Error('Nothing was refused.');
  return sayRefusal(play.state, refusal);
};
export const stepOf = ({ state }: Play): string | undefined => currentStep(state)?.id;

export const lines = {
  openings: [
    { id: 'inlet', name: 'oil inlet', closure: 'plug' },
    { id: 'outlet', name: 'oil outlet', closure: 'cap' },
  ],
};
export const seal = (more: object = {}) => ({
  seals: [
    {
      id: 'ring',
      name: 'round seal',
      partNumber: 'X-12',
      fluid: 'clean gear oil',
      reuse: 'if it passes inspection',
      criteria: ['no cut', 'no flat spot'],
      ...more,
    },
  ],
});
export const about = (...works: readonly string[]) => ({ seals: works.map((is) => ({ seal: 'ring', is })) });
