/** Decodes recordings as the app would: `tsx src/cli/hear.ts --phrases reading recordings/`. */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { missedWords } from '../language/phrases.ts';
import type { HearBench } from './hear/bench.ts';
import { inputsOf, type Input } from './hear/inputs.ts';
import { judgeOf, type Judge, type Sayable } from './hear/judge.ts';
import { optionsOf, USAGE, type Options } from './hear/options.ts';
import { NotUsable, openingTrouble } from './hear/refusal.ts';
import { reportOf } from './hear/report.ts';
import { jsonOf, linesOf, type Result } from './hear/result.ts';
import { sayableOf } from './hear/sayable.ts';
import { readRecording } from './hear/wav-file.ts';
import { listModels } from './served-models.ts';

const MODELS = path.resolve(import.meta.dirname, '../../models');

async function main(args: readonly string[]): Promise<number> {
  const options = optionsOf(args);
  if ('trouble' in options) {
    console.error(`${options.trouble}\n\n${USAGE}`);
    return 2;
  }
  if (options.help) {
    console.log(USAGE);
    return 0;
  }
  const inputs = (await Promise.all(options.names.map(inputsOf))).flat();
  for (const input of inputs) if ('trouble' in input) console.error(`${input.file}: ${input.trouble}.`);
  const usable = inputs.filter((input): input is Input => !('trouble' in input));
  try {
    const sayable = await sayableOf(options.phrases);
    const results = usable.length === 0 ? [] : await hear(usable, sayable, options);
    return results.length < inputs.length ? 1 : 0;
  } catch (error) {
    if (!(error instanceof NotUsable)) throw error;
    console.error(error.message);
    return 2;
  }
}

/**
 * Decodes one recording after another and prints each at once.
 * @throws NotUsable when nothing can be decoded at all
 */
async function hear(inputs: readonly Input[], sayable: Sayable, { model, json }: Options): Promise<readonly Result[]> {
  const judge = judgeOf(sayable);
  const archive = await modelFile(model);
  let bench = await benchFor(archive, sayable, judge);
  const results: Result[] = [];
  try {
    for (const { file, listed } of inputs) {
      try {
        const { sound, notes } = await readRecording(file);
        for (const note of notes) console.error(`${file}: ${note}.`);
        const decoded = await bench.decode(sound);
        if (!decoded.ok) throw new NotUsable(`it stopped the recogniser (${decoded.failure.detail}); try a part of it`);
        const result = { file, listed, utterances: decoded.utterances };
        results.push(result);
        const { situation } = judge;
        console.log(json ? JSON.stringify(jsonOf(result, situation)) : linesOf(result, situation).join('\n'));
      } catch (error) {
        const isRefused = error instanceof NotUsable;
        console.error(
          `${file}: ${isRefused ? error.message : `the browser’s page was lost (${messageOf(error)}); try it again`}.`,
        );
        if (isRefused) continue;
        // Only this recording is lost with it.
        await bench.close();
        bench = await benchFor(archive, sayable, judge);
      }
    }
  } finally {
    await bench.close();
  }
  const trials = results.flatMap(({ file, listed, utterances }) => (listed ? [{ file, ...listed, utterances }] : []));
  if (trials.length > 0) (json ? console.error : console.log)(['', ...reportOf(trials, judge)].join('\n'));
  return results;
}

/** @throws NotUsable when there is no such file */
async function modelFile(asked: string | null): Promise<string> {
  const [first] = asked === null ? await listModels(MODELS) : [];
  const file = asked ?? (first && path.join(MODELS, first.file));
  if (file === undefined) throw new NotUsable('There is no speech model in models/. Name one with --model.');
  const trouble = await stat(file).then((found) => (found.isFile() ? null : 'it is no file'), openingTrouble);
  if (trouble !== null) throw new NotUsable(`${file}: ${trouble}. A speech model is a .tar.gz or .zip file.`);
  return file;
}

/** Says which words cannot be heard. @throws NotUsable when the model or the browser cannot be used */
async function benchFor(model: string, sayable: Sayable, judge: Judge): Promise<HearBench> {
  // Server and browser are large, and what is used wrongly should be told at once.
  const { openBench } = await import('./hear/bench.ts');
  const bench = await openBench(model, sayable).catch((error: unknown) => {
    throw new NotUsable(messageOf(error));
  });
  const { prepared } = bench;
  if (!prepared.ok) {
    await bench.close();
    const { code, detail } = prepared.failure;
    throw new NotUsable(`${model}: ${code} (${detail}). Name another with --model: a small Vosk model.`);
  }
  const missed = sayable.kind === 'phrases' ? prepared.missing : missedWords(judge.situation, prepared.missing);
  if (missed.length > 0) console.error(`The model lacks ${missed.join(', ')}: phrases with such a word are left out.`);
  if (!prepared.isSayable) {
    await bench.close();
    throw new NotUsable('No phrase is left that the model can hear. Use other words.');
  }
  return bench;
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
