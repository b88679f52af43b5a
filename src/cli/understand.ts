/** Says what an utterance means at a moment of a job: `tsx src/cli/understand.ts "stud four at two four"`. */
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { questionAbout } from '../language/doubt.ts';
import { isSituationName, SITUATION_NAMES, stateIn, type SituationName } from '../language/named-situations.ts';
import { sayRefusal } from '../language/say-refusal.ts';
import { situationOf, type Situation } from '../language/situation.ts';
import { typedWords } from '../language/typed.ts';
import { understand } from '../language/understand.ts';
import type { Meaning, SaidReading } from '../session/intent.ts';
import type { SessionState } from '../session/state.ts';
import type { Unit } from '../units/index.ts';

const USAGE = `Usage: npm run understand -- [--phrases SITUATION] [--json] TEXT…
Says what an utterance means at a moment of a job, and what would be asked about it. Each TEXT is one utterance, in
quotes; without any, each line of standard input is one. Figures may be typed: "4 24.5" is stud four at 24.5.
  --phrases SITUATION  what may be said at that moment (default: reading), one of:
                       ${SITUATION_NAMES.slice(0, 7).join(', ')},
                       ${SITUATION_NAMES.slice(7).join(', ')}
  --json               one object a line: text, intents, ambiguous, ask
Exit code 0: done; 2: not used as above.`;

/** One meaning, all values as text. */
interface IntentLine {
  readonly kind: Meaning['kind'];
  readonly fastener: string | null;
  readonly value: string | null;
  readonly unit: Unit<'torque'> | null;
  /** Of an answer to a check. */
  readonly outcome?: string;
}

/** What an utterance means, as it is printed. */
interface Explained {
  readonly text: string;
  /** The meaning; every possible one where it is asked about; none where it means nothing. */
  readonly intents: readonly IntentLine[];
  readonly ambiguous: boolean;
  /** The question, as it would be spoken. */
  readonly ask: string | null;
}

function explain(text: string, state: SessionState): Explained {
  const situation = situationOf(state);
  const words = typedWords(text);
  const understood = understand(
    words.map((word) => ({ word, confidence: 1 })),
    situation,
  );
  if (understood.kind === 'nothing') return { text, intents: [], ambiguous: false, ask: understood.ask ?? null };
  const { meaning } = understood;
  const isCorrection = words[0] === 'correction';
  if (meaning.kind !== 'unclear') {
    const [doubt] = meaning.kind === 'reading' || meaning.kind === 'correction' ? (meaning.doubts ?? []) : [];
    const ask = doubt === undefined ? null : questionAbout(doubt);
    return { text, intents: [intentOf(meaning, situation)], ambiguous: false, ask };
  }
  const kind = isCorrection ? 'correction' : 'reading';
  return {
    text,
    intents: meaning.readings.map((reading) => intentOf({ kind, reading }, situation)),
    ambiguous: meaning.readings.length > 1,
    ask: sayRefusal(state, { code: 'unclear', doubt: meaning.doubt, readings: meaning.readings }),
  };
}

function intentOf(meaning: Meaning, { reading, correction }: Situation): IntentLine {
  const { kind } = meaning;
  switch (kind) {
    case 'reading':
      return readingLine(kind, meaning.reading, reading?.unit);
    case 'correction':
      return readingLine(kind, meaning.reading, correction?.unit);
    case 'witness':
      return readingLine(kind, meaning.reading, reading?.unit);
    case 'click':
      return { kind, ...NO_VALUE, fastener: meaning.fastener === null ? null : String(meaning.fastener) };
    case 'answer':
      return { kind, ...NO_VALUE, outcome: meaning.outcome };
    default:
      return { kind, ...NO_VALUE };
  }
}

const NO_VALUE = { fastener: null, value: null, unit: null };

const readingLine = (
  kind: Meaning['kind'],
  { fastener, value }: SaidReading,
  unit: Unit<'torque'> | undefined,
): IntentLine => ({ kind, fastener: fastener === null ? null : String(fastener), value, unit: unit ?? null });

/** "stud four at two four: reading, number 4 at 24 N·m". */
function inWords({ text, intents, ask }: Explained): string {
  const meanings = intents.map(({ kind, fastener, value, unit, outcome }) =>
    [
      kind,
      ...(fastener === null && value === null ? [] : [', ']),
      ...(fastener === null ? [] : [`number ${fastener}`]),
      ...(fastener === null || value === null ? [] : [' at ']),
      ...(value === null ? [] : [`${value} ${unit}`]),
      ...(outcome === undefined ? [] : [`: ${outcome}`]),
    ].join(''),
  );
  const meaning = meanings.length === 0 ? 'nothing' : meanings.join('; or ');
  return `${text}: ${meaning}${ask === null ? '' : `. Asks: ${ask}`}`;
}

async function main(args: readonly string[]): Promise<number> {
  const asked = optionsOf(args);
  if ('trouble' in asked) {
    console.error(`${asked.trouble}\n\n${USAGE}`);
    return 2;
  }
  const { situation, json, help, texts } = asked;
  if (help) {
    console.log(USAGE);
    return 0;
  }
  const state = stateIn(situation);
  const print = (text: string): void => {
    const explained = explain(text, state);
    console.log(json ? JSON.stringify(explained) : inWords(explained));
  };
  texts.forEach(print);
  if (texts.length === 0) {
    for await (const line of createInterface({ input: process.stdin })) if (line.trim() !== '') print(line.trim());
  }
  return 0;
}

interface Options {
  readonly situation: SituationName;
  readonly json: boolean;
  readonly help: boolean;
  readonly texts: readonly string[];
}

function optionsOf(args: readonly string[]): Options | { readonly trouble: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        phrases: { type: 'string', default: 'reading' },
        json: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const { phrases: situation, json, help } = values;
    if (!isSituationName(situation)) {
      return { trouble: `There is no situation "${situation}". There are: ${SITUATION_NAMES.join(', ')}.` };
    }
    return { situation, json, help, texts: positionals };
  } catch (error) {
    if (error instanceof TypeError) return { trouble: error.message };
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
