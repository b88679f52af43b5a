// Runs in the page: the app's own ear and understanding, on recordings in place of the microphone.
import { createHearing } from '../../hearing/hearing.ts';
import { keptModel } from '../../hearing/model-cache.ts';
import type { HearingFailure } from '../../hearing/failures.ts';
import type { Hearing, Utterance, Word } from '../../hearing/types.ts';
import { judgeIn } from '../../language/completeness.ts';
import { judgeOf, type Judge, type Judged, type Sayable } from './judge.ts';
import { speechEnd } from './speech-end.ts';
import { Shown } from './shown.ts';
import { Tape } from './tape.ts';

/** A whole utterance and what came of it. Times of words are in seconds of the recording. */
export interface HeardUtterance extends Utterance, Judged {
  /**
   * From the end of speech to when the decision that stood was shown, in milliseconds; null where the energy shows no end of
   * speech.
   */
  readonly decisionMs: number | null;
  /** The same, to when it was carried out: nothing that was shown could follow any more. */
  readonly doneMs: number | null;
}

export type Decoded =
  | { readonly ok: true; readonly utterances: readonly HeardUtterance[] }
  | { readonly ok: false; readonly failure: HearingFailure };

/** Which words the model lacks, and whether any phrase is left without them. */
export type Prepared =
  | { readonly ok: true; readonly missing: readonly string[]; readonly isSayable: boolean }
  | { readonly ok: false; readonly failure: HearingFailure };

/** The recogniser ends a word up to so much too early; what is louder later is no speech, but a blow or the next word. */
const WORD_TAIL_S = 0.25;

interface Ear {
  readonly hearing: Hearing;
  readonly tape: Tape;
  readonly rate: number;
}

let judge: Judge | null = null;
let ear: Ear | null = null;

/** Loads the model at this address and takes what may be said. Called once, before all recordings. */
async function prepare(model: { readonly url: string; readonly name: string }, sayable: Sayable): Promise<Prepared> {
  judge = judgeOf(sayable);
  const hearing = createHearing({ source: new Tape(16_000) });
  const blob = await (await fetch(model.url)).blob();
  const outcome = await hearing.loadModel({ kind: 'file', file: new File([blob], model.name) });
  if (!outcome.ok) return outcome;
  const missing = hearing.setPhrases(judge.phrases);
  await hearing.close();
  const has = (phrase: string): boolean => !phrase.split(' ').some((word) => missing.includes(word));
  return { ok: true, missing, isSayable: judge.phrases?.some(has) ?? true };
}

/** Decodes the recording at this address: mono samples as 32-bit floats of this machine's byte order. */
async function decode(url: string, rate: number): Promise<Decoded> {
  const samples = new Float32Array(await (await fetch(url)).arrayBuffer());
  const { hearing, tape } = await earFor(rate);
  const heard: {
    readonly utterance: Utterance;
    readonly judged: Judged;
    readonly decided: number;
    readonly done: number;
  }[] = [];
  const shown = new Shown(() => tape.now());
  const stopShowing = hearing.onProvisional((utterance) => {
    const judged = utterance && judgeNow().judge(utterance.words, utterance.again);
    shown.show(judged?.meaning && judgeNow().isShown(judged.meaning) ? (utterance?.text ?? null) : null);
  });
  const stop = hearing.onUtterance((utterance) => {
    const judged = judgeNow().judge(utterance.words, utterance.again);
    const words = utterance.words.map((word) => placed(word, tape));
    const done = tape.now();
    heard.push({ utterance: { ...utterance, words }, judged, decided: shown.since(utterance.text) ?? done, done });
  });
  let failed: HearingFailure | null = null;
  const unsubscribe = hearing.subscribe((state) => {
    if (state.kind === 'failed') failed = state.failure;
  });
  await tape.play(samples, () => hearing.state.kind === 'hearing');
  stop();
  stopShowing();
  unsubscribe();
  if (failed) {
    await closeEar();
    return { ok: false, failure: failed };
  }
  return {
    ok: true,
    utterances: heard.map(({ utterance, judged, decided, done }) => {
      const last = utterance.words.at(-1)?.end ?? Infinity;
      const end = speechEnd(samples, rate, last + WORD_TAIL_S);
      const after = (time: number): number | null => (end === null ? null : Math.round((time - end) * 1000));
      return { ...utterance, ...judged, decisionMs: after(decided), doneMs: after(done) };
    }),
  };
}

const judgeNow = (): Judge => {
  if (!judge) throw new Error('Nothing is decoded before it is prepared.');
  return judge;
};

const placed = (word: Word, tape: Tape): Word => ({
  ...word,
  start: Math.max(0, tape.placeOf(word.start)),
  end: Math.max(0, tape.placeOf(word.end)),
});

/** One ear for all recordings of a rate in a row: its engine takes a second to start. */
async function earFor(rate: number): Promise<Ear> {
  if (ear?.rate === rate) return ear;
  await closeEar();
  const tape = new Tape(rate);
  const hearing = createHearing({ source: tape });
  const kept = await keptModel();
  if (!kept) throw new Error('The browser kept no model.');
  const { phrases, situation } = judgeNow();
  hearing.setPhrases(phrases, judgeIn(situation));
  const outcome = await hearing.loadModel({ kind: 'kept', ...kept });
  if (!outcome.ok) throw new Error(`${outcome.failure.code}: ${outcome.failure.detail}`);
  await hearing.listen();
  return (ear = { hearing, tape, rate });
}

async function closeEar(): Promise<void> {
  await ear?.hearing.close();
  ear = null;
}

const page = { prepare, decode };
declare global {
  /** What the command asks of its page. */
  var hearPage: typeof page;
}
globalThis.hearPage = page;
