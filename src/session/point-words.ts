/** The points of a step in words that record and voice share: as they are named, and what was answered. */
import type { Procedure } from '../procedure/procedure.ts';
import { startParts, type ReleasePart } from '../procedure/release.ts';
import type { EventBody } from './event.ts';
import { points } from '../words/points.ts';
import { place } from '../words/place.ts';
import { toDoAbout } from './deviations.ts';
import { pointOf, type Point } from './point.ts';
import type { SessionState } from './state.ts';

type PointSettled = Extract<EventBody, { kind: 'point settled' }>;

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The fasteners of a point that starts a part; undefined where it starts all of a pattern. */
export const partOf = (
  procedure: Procedure,
  step: string | undefined,
  { pattern, part }: Extract<Point, { kind: 'started' }>,
): ReleasePart | undefined =>
  step === undefined || part === null ? undefined : startParts(procedure, step, pattern)[part];

/** What a point is about, as a name within a sentence. */
export function namePoint(
  procedure: Procedure,
  point: Exclude<Point, { kind: 'ordered' }>,
  part?: ReleasePart,
): string {
  switch (point.kind) {
    case 'capped': {
      const { name, closure } = openingOf(procedure, point.opening);
      return points.name.closureOf(closure, name);
    }
    case 'connected':
      return points.name.connection(openingOf(procedure, point.opening).name);
    case 'criterion':
      return points.name.criterion(nameOfSeal(procedure, point.seal), criterionOf(procedure, point));
    case 'seal':
    case 'coated':
    case 'seated':
      return points.name.seal(nameOfSeal(procedure, point.seal));
    case 'started':
      return nameStarted(procedure, point, part);
    case 'held':
      return points.name.weight;
    case 'tool':
      return procedure.tools.find(({ id }) => id === point.id)?.name ?? point.id;
    case 'closure': {
      const { name, closure } = openingOf(procedure, point.id);
      return points.name.countedClosure(closure, name);
    }
    case 'consumable': {
      const consumable = procedure.consumables.find(({ id }) => id === point.id);
      const name = consumable?.name ?? point.id;
      return consumable?.counted === 'wrapper' ? points.name.wrapper(name) : name;
    }
  }
}

/** A reading or a deviation about which the procedure has something done: "stud 4, 27 N·m". */
export function nameOrdered({ procedure, readings, deviations }: SessionState, of: number): string {
  const reading = readings.find(({ seq }) => seq === of);
  const deviation = deviations.find(({ seq }) => seq === of);
  const found = reading ?? deviation;
  const step = procedure.steps.find(({ id }) => id === found?.step);
  const pattern = step && 'pattern' in step ? procedure.patterns.find(({ id }) => id === step.pattern) : undefined;
  const label = pattern?.fastener ?? place.anyFastener;
  if (reading) return points.name.reading(label, reading.fastener, reading.reading.value, reading.reading.unit);
  return deviation ? points.name.deviation(label, deviation.fastener, deviation.what) : points.name.someEntry(of);
}

function nameStarted(
  { patterns }: Procedure,
  point: Extract<Point, { kind: 'started' }>,
  part: ReleasePart | undefined,
): string {
  const pattern = patterns.find(({ id }) => id === point.pattern);
  const label = pattern?.fastener ?? place.anyFastener;
  if (part === undefined) return points.name.allFasteners(label, pattern?.name ?? point.pattern);
  return part.name === null
    ? points.name.fasteners(label, part.numbers)
    : points.name.fastenersOfPart(part.name, label, part.numbers);
}

/** An answer as a fact of the record: "Oil inlet of the gearbox: closed off". */
export function pointFact(state: SessionState, settled: PointSettled): string {
  const { procedure, deviations } = state;
  const { step, point: key, answer } = settled;
  const point = pointOf(key);
  if (point === null) return points.unknownFact(key, step, answer);
  const isSo = answer !== 'negative';
  if (point.kind === 'seal') return sentence(sealFact(nameOfSeal(procedure, point.seal), settled));
  if (point.kind === 'criterion') {
    const name = nameOfSeal(procedure, point.seal);
    const seal = settled.part === 'new' ? points.newSeal(name) : name;
    return sentence(points.criterionFact(seal, criterionOf(procedure, point), isSo));
  }
  if (point.kind === 'ordered') {
    const what = deviations.find(({ seq }) => seq === point.of)?.what ?? 'over torque';
    const order = toDoAbout(
      procedure.steps.find(({ id }) => id === step),
      what,
    );
    return sentence(points.fact.ordered(points.name.ordered(nameOrdered(state, point.of), order), isSo));
  }
  const part = point.kind === 'started' ? partOf(procedure, step, point) : undefined;
  const about = 'opening' in point ? openingOf(procedure, point.opening).name : namePoint(procedure, point, part);
  return sentence(points.fact[point.kind](about, isSo));
}

function sealFact(seal: string, { answer, replaced }: PointSettled): string {
  if (answer === 'reuse') return points.sealFact.usedAgain(seal);
  if (answer !== 'replace' || !replaced) return points.sealFact.replaced(seal);
  const { partNumber, failed } = replaced;
  switch (replaced.because) {
    case 'never used again':
      return points.sealFact.neverUsedAgain(seal, partNumber);
    case 'failed':
      return points.sealFact.failed(seal, partNumber, failed ?? '');
    case 'chosen':
      return points.sealFact.chosen(seal, partNumber);
  }
}

/** An opening by its id; a record from elsewhere may name what its procedure does not have. */
export function openingOf(
  { openings }: Procedure,
  id: string,
): { readonly name: string; readonly closure: 'cap' | 'plug' } {
  return openings.find((each) => each.id === id) ?? { name: id, closure: 'plug' };
}

export const nameOfSeal = ({ seals }: Procedure, id: string): string =>
  seals.find((each) => each.id === id)?.name ?? id;
export const criterionOf = ({ seals }: Procedure, { seal, index }: Extract<Point, { kind: 'criterion' }>): string =>
  seals.find(({ id }) => id === seal)?.criteria[index] ?? points.someCriterion(index + 1);
