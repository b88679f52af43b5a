/** The points of a step as they are asked. */
import type { Procedure } from '../procedure/procedure.ts';
import { pointOf, type Point } from '../session/point.ts';
import { criterionOf, nameOfSeal, namePoint, openingOf, partOf } from '../session/point-words.ts';
import { failedCriterion, reuseRefusal, sealOf } from '../session/seals.ts';
import { currentStep, type SessionState } from '../session/state.ts';
import { sentence } from './say.ts';

/** What is asked, with the words that answer it. Figures stand as figures: they are put into words where it is spoken. */
export function askPoint(state: SessionState, point: Point): string {
  const { procedure } = state;
  switch (point.kind) {
    case 'capped': {
      const { name, closure } = openingOf(procedure, point.opening);
      return `${sentence(name)}: is its ${closure} ${closure === 'cap' ? 'on' : 'in'}? Affirm or negative?`;
    }
    case 'connected': {
      const { name, closure } = openingOf(procedure, point.opening);
      return `${sentence(name)}: is its ${closure} ${closure === 'cap' ? 'off' : 'out'}, and is it connected? Affirm or negative?`;
    }
    case 'criterion':
      return `${sentence(nameOfSeal(procedure, point.seal))}: ${criterionOf(procedure, point)}. Affirm if it is so, else negative.`;
    case 'seal':
      return askSeal(state, point.seal);
    case 'coated':
      return `${sentence(nameOfSeal(procedure, point.seal))}: is it coated thinly with ${coatOf(procedure, point.seal)}? Affirm or negative?`;
    case 'seated':
      return `${sentence(nameOfSeal(procedure, point.seal))}: is it seated by hand? Affirm or negative?`;
    case 'started':
      return askStarted(state, point);
    case 'held':
      return 'Does somebody hold the weight? Say held.';
    case 'tool':
    case 'closure':
    case 'consumable':
      return `${sentence(namePoint(procedure, point))}: accounted for? Affirm or negative?`;
  }
}

function askSeal(state: SessionState, id: string): string {
  const name = sentence(nameOfSeal(state.procedure, id));
  const part = sealOf(state, id)?.partNumber;
  const fresh = part === undefined ? '' : ` New part: ${part}.`;
  if (reuseRefusal(state, id) === null) return `${name}: reuse or replace?${fresh}`;
  const failed = failedCriterion(state, id);
  const why = failed === null ? 'The manual never has it used again.' : `It failed: ${failed}.`;
  return `${name}. ${why}${fresh} Say replace.`;
}

function askStarted({ procedure, ...state }: SessionState, point: Extract<Point, { kind: 'started' }>): string {
  const part = partOf(procedure, currentStep({ procedure, ...state })?.id, point);
  const holding = part?.held ? 'Keep holding. ' : '';
  return `${holding}${sentence(namePoint(procedure, point, part))}: started by hand? Affirm or negative?`;
}

/** What a mechanic is told is still wanted, by the key of its point: another question would only be asked again. */
export const nameOfKey = (procedure: Procedure, key: string): string => {
  const point = pointOf(key);
  return point === null ? key : namePoint(procedure, point);
};

const coatOf = ({ seals }: Procedure, id: string): string =>
  seals.find((each) => each.id === id)?.fluid ?? 'the fluid of the manual';
