/** Checks procedure files: `tsx src/cli/check.ts FILE…`, one line for each error, warning or sound file. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { quoted } from '../procedure/fault.ts';
import { lintProcedure } from '../procedure/lint.ts';
import { loadProcedure } from '../procedure/procedure.ts';

const USAGE = `Usage: npm run check -- FILE…
Checks procedure files. Each line is "FILE: path.to.field: what is wrong, what was expected".
Exit code 0: no error (perhaps warnings); 1: an error in a file; 2: not used as above.`;

interface Checked {
  readonly lines: readonly string[];
  readonly isFaulty: boolean;
}

async function check(file: string): Promise<Checked> {
  const text = await read(file);
  if ('trouble' in text) return { lines: [line(file, '', text.trouble)], isFaulty: true };
  const loaded = loadProcedure(text.content);
  if (loaded.kind === 'faulty') {
    return { lines: loaded.faults.map(({ path, message }) => line(file, path, message)), isFaulty: true };
  }
  const warnings = lintProcedure(loaded.procedure);
  const lines = warnings.map(({ path, message }) => line(file, path, `warning: ${message}`));
  return { lines: lines.length > 0 ? lines : [line(file, '', 'ok')], isFaulty: false };
}

const line = (file: string, path: string, message: string): string =>
  [shownFile(file), path, message].filter(Boolean).join(': ');

/** One fault is one line, whatever the file is called. */
const shownFile = (file: string): string => (/[\p{Cc}\u2028\u2029]/u.test(file) ? quoted(file) : file);

async function read(file: string): Promise<{ readonly content: string } | { readonly trouble: string }> {
  try {
    return { content: new TextDecoder('utf-8', { fatal: true }).decode(await readFile(file)) };
  } catch (error) {
    if (error instanceof TypeError) return { trouble: 'not readable as text, expected UTF-8' };
    return { trouble: `cannot be opened (${(error as NodeJS.ErrnoException).code ?? String(error)})` };
  }
}

async function main(files: readonly string[]): Promise<number> {
  if (files.length === 0 || files.some((file) => file.startsWith('-'))) {
    const isHelp = files.includes('--help') || files.includes('-h');
    (isHelp ? console.log : console.error)(USAGE);
    return isHelp ? 0 : 2;
  }
  const checked = await Promise.all(files.map(check));
  for (const text of checked.flatMap(({ lines }) => lines)) console.log(text);
  return checked.some(({ isFaulty }) => isFaulty) ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
