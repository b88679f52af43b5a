/** Tells what happened in a session: `tsx src/cli/replay.ts FILE`, the verdict first, then the story, then the readings. */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { SessionFile } from '../record/sealed-file.ts';
import { soundAgreement } from '../record/sound-agreement.ts';
import { stepReadingsOf, stepReadingsText, storyOf, storyText } from './replay-text.ts';
import {
  endWithReader,
  exitCodeFor,
  openFile,
  printable,
  printLine,
  verdictLine,
  verdictObject,
} from './verify-file.ts';

const USAGE = `Usage: npm run replay -- [--key THUMBPRINT]… [--json] FILE
Says whether a sealed file of a session is as it was sealed, and tells what happened in it, as far as it can be trusted:
each entry in words with its time (UTC), then which value stands for each fastener in each pass, its verdict, and whose;
below, every other reading with what became of it.
  --key THUMBPRINT  of a key that is known (may be given several times): a seal by any other is then not good enough
  --json            one object a line: the verdict, then each entry, then each step that tightens
Exit code 0: intact; 1: not intact; 2: not readable, or not used as above.`;

async function main(args: readonly string[]): Promise<number> {
  const options = optionsOf(args);
  if (options === null) {
    console.error(USAGE);
    return 2;
  }
  if ('help' in options) {
    console.log(USAGE);
    return 0;
  }
  endWithReader();
  const file = await openFile(options.file, options.keys);
  const tell = options.json ? asObjects : asText;
  for (const line of tell(options.file, file)) await printLine(line);
  return exitCodeFor(file);
}

function* asText(name: string, file: SessionFile): Generator<string> {
  yield verdictLine(name, file);
  if (file.kind === 'refused' || file.session.kind === 'unreadable') return;
  const { record } = file.session;
  const agreement = soundAgreement(record);
  if (agreement !== null) yield printable(agreement);
  yield '';
  for (const line of storyOf(record)) yield printable(storyText(line));
  if (record.entries.length < record.found)
    yield `What follows, from entry ${record.entries.length} on, cannot be trusted and is not told.`;
  for (const step of stepReadingsOf(record)) yield ['', ...stepReadingsText(step).map(printable)].join('\n');
}

function* asObjects(name: string, file: SessionFile): Generator<string> {
  yield JSON.stringify({ kind: 'verdict', ...verdictObject(name, file) });
  if (file.kind === 'refused' || file.session.kind === 'unreadable') return;
  const { record } = file.session;
  for (const line of storyOf(record)) yield JSON.stringify({ kind: 'entry', ...line });
  for (const step of stepReadingsOf(record)) yield JSON.stringify({ kind: 'readings', ...step });
}

type Options =
  { readonly help: true } | { readonly file: string; readonly keys: readonly string[]; readonly json: boolean };

function optionsOf(args: readonly string[]): Options | null {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        key: { type: 'string', multiple: true, default: [] },
        json: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return { help: true };
    const [file, ...more] = positionals;
    return file === undefined || more.length > 0 ? null : { file, keys: values.key, json: values.json };
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
