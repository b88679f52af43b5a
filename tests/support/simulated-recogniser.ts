/**
 * A recogniser in place of the engine, for as many readings as no recordings exist of: it mishears as the embedded model was
 * counted to mishear. Words fail independently of each other here. In a room they may fail together: one noisy moment can
 * take the value and the answer.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { HeardWord } from '../../src/language/understand.ts';
import type { Chance, Confusions } from './simulated-confusions.ts';

/** From 0 up to, but not including, 1. */
export type Random = () => number;

export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

/** One of the chances, as likely as it is. */
export function draw<T>(chances: readonly Chance<T>[], random: Random): T {
  let left = random();
  for (const { outcome, probability } of chances) {
    left -= probability;
    if (left < 0) return outcome;
  }
  const last = chances.at(-1);
  if (!last) throw new Error('Nothing to draw from.');
  return last.outcome;
}

/** What is heard of some words, said in one breath: one utterance, or more where a pause was taken for the end of one. */
export type Recogniser = (said: readonly string[]) => readonly (readonly HeardWord[])[];

export function simulatedRecogniser(confusions: Confusions, random: Random): Recogniser {
  const { doubledLost, pause, inserted, insertions } = confusions;
  const hear = (word: string): readonly HeardWord[] => {
    const { heard, confidences } = confusions.chancesOf(word);
    const taken = draw(heard, random);
    return taken === '' ? [] : [{ word: taken, confidence: draw(confidences.get(taken) ?? [], random) }];
  };
  return (said) => {
    const utterances: HeardWord[][] = [[]];
    said.forEach((word, at) => {
      if (at > 0 && random() < pause) utterances.push([]);
      if (word === said[at - 1] && random() < doubledLost) return;
      utterances.at(-1)?.push(...hear(word));
    });
    if (random() < inserted) {
      const utterance = utterances[Math.floor(random() * utterances.length)];
      utterance?.splice(Math.floor(random() * (utterance.length + 1)), 0, draw(insertions, random));
    }
    return utterances.filter((words) => words.length > 0);
  };
}
