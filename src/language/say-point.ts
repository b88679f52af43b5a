/** The points of a step as they are asked. */
import { orderOnCall, statedOnCall } from '../session/deviations.ts';
import { pointOf, type Point } from '../session/point.ts';
import { criterionOf, nameOfSeal, nameOrdered, namePoint, openingOf, partOf } from '../session/point-words.ts';
import { failedCriterion, isOfNewSeal, reuseRefusal, sealOf } from '../session/seals.ts';
import { currentCall, currentStep, type SessionState } from '../session/state.ts';
import { points } from '../words/points.ts';
import { sentence } from './say.ts';

/** What is asked, with the words that answer it. Figures stand as figures: they are put into words where it is spoken. */
export function askPoint(state: SessionState, point: Point): string {
  return point.kind === 'started' ? askStarted(state, point) : sentence(ask(state, point));
}

function ask(state: SessionState, point: Exclude<Point, { kind: 'started' }>): string {
  const { procedure } = state;
  switch (point.kind) {
    case 'capped':
    case 'connected': {
      const { name, closure } = openingOf(procedure, point.opening);
      return points.ask[point.kind](name, closure);
    }
    case 'criterion': {
      const [name, step] = [nameOfSeal(procedure, point.seal), currentStep(state)];
      const isNew = step !== null && isOfNewSeal(state, step, point.seal);
      return points.ask.criterion(isNew ? points.newSeal(name) : name, criterionOf(procedure, point));
    }
    case 'seal':
      return askSeal(state, point.seal);
    case 'coated': {
      const { fluid = null } = procedure.seals.find(({ id }) => id === point.seal) ?? {};
      return points.ask.coated(nameOfSeal(procedure, point.seal), fluid);
    }
    case 'seated':
      return points.ask.seated(nameOfSeal(procedure, point.seal));
    case 'held':
      return points.ask.held;
    case 'tool':
    case 'closure':
    case 'consumable':
      return points.ask.accountedFor(namePoint(procedure, point));
    case 'ordered': {
      const [step, call] = [currentStep(state), currentCall(state)];
      const order = step && orderOnCall(state, step);
      if (!order || !call) return points.name.ordered(nameOrdered(state, point.of), null);
      return points.ask.ordered(call.label, call.fastener, order.text, statedOnCall(state, step).length > 0);
    }
  }
}

function askSeal(state: SessionState, id: string): string {
  const name = nameOfSeal(state.procedure, id);
  const part = sealOf(state, id)?.partNumber ?? null;
  if (reuseRefusal(state, id) === null) return points.ask.reuseOrReplace(name, part);
  const failed = failedCriterion(state, id);
  return failed === null ? points.ask.replaceAlways(name, part) : points.ask.replaceFailed(name, failed, part);
}

function askStarted({ procedure, ...state }: SessionState, point: Extract<Point, { kind: 'started' }>): string {
  const part = partOf(procedure, currentStep({ procedure, ...state })?.id, point);
  const asked = sentence(points.ask.started(namePoint(procedure, point, part)));
  return part?.held ? `${points.keepInPlace} ${asked}` : asked;
}

/** What a mechanic is told is still wanted, by the key of its point: another question would only be asked again. */
export function nameOfKey(state: SessionState, key: string): string {
  const point = pointOf(key);
  if (point === null) return key;
  if (point.kind === 'ordered') return points.name.ordered(nameOrdered(state, point.of), null);
  return namePoint(state.procedure, point);
}
