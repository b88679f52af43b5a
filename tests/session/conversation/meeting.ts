/** Brings words into the program and the model alike, and holds both together after each. */
import fc from 'fast-check';
import { expect } from 'vitest';
import type { HeardWord } from '../../../src/language/understand.ts';
import { holdTogether } from './agreement.ts';
import type { Loop } from './loop.ts';
import { hear, stageOf, type Model } from './model.ts';
import type { Word } from './words.ts';

/** Where a conversation stands by the model, and what the mechanic meant by the values that he listened for. */
export interface Told {
  now: Model;
  /** By the place of the value among all that were taken. */
  readonly meant: Map<number, string>;
  /** The rows of the model that changed something, in all conversations. */
  readonly changed: Set<string>;
}
export type Command = fc.AsyncCommand<Told, Loop> & fc.WithCloneMethod<unknown>;

/** A command that is printed, where a conversation fails, as the line that was said: each conversation has its own. */
export function command(run: (told: Told, loop: Loop, print: (line: string) => void) => Promise<void>): Command {
  let lines: readonly string[] = [];
  const print = (said: string): void => void (lines = [...lines, said]);
  return {
    check: () => true,
    run: (told, loop) => run(told, loop, print),
    toString: () => lines.join(' '),
    [fc.cloneMethod]: () => command(run),
  };
}

/** Brings something in, and the word that it is to the model. @param act returns that word */
export async function meet(told: Told, loop: Loop, act: () => Promise<Word>): Promise<void> {
  const [before, turns] = [told.now, loop.turns.length];
  const word = await act();
  told.now = hear(before, word);
  if (told.now !== before) told.changed.add(`${stageOf(before)}: ${word.word}`);
  const said = loop.turns.slice(turns).map((turn) => turn.said);
  holdTogether(before, word, told.now, loop.state, said.join(' '));
}

export const NOT_UNDERSTOOD: Word = { word: 'not understood' };

/** What is not understood may only be what would have changed nothing. */
export function expectIdle(model: Model, word: Word): Word {
  expect(hear(model, word), `"${word.word}" is not understood`).toEqual(model);
  return NOT_UNDERSTOOD;
}

export const spoken = (line: string, confidence: number): readonly HeardWord[] =>
  line.split(' ').map((word) => ({ word, confidence }));

/** How sure the recogniser is: quite, enough for a value but for no command, and for neither. */
export const SURENESS = { sure: 0.97, halting: 0.8, unsure: 0.6 };
export const sureness = fc.oneof(
  { weight: 8, arbitrary: fc.constant(SURENESS.sure) },
  { weight: 1, arbitrary: fc.constantFrom(SURENESS.halting, SURENESS.unsure) },
);
