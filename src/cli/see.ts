/** Watches videos for gestures as the app's camera does: `tsx src/cli/see.ts FILE…`. */
import { fileURLToPath } from 'node:url';
import type { Gesture, Trouble } from '../gesture/gesture.ts';
import { createWatcher } from '../gesture/watcher.ts';
import { NotUsable } from './hear/refusal.ts';
import { optionsOf, USAGE, type Options } from './see/options.ts';
import { shotsOf } from './see/video.ts';
import { endWithReader, printLine } from './verify-file.ts';

const TROUBLES: Readonly<Record<Trouble, string>> = {
  covered: 'the lens is covered',
  black: 'the picture is black; give it light',
  frozen: 'the picture does not change any more',
  slow: 'there are too few frames a second',
};

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
  endWithReader();
  let code = 0;
  for (const file of options.files) {
    try {
      await see(file, options);
    } catch (error) {
      if (!(error instanceof NotUsable)) throw error;
      console.error(`${file}: ${error.message}.`);
      code = 1;
    }
  }
  return code;
}

/** Prints each gesture as soon as it is seen. @throws NotUsable where the file cannot be read on */
async function see(file: string, { json, rate, watcher: how }: Options): Promise<void> {
  const watcher = createWatcher(how);
  let [frames, gestures, last] = [0, 0, 0];
  let trouble: Trouble | null = null;
  for await (const { frame, time } of shotsOf(file, rate)) {
    const seen = watcher.see(frame, time);
    if (seen.kind === 'refused') throw new NotUsable(`at ${seconds(time)} s ${seen.why}`);
    frames += 1;
    last = time;
    if (watcher.trouble !== trouble) {
      trouble = watcher.trouble;
      if (trouble !== null) console.error(`${file}: ${seconds(time)} s: ${TROUBLES[trouble]}.`);
    }
    if (seen.kind !== 'gesture') continue;
    gestures += 1;
    await printLine(json ? JSON.stringify(objectOf(file, seen.gesture)) : lineOf(file, seen.gesture));
  }
  if (gestures === 0 && !json) await printLine(`${file}: no gesture in ${frames} frames, ${seconds(last)} s`);
}

const seconds = (milliseconds: number): string => (milliseconds / 1000).toFixed(2);
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

const lineOf = (file: string, { kind, confidence, from, to, why }: Gesture): string =>
  `${file}: ${seconds(from)}–${seconds(to)} s ${kind}, confidence ${confidence.toFixed(2)}: ${why}`;

const objectOf = (file: string, { kind, confidence, from, to, why }: Gesture) => ({
  file,
  gesture: kind,
  from: rounded(from / 1000, 3),
  to: rounded(to / 1000, 3),
  confidence: rounded(confidence, 3),
  why,
});

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
