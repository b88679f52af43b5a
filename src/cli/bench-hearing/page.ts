// Runs in the page: the same recordings into two ears, one that waits for the engine's own end of an utterance and one that
// decides by the words.
import { createHearing } from '../../hearing/hearing.ts';
import { keptModel } from '../../hearing/model-cache.ts';
import type { Hearing, Utterance } from '../../hearing/types.ts';
import { judgeIn } from '../../language/completeness.ts';
import { recogniserPhrases } from '../../language/phrases.ts';
import { isReadBack } from '../../language/provisional.ts';
import type { Situation } from '../../language/situation.ts';
import { understand } from '../../language/understand.ts';
import type { Meaning } from '../../session/intent.ts';
import { Shown } from '../hear/shown.ts';
import { speechEnd } from '../hear/speech-end.ts';
import { Tape } from '../hear/tape.ts';
import { listenForHush, type Announced, type Listened as ListenedForHush } from './hush-page.ts';
import { Shift, type Listened } from './listen.ts';
import { situationFor, type Place } from './places.ts';

/** Who decides that an utterance has ended. */
export type Ending = 'engine' | 'words';

export interface Heard {
  readonly text: string;
  /** What it means there; null for nothing. */
  readonly meaning: string | null;
  /** What is read back; null where it is no reading, or not known which. */
  readonly value: string | null;
  /** Whether it is questioned before it counts. */
  readonly isAsked: boolean;
  /** From the end of speech to when the decision is shown, in milliseconds; null where the energy shows no end of speech. */
  readonly decision: number | null;
  /** The same, to when it is carried out. */
  readonly done: number | null;
  /** Where its first word begins, in seconds of the recording. */
  readonly from: number;
}

/** What an ear that decides by the words has cost so far. */
export interface Cost {
  /** Sound that went through it, with the quiet around it, in seconds. */
  readonly sound: number;
  /** What that took, in seconds. */
  readonly decoding: number;
  /** From a model in the browser's keeping to the first listening, in milliseconds, the last time. */
  readonly ready: number;
}

interface Ear {
  readonly hearing: Hearing;
  readonly tape: Tape;
}

/** The recogniser ends a word up to so much too early. In seconds. */
const WORD_TAIL = 0.25;

let cost: Cost = { sound: 0, decoding: 0, ready: NaN };
const ears = new Map<Ending, Ear & { readonly rate: number }>();

/** Loads the model at this address into the browser's keeping. */
async function prepare(url: string): Promise<void> {
  const hearing = createHearing({ source: new Tape(16_000) });
  const blob = await (await fetch(url)).blob();
  const outcome = await hearing.loadModel({ kind: 'file', file: new File([blob], 'model.tar.gz') });
  if (!outcome.ok) throw new Error(outcome.failure.detail);
  await hearing.close();
}

async function earFor(ending: Ending, rate: number): Promise<Ear> {
  const known = ears.get(ending);
  if (known?.rate === rate) return known;
  await known?.hearing.close();
  const began = performance.now();
  const tape = new Tape(rate);
  const hearing = createHearing({ source: tape });
  const kept = await keptModel();
  if (!kept) throw new Error('The browser kept no model.');
  const outcome = await hearing.loadModel({ kind: 'kept', ...kept });
  if (!outcome.ok) throw new Error(outcome.failure.detail);
  await hearing.listen();
  cost = { ...cost, ready: performance.now() - began };
  const made = { hearing, tape, rate };
  ears.set(ending, made);
  return made;
}

/** Plays the recording at this address (32-bit floats) into an ear, at a moment of a job. */
async function hear(url: string, rate: number, place: Place, ending: Ending): Promise<readonly Heard[]> {
  const samples = new Float32Array(await (await fetch(url)).arrayBuffer());
  const situation = situationFor(place);
  const { hearing, tape } = await earFor(ending, rate);
  hearing.setPhrases(recogniserPhrases(situation), ending === 'words' ? judgeIn(situation) : undefined);
  const heard: Heard[] = [];
  const shown = new Shown(() => tape.now());
  const stopShowing = hearing.onProvisional((utterance) => {
    const understood = utterance && understand(utterance.words, situation, { again: utterance.again });
    const isShown = understood?.kind === 'meant' && isReadBack(understood.meaning);
    shown.show(isShown ? (utterance?.text ?? null) : null);
  });
  const stop = hearing.onUtterance((utterance) => {
    const since = shown.since(utterance.text);
    heard.push(heardAt(utterance, { tape, samples, rate, situation, since }));
  });
  const [from, began] = [tape.placeOf(0), performance.now()];
  await tape.play(samples, () => hearing.state.kind === 'hearing');
  stop();
  stopShowing();
  if (ending === 'words')
    cost = {
      ...cost,
      sound: cost.sound + from - tape.placeOf(0),
      decoding: cost.decoding + (performance.now() - began) / 1000,
    };
  return heard;
}

interface Where {
  readonly tape: Tape;
  readonly samples: Float32Array;
  readonly rate: number;
  readonly situation: Situation;
  /** When it was shown what the utterance comes to; null where that was not before its end. */
  readonly since: number | null;
}

function heardAt({ text, words, again }: Utterance, { tape, samples, rate, situation, since }: Where): Heard {
  const done = tape.now();
  const [first, last] = [words[0], words.at(-1)];
  const end = speechEnd(samples, rate, tape.placeOf(last?.end ?? Infinity) + WORD_TAIL);
  const understood = understand(words, situation, { again });
  return {
    text,
    meaning: understood.kind === 'meant' ? understood.meaning.kind : null,
    value:
      understood.kind === 'meant' && understood.meaning.kind === 'reading' ? understood.meaning.reading.value : null,
    isAsked: understood.kind === 'meant' && isQuestioned(understood.meaning),
    decision: end === null ? null : ((since ?? done) - end) * 1000,
    done: end === null ? null : (done - end) * 1000,
    from: tape.placeOf(first?.start ?? NaN),
  };
}

let shift: Shift | null = null;

/** Begins a shift of listening to the recording at this address, over and over. */
async function beginShift(url: string, rate: number): Promise<void> {
  shift = await Shift.begin(new Float32Array(await (await fetch(url)).arrayBuffer()), rate);
}

/** @param seconds of sound */
async function goOn(seconds: number): Promise<Listened> {
  if (!shift) throw new Error('No shift has begun.');
  return shift.listen(seconds);
}

const isQuestioned = (meaning: Meaning): boolean =>
  meaning.kind === 'unclear' || (meaning.kind === 'reading' && (meaning.doubts ?? []).length > 0);

/**
 * Plays the recording at this address into the ear for the words that hush the app's own voice.
 * @param length of what the microphone hears, in samples; after it comes the voice as it was given to the loudspeaker
 */
async function hush(
  url: string,
  rate: number,
  length: number,
  announced: Omit<Announced, 'voice'>,
): Promise<ListenedForHush> {
  const both = new Float32Array(await (await fetch(url)).arrayBuffer());
  return listenForHush(both.slice(0, length), rate, { ...announced, voice: both.slice(length) });
}

const page = { prepare, hear, cost: () => cost, beginShift, goOn, hush };
declare global {
  /** What the bench asks of its page. */
  var hearingBenchPage: typeof page;
}
globalThis.hearingBenchPage = page;
