/** The points of a step in words: as they are asked, as they are named, and what was answered. */
import type { Procedure } from '../procedure/procedure.ts';
import { startParts, type ReleasePart } from '../procedure/release.ts';
import { pointOf, type Point, type PointAnswer } from '../session/point.ts';
import type { EventBody } from '../session/event.ts';
import { failedCriterion, reuseRefusal, sealOf } from '../session/seals.ts';
import { currentStep, type SessionState } from '../session/state.ts';
import { sentence } from './say.ts';

type PointSettled = Extract<EventBody, { kind: 'point settled' }>;

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

const partOf = (
  procedure: Procedure,
  step: string | undefined,
  { pattern, part }: Extract<Point, { kind: 'started' }>,
): ReleasePart | undefined =>
  step === undefined || part === null ? undefined : startParts(procedure, step, pattern)[part];

/** What a point is about, as a name within a sentence. */
export function namePoint(procedure: Procedure, point: Point, part?: ReleasePart): string {
  switch (point.kind) {
    case 'capped': {
      const { name, closure } = openingOf(procedure, point.opening);
      return `the ${closure} of the ${name}`;
    }
    case 'connected':
      return `the connection of the ${openingOf(procedure, point.opening).name}`;
    case 'criterion':
      return `the ${nameOfSeal(procedure, point.seal)}, ${criterionOf(procedure, point)}`;
    case 'seal':
    case 'coated':
    case 'seated':
      return `the ${nameOfSeal(procedure, point.seal)}`;
    case 'started': {
      const pattern = procedure.patterns.find(({ id }) => id === point.pattern);
      const label = pattern?.fastener ?? 'fastener';
      if (part === undefined) return `all ${label}s of ${pattern?.name ?? point.pattern}`;
      const numbered = `${label}${part.numbers.length === 1 ? '' : 's'} ${part.numbers.join(', ')}`;
      return part.name === null ? numbered : `${part.name}, ${numbered}`;
    }
    case 'held':
      return 'the weight';
    case 'tool':
      return procedure.tools.find(({ id }) => id === point.id)?.name ?? point.id;
    case 'closure': {
      const { name, closure } = openingOf(procedure, point.id);
      return `${closure} of the ${name}`;
    }
    case 'consumable': {
      const consumable = procedure.consumables.find(({ id }) => id === point.id);
      return `${consumable?.counted === 'wrapper' ? 'wrapper of the ' : ''}${consumable?.name ?? point.id}`;
    }
  }
}

/** What a mechanic is told is still wanted, by the key of its point: another question would only be asked again. */
export const nameOfKey = (procedure: Procedure, key: string): string => {
  const point = pointOf(key);
  return point === null ? key : namePoint(procedure, point);
};

/** An answer as a fact of the record: "Oil inlet of the gearbox: plug fitted". */
export function pointFact({ procedure }: SessionState, { step, point: key, answer, replaced }: PointSettled): string {
  const point = pointOf(key);
  if (point === null) return `Point ${key} of step ${step}: ${answer}`;
  const part = point.kind === 'started' ? partOf(procedure, step, point) : undefined;
  if (point.kind === 'seal') return sentence(`${nameOfSeal(procedure, point.seal)}: ${fateOf(answer, replaced)}`);
  if (point.kind === 'criterion')
    return sentence(
      `${nameOfSeal(procedure, point.seal)}, “${criterionOf(procedure, point)}”: ${answer === 'negative' ? 'FAILED' : 'it is so'}`,
    );
  const about = 'opening' in point ? openingOf(procedure, point.opening).name : namePoint(procedure, point, part);
  return sentence(`${about.replace(/^the /, '')}: ${answer === 'negative' ? 'not yet ' : ''}${FACTS[point.kind]}`);
}

const FACTS: Readonly<Record<Exclude<Point['kind'], 'seal' | 'criterion'>, string>> = {
  capped: 'closed',
  connected: 'connected',
  coated: 'coated',
  seated: 'seated by hand',
  started: 'started by hand',
  held: 'held by somebody',
  tool: 'accounted for',
  closure: 'accounted for',
  consumable: 'accounted for',
};

function fateOf(answer: PointAnswer, replaced: PointSettled['replaced']): string {
  if (answer !== 'replace' || !replaced) return answer === 'reuse' ? 'used again' : 'replaced';
  const part = replaced.partNumber === null ? '' : `. New part ${replaced.partNumber}`;
  switch (replaced.because) {
    case 'never used again':
      return `replaced, the manual never has it used again${part}`;
    case 'failed':
      return `replaced, it failed “${replaced.failed ?? ''}”${part}`;
    case 'chosen':
      return `replaced, as the mechanic chose${part}`;
  }
}

function openingOf({ openings }: Procedure, id: string): { readonly name: string; readonly closure: 'cap' | 'plug' } {
  return openings.find((each) => each.id === id) ?? { name: id, closure: 'plug' };
}

const nameOfSeal = ({ seals }: Procedure, id: string): string => seals.find((each) => each.id === id)?.name ?? id;
const coatOf = ({ seals }: Procedure, id: string): string =>
  seals.find((each) => each.id === id)?.fluid ?? 'the fluid of the manual';
const criterionOf = ({ seals }: Procedure, { seal, index }: Extract<Point, { kind: 'criterion' }>): string =>
  seals.find(({ id }) => id === seal)?.criteria[index] ?? `criterion ${index + 1}`;
