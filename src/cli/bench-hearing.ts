/**
 * What hearing is good for, on recordings: `tsx src/cli/bench-hearing.ts [--every N] RECORDINGS…`,
 * `tsx src/cli/bench-hearing.ts --talk FOLDER [--at SITUATION] [--end words]`,
 * `tsx src/cli/bench-hearing.ts --hush RECORDINGS…`, `tsx src/cli/bench-hearing.ts --loop RECORDINGS…`, and `tsx src/cli/bench-hearing.ts --hours N`.
 *
 * First, how soon an utterance is decided on after the end of speech: by the words and the pause, and by the engine's own
 * end, on the same recordings in the same run, with the ratio, and what it costs. Then, with `--talk`, what other people's
 * talk sets off in an hour; with `--hush`, how a spoken "stop" hushes the app's own voice; with `--loop`, what becomes of readings that are read
 * back and said again; with `--hours`, whether a shift
 * of listening makes memory grow. Decoding runs faster than the sound, with the time that it took added up as if it had
 * been spoken.
 */
import path from 'node:path';
import { parseArgs } from 'node:util';
import { isSituationName, type SituationName } from '../language/named-situations.ts';
import type { Sound } from '../speaking/sound.ts';
import { openEars, type Ears } from './bench-hearing/host.ts';
import type { Ending, Heard } from './bench-hearing/page.ts';
import { listenFor } from './bench-hearing/hours.ts';
import { benchLoop } from './bench-hearing/loop.ts';
import { benchHush } from './bench-hearing/hush.ts';
import type { Place } from './bench-hearing/places.ts';
import { shopSpeech } from './bench-hearing/shop.ts';
import { inputsOf, type Input } from './hear/inputs.ts';
import { readRecording } from './hear/wav-file.ts';

const MODEL = path.resolve(import.meta.dirname, '../../models/bothhands-en-small.tar.gz');

/** Something said, and the moment at which it is heard. */
interface Trial {
  readonly kind: string;
  readonly said: string;
  readonly place: Place;
  readonly sound: () => Promise<Sound> | Sound;
}

/** A number of at least 0 and at most 1 stands for the part of the values that lie below. */
const quantile = (values: readonly number[], part: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))] ?? NaN;

/** Recordings of words and digits that people said alone or in a row. */
function trialsOf(inputs: readonly Input[]): readonly Trial[] {
  const said = (kind: string): readonly Input[] => inputs.filter(({ listed }) => listed?.kind === kind);
  const trial = (kind: string, place: Place, { file, listed }: Input): Trial => ({
    kind,
    said: listed?.transcript ?? '',
    place,
    sound: async () => (await readRecording(file)).sound,
  });
  const words = said('isolated');
  const phrases = [...new Set(words.map(({ listed }) => listed?.transcript ?? ''))];
  const numbers = said('continuous').filter(({ listed }) => NUMBERS.test(listed?.transcript ?? ''));
  return [
    ...words.map((input) => trial('people: a word that nothing can follow', { kind: 'answers', phrases }, input)),
    ...said('digit-string (concatenated)').map((input) =>
      trial('people: three digits, all that the tool shows', { kind: 'three figures' }, input),
    ),
    ...numbers.map((input) => trial('people: a number that may go on', { kind: 'situation', name: 'reading' }, input)),
  ];
}

const NUMBERS =
  /^((zero|oh|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|[a-z]+teen|[a-z]+ty|hundred|and)( |$))+$/;

async function shopTrials(): Promise<readonly Trial[]> {
  return (await shopSpeech()).map(({ at, ...said }) => ({ ...said, place: { kind: 'situation', name: at } }));
}

interface Timed {
  readonly kind: string;
  readonly engine: number;
  readonly words: number;
  /** Until it is carried out: nothing can follow any more. */
  readonly done: number;
}

/** Both ears on every trial. Only what both hear alike, whole and at once, is timed; how often that is, is told. */
async function endOfUtterance(ears: Ears, trials: readonly Trial[]): Promise<void> {
  const timed: Timed[] = [];
  const right = new Map<string, { all: number; engine: number; words: number }>();
  for (const { kind, said, place, sound } of trials) {
    const recording = await sound();
    const [engine, words] = [await ears.hear(recording, place, 'engine'), await ears.hear(recording, place, 'words')];
    const count = right.get(kind) ?? { all: 0, engine: 0, words: 0 };
    count.all += 1;
    if (isHeard(engine, said)) count.engine += 1;
    if (isHeard(words, said)) count.words += 1;
    else console.log(`  ${said}: “${textsOf(engine)}”, now “${textsOf(words)}”`);
    right.set(kind, count);
    const last = words.at(-1);
    const [before, now, done] = [engine.at(-1)?.decision ?? null, last?.decision ?? null, last?.done ?? null];
    if (textsOf(engine) === textsOf(words) && before !== null && now !== null && done !== null)
      timed.push({ kind, engine: before, words: now, done });
  }
  console.log('\nFrom the end of speech to the decision, in ms: median and 95th percentile');
  for (const kind of [...right.keys(), ALL]) {
    const of = timed.filter((each) => kind === ALL || each.kind === kind);
    const at = (who: 'engine' | 'words' | 'done', part: number): string =>
      quantile(
        of.map((each) => each[who]),
        part,
      ).toFixed(0);
    const ratio =
      quantile(
        of.map(({ engine }) => engine),
        0.5,
      ) /
      quantile(
        of.map(({ words }) => words),
        0.5,
      );
    const count = right.get(kind);
    const heard = count ? `; heard right of ${count.all}: ${count.engine}, now ${count.words}` : '';
    console.log(
      `${kind} (${of.length}): engine ${at('engine', 0.5)} and ${at('engine', 0.95)}, now ${at('words', 0.5)} and ${at('words', 0.95)} (carried out ${at('done', 0.5)} and ${at('done', 0.95)}), ${ratio.toFixed(2)} times faster${heard}`,
    );
  }
}

const ALL = 'All';
const textsOf = (heard: readonly Heard[]): string => heard.map(({ text }) => text).join(' / ');
const isHeard = (heard: readonly Heard[], said: string): boolean => textsOf(heard) === said;

const ENDINGS: readonly Ending[] = ['engine', 'words'];
const TALK_AT: readonly SituationName[] = ['reading', 'confirm', 'step', 'standing-by'];

/** What hearing costs, and how much memory it takes. */
async function costOf(ears: Ears): Promise<void> {
  const { sound, decoding, ready } = await ears.cost();
  const { engine, all } = await ears.memory();
  const mebibytes = (bytes: number | null): string =>
    bytes === null ? 'unknown' : `${(bytes / 2 ** 20).toFixed(0)} MiB`;
  console.log(
    `\nDecoding takes ${(decoding / sound).toFixed(3)} of real time; ready ${ready.toFixed(0)} ms after it was asked for, with a kept model; memory: engine at most ${mebibytes(engine)}, page and workers of two ears ${mebibytes(all)}`,
  );
}

/** What other talk sets off: what would be carried out at once, and what would be asked about. */
async function falseAccepts(
  ears: Ears,
  inputs: readonly Input[],
  at: readonly SituationName[],
  endings: readonly Ending[],
): Promise<void> {
  for (const name of at) {
    let hours = 0;
    const taken = { engine: { accepted: 0, asked: 0 }, words: { accepted: 0, asked: 0 } };
    for (const { file } of inputs) {
      const { sound } = await readRecording(file);
      hours += sound.samples.length / sound.rate / 3600;
      for (const ending of endings) {
        for (const { text, meaning, isAsked, from } of await ears.hear(sound, { kind: 'situation', name }, ending)) {
          if (meaning === null) continue;
          taken[ending][isAsked ? 'asked' : 'accepted'] += 1;
          console.log(
            `  ${path.basename(file)} ${from.toFixed(1)} s (${ending}): “${text}” taken for ${meaning}${isAsked ? ', asked about' : ''}`,
          );
        }
      }
    }
    const rates = endings.map(rateOf(taken, hours)).join('; ');
    console.log(`At “${name}”, ${(hours * 60).toFixed(1)} minutes of other talk; an hour: ${rates}`);
  }
}

const rateOf =
  (taken: Readonly<Record<Ending, { readonly accepted: number; readonly asked: number }>>, hours: number) =>
  (ending: Ending): string =>
    `ended by the ${ending}, ${(taken[ending].accepted / hours).toFixed(1)} accepted and ${(taken[ending].asked / hours).toFixed(1)} asked about`;

const isInput = (input: object): input is Input => 'listed' in input;
const all = async (names: readonly string[]): Promise<readonly Input[]> =>
  (await Promise.all(names.map(inputsOf))).flat().filter(isInput);

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    every: { type: 'string', default: '1' },
    talk: { type: 'string', multiple: true, default: [] },
    at: { type: 'string', multiple: true, default: [...TALK_AT] },
    end: { type: 'string', multiple: true, default: [...ENDINGS] },
    hours: { type: 'string', default: '0' },
    hush: { type: 'boolean', default: false },
    loop: { type: 'boolean', default: false },
  },
});
const ears = await openEars(MODEL);
try {
  if (values.hush) await benchHush(ears, await all(positionals));
  else if (values.loop) await benchLoop(ears, await all(positionals));
  else if (positionals.length > 0) {
    const trials = [...trialsOf(await all(positionals)), ...(await shopTrials())];
    await endOfUtterance(
      ears,
      trials.filter((_, at) => at % Number(values.every) === 0),
    );
    await costOf(ears);
  }
  if (values.talk.length > 0) {
    const endings = ENDINGS.filter((ending) => values.end.includes(ending));
    await falseAccepts(ears, await all(values.talk), values.at.filter(isSituationName), endings);
  }
  if (Number(values.hours) > 0) await listenFor(ears, Number(values.hours));
} finally {
  await ears.close();
}
