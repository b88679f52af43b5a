/** From swings that a head may have made, by what they were, to the weights by which they are told apart. */
import { LEAST_SURENESS } from '../../src/gesture/head.ts';
import { TERMS, type HeadKind, type HeadWeights, type Term } from '../../src/gesture/head-sureness.ts';
import { fitOdds } from './logistic.ts';

/** Swings that were seen in a picture of a film. */
export interface Row {
  readonly kind: HeadKind;
  /** The gesture, or the stretch of time without one, that they belong to. */
  readonly of: string;
  readonly isGesture: boolean;
  /** In a film of work, with nobody who means to say anything. */
  readonly isWork: boolean;
  readonly terms: Readonly<Record<Term, number>>;
}

const NAMES = Object.keys(TERMS) as Term[];
const ROUNDS = 8;
/** Keeps weights small that the films say little about. */
const RIDGE = 4;
/**
 * What is sure enough is chosen so that so many are taken wrongly in ten minutes of the work that was drawn. A shake that
 * was none asks once more; a nod that was none has affirmed for somebody.
 */
const WRONG_IN_TEN_MINUTES: Readonly<Record<HeadKind, number>> = { nod: 0.17, shake: 0.34 };

/** Of each gesture and each stretch, the row that seems surest: it is what decides. */
function surest(rows: readonly Row[], oddsOf: (row: Row) => number): readonly Row[] {
  const best = new Map<string, { readonly row: Row; readonly odds: number }>();
  for (const row of rows) {
    const odds = oddsOf(row);
    if (odds > (best.get(row.of)?.odds ?? -Infinity)) best.set(row.of, { row, odds });
  }
  return [...best.values()].map(({ row }) => row);
}

const oddsBy =
  ({ bias, terms: weights }: HeadWeights) =>
  ({ terms }: Row): number =>
    NAMES.reduce((odds, name) => odds + weights[name] * terms[name], bias);

/** Where the search for the surest row begins: even, straight, from rest, and back. */
const atFirst = ({ terms }: Row): number => terms.straight + terms.alike - terms.away - 3 * terms.before;

/**
 * @param learned rows that the weights are fitted to
 * @param chosen rows of other films, which only say with the first where it is sure enough
 * @param minutes of work in both
 */
export function fitHead(kind: HeadKind, learned: readonly Row[], chosen: readonly Row[], minutes: number): HeadWeights {
  const rows = learned.filter((row) => row.kind === kind);
  let fitted: HeadWeights | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const cases = surest(rows, fitted ? oddsBy(fitted) : atFirst).map(({ terms, isGesture }) => ({
      values: NAMES.map((name) => terms[name]),
      isTrue: isGesture,
    }));
    const { bias, slopes } = fitOdds(cases, RIDGE);
    const terms = Object.fromEntries(NAMES.map((name, i) => [name, slopes[i] ?? 0])) as HeadWeights['terms'];
    fitted = { bias, terms };
  }
  if (!fitted) throw new Error('no round was made');
  const oddsOf = oddsBy(fitted);
  const work = [...rows, ...chosen.filter((row) => row.kind === kind)].filter(({ isWork }) => isWork);
  const wrong = surest(work, oddsOf)
    .map(oddsOf)
    .toSorted((a, b) => b - a);
  // So many are let through: the bound lies between the last of them and the next.
  const allowed = Math.floor((WRONG_IN_TEN_MINUTES[kind] * minutes) / 10);
  const next = wrong[allowed] ?? 0;
  const enough = ((wrong[allowed - 1] ?? next + 2) + next) / 2;
  const least = Math.log(LEAST_SURENESS / (1 - LEAST_SURENESS));
  const rounded = (value: number): number => Number(value.toFixed(3));
  const { terms } = fitted;
  return {
    bias: rounded(fitted.bias - enough + least),
    terms: Object.fromEntries(NAMES.map((name) => [name, rounded(terms[name])])) as HeadWeights['terms'],
  };
}

/** How many of the gestures are sure enough, and how many stretches of work. */
export function countSure(kind: HeadKind, rows: readonly Row[], weights: HeadWeights): string {
  const oddsOf = oddsBy(weights);
  const least = Math.log(LEAST_SURENESS / (1 - LEAST_SURENESS));
  const here = surest(
    rows.filter((row) => row.kind === kind),
    oddsOf,
  ).map((row) => ({ ...row, isSure: oddsOf(row) >= least }));
  const count = (some: typeof here): string => `${some.filter(({ isSure }) => isSure).length} of ${some.length}`;
  return (
    `${kind}: ${count(here.filter(({ isGesture }) => isGesture))} gestures with swings, ` +
    `${count(here.filter(({ isWork }) => isWork))} stretches of work, ` +
    `${count(here.filter((row) => !row.isGesture && !row.isWork))} other stretches`
  );
}
