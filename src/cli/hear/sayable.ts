/** What may be said: the name of a situation, or a file with a list of phrases. */
import { readFile } from 'node:fs/promises';
import { isSituationName, SITUATION_NAMES } from '../../language/named-situations.ts';
import type { Sayable } from './judge.ts';
import { NotUsable, openingTrouble } from './refusal.ts';

const MOST_PHRASES = 2_000;
const LONGEST_PHRASE = 200;
const MEND = 'it is a JSON list of phrases, such as ["one", "two", "stop"]';

/** @throws NotUsable for a name that is no situation and no file, and for a file that is no list of phrases */
export async function sayableOf(name: string): Promise<Sayable> {
  if (isSituationName(name)) return { kind: 'situation', name };
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await readFile(name));
  } catch (error) {
    if (error instanceof TypeError) throw new NotUsable(`${name}: it is not UTF-8 text; ${MEND}`);
    const isName = !/[./\\]/.test(name);
    throw new NotUsable(
      isName
        ? `There is no situation "${name}", and no file of that name. There are: ${SITUATION_NAMES.join(', ')}.`
        : `${name}: ${openingTrouble(error)}`,
    );
  }
  try {
    return { kind: 'phrases', phrases: phrasesIn(text) };
  } catch (error) {
    throw error instanceof NotUsable ? new NotUsable(`${name}: ${error.message}`) : error;
  }
}

/**
 * The phrases of a JSON list, in lower case with single spaces, each once.
 * @throws NotUsable that names the place in the list
 */
export function phrasesIn(text: string): readonly string[] {
  const list = parsed(text);
  if (!Array.isArray(list)) throw new NotUsable(`it holds no list; ${MEND}`);
  if (list.length === 0) throw new NotUsable(`its list is empty; ${MEND}`);
  if (list.length > MOST_PHRASES)
    throw new NotUsable(`its list has ${list.length} phrases; at most ${MOST_PHRASES} are taken; leave some out`);
  return [...new Set(list.map(phraseAt))];
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new NotUsable(`it is not JSON (${error instanceof Error ? error.message : String(error)}); ${MEND}`);
  }
}

function phraseAt(entry: unknown, at: number): string {
  const place = `entry ${at + 1} of the list`;
  if (typeof entry !== 'string') throw new NotUsable(`${place} is no text; ${MEND}`);
  const phrase = entry.trim().toLowerCase().replace(/\s+/g, ' ');
  if (phrase === '') throw new NotUsable(`${place} is empty; write words, or leave it out`);
  if (phrase.length > LONGEST_PHRASE)
    throw new NotUsable(`${place} has ${phrase.length} characters; at most ${LONGEST_PHRASE} are taken; shorten it`);
  if (!/^[a-z' -]+$/.test(phrase))
    throw new NotUsable(`${place} is ${JSON.stringify(entry)}; write words of letters alone, numbers too ("one two")`);
  return phrase;
}
