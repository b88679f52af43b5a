/** Says of sealed files whether they are as they were sealed: `tsx src/cli/verify.ts FILE…`, one line a file. */
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { SessionFile } from '../record/sealed-file.ts';
import { endWithReader, exitCodeFor, openFile, printLine, verdictLine, verdictObject } from './verify-file.ts';

const USAGE = `Usage: npm run verify -- [--key THUMBPRINT]… [--json] FILE…
Says of each sealed file of a session whether it is as it was sealed, and which entry is the first that is not.
  FILE              a sealed file; "-" reads the names of files from standard input, one a line
  --key THUMBPRINT  of a key that is known (may be given several times): a seal by any other is then not good enough
  --json            one object a line
Exit code 0: all intact; 1: one is not intact; 2: one is not readable, or not used as above.`;

interface Options {
  readonly files: readonly string[];
  readonly keys: readonly string[];
  readonly json: boolean;
  readonly help: boolean;
}

async function main(args: readonly string[]): Promise<number> {
  const options = optionsOf(args);
  if (options === null || (options.files.length === 0 && !options.help)) {
    console.error(USAGE);
    return 2;
  }
  if (options.help) {
    console.log(USAGE);
    return 0;
  }
  endWithReader();
  let worst = 0;
  const print = async ({ name, file }: Opened): Promise<void> => {
    await printLine(options.json ? JSON.stringify(verdictObject(name, file)) : verdictLine(name, file));
    worst = Math.max(worst, exitCodeFor(file));
  };
  // However many files there are, a few are in memory. They are told of in the order in which they were named.
  const underWay: Promise<Opened>[] = [];
  for await (const name of namesIn(options.files)) {
    underWay.push(openFile(name, options.keys).then((file) => ({ name, file })));
    const first = underWay.length === AT_ONCE ? underWay.shift() : undefined;
    if (first) await print(await first);
  }
  for (const opened of underWay) await print(await opened);
  return worst;
}

interface Opened {
  readonly name: string;
  readonly file: SessionFile;
}

/** Files that are read and checked side by side: hashes are worked out elsewhere, and one file alone leaves a core idle. */
const AT_ONCE = 4;

async function* namesIn(files: readonly string[]): AsyncGenerator<string> {
  for (const file of files) {
    if (file !== '-') yield file;
    else for await (const line of createInterface({ input: process.stdin })) if (line !== '') yield line;
  }
}

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
    return { files: positionals, keys: values.key, json: values.json, help: values.help };
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
