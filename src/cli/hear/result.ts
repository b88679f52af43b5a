/** What came of one recording. */
import type { Situation } from '../../language/situation.ts';
import type { Listed } from './inputs.ts';
import { intentInWords, intentLine, type IntentLine } from './intent.ts';
import type { Outcome } from './judge.ts';
import type { HeardUtterance } from './page.ts';

export interface Result {
  readonly file: string;
  readonly listed: Listed | null;
  readonly utterances: readonly HeardUtterance[];
}

/** All that was heard in it. */
export const textOf = ({ utterances }: Result): string => utterances.map(({ text }) => text).join(' ');

/** The utterance that stands for the recording: of several, the first that was accepted, else the first that was asked. */
export const chosen = ({ utterances }: Result): HeardUtterance | null =>
  (['accepted', 'asked', 'refused'] satisfies Outcome[])
    .flatMap((outcome) => utterances.find((utterance) => utterance.outcome === outcome) ?? [])
    .at(0) ?? null;

interface UtteranceLine {
  readonly text: string;
  readonly intent: IntentLine | null;
  readonly outcome: Outcome;
  readonly decisionMs: number | null;
  readonly doneMs: number | null;
}

/** One recording as a JSON object. */
export function jsonOf(result: Result, situation: Situation): object {
  const { file, listed, utterances } = result;
  const line = ({ text, meaning, outcome, decisionMs, doneMs }: HeardUtterance): UtteranceLine => ({
    text,
    intent: meaning && intentLine(meaning, situation),
    outcome,
    decisionMs,
    doneMs,
  });
  const one = chosen(result);
  return {
    file,
    ...(listed ? { transcript: listed.transcript } : {}),
    text: textOf(result),
    words: utterances.flatMap(({ words }) =>
      words.map(({ word, start, end, confidence }) => ({
        word,
        start: thousandths(start),
        end: thousandths(end),
        conf: thousandths(confidence),
      })),
    ),
    intent: one?.meaning ? intentLine(one.meaning, situation) : null,
    outcome: one?.outcome ?? 'refused',
    decisionMs: one?.decisionMs ?? null,
    doneMs: one?.doneMs ?? null,
    ...(utterances.length > 1 ? { utterances: utterances.map(line) } : {}),
  };
}

/** One recording in lines for a person. */
export function linesOf(result: Result, situation: Situation): readonly string[] {
  const { file, listed, utterances } = result;
  const said = listed ? [`  said: ${listed.transcript || '(nothing for us)'}`] : [];
  if (utterances.length === 0) return [`${file}: nothing heard`, ...said];
  return [
    `${file}:`,
    ...said,
    ...utterances.flatMap(({ text, words, meaning, outcome, says, decisionMs, doneMs }) => [
      `  heard: ${text}`,
      `  words: ${words.map(({ word, start, end, confidence }) => `${word} ${start.toFixed(2)}–${end.toFixed(2)} s (${confidence.toFixed(2)})`).join(', ')}`,
      `  ${outcome}: ${meaning ? intentInWords(intentLine(meaning, situation)) : 'means nothing here'}${says === null ? '' : `. Says: ${says}`}`,
      `  decided ${decisionMs === null ? 'at an unknown time: no end of speech can be told from the energy' : `${decisionMs} ms after the end of speech`}${doneMs === decisionMs ? '' : `, carried out after ${doneMs} ms`}`,
    ]),
  ];
}

const thousandths = (value: number): number => Math.round(value * 1000) / 1000;
