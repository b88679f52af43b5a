/** Says of sealed files whether they are as they were sealed: `tsx src/cli/verify.ts FILE…`, one line a file. */
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { SessionFile } from '../record/sealed-file.ts';
import { endWithReader, exitCodeFor, inOrder, openFile, printLine, verdictLine, verdictObject } from './verify-file.ts';

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
  const open = async (name: string): Promise<Opened> => ({ name, file: await openFile(name, options.keys) });
  for await (const { name, file } of inOrder(namesIn(options.files), open)) {
    await printLine(options.json ? JSON.stringify(verdictObject(name, file)) : verdictLine(name, file));
    worst = Math.max(worst, exitCodeFor(file));
  }
  return worst;
}

interface Opened {
  readonly name: string;
  readonly file: SessionFile;
}

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
