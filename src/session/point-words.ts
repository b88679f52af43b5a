/** The points of a step in words that record and voice share: as they are named, and what was answered. */
import type { Procedure } from '../procedure/procedure.ts';
import { startParts, type ReleasePart } from '../procedure/release.ts';
import type { EventBody } from './event.ts';
import { pointOf, type Point, type PointAnswer } from './point.ts';
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

/** An answer as a fact of the record: "Oil inlet of the gearbox: closed off". */
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
  capped: 'closed off',
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
  seals.find(({ id }) => id === seal)?.criteria[index] ?? `criterion ${index + 1}`;
