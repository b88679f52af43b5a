/** Asks for time-stamps on sealed files, and looks at the answers: `tsx src/cli/stamp.ts FILE…`, one line a file. */
import { randomBytes } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { unpackParts } from '../record/container.ts';
import { toHex } from '../record/hash.ts';
import { openSessionFile } from '../record/sealed-file.ts';
import { imprintOf, NONCE_BYTES, readAnswer, readRequest, timeStampRequest } from '../record/time-stamp.ts';
import { endWithReader, exitCodeFor, printable, printLine, readSealed, verdictLine } from './verify-file.ts';

const USAGE = `Usage: npm run stamp -- FILE…
For each sealed file of a session that is intact: writes a request for a time-stamp on its seal (RFC 3161) beside it,
FILE.tsq. Send it to an authority of your choice, and keep its answer beside the file, as FILE.tsr:
  curl -H 'Content-Type: application/timestamp-query' --data-binary @FILE.tsq ADDRESS > FILE.tsr
Only a hash is sent. Where an answer is there, says whether it is for this seal and this request, and its time.
Whether the authority did sign it is not checked here, but by a tool that knows whom to trust:
  unzip -p FILE seal.jws > seal.jws && openssl ts -verify -in FILE.tsr -data seal.jws -CAfile AUTHORITIES.pem
A session that is saved again has a new seal: keep the very file that was stamped.
Exit code 0: asked for, or stamped; 1: not intact, not granted, or for something else; 2: not readable, or not used as above.`;

async function main(args: readonly string[]): Promise<number> {
  const files = filesIn(args);
  if (files === null) {
    console.error(USAGE);
    return 2;
  }
  if (files.length === 0) {
    console.log(USAGE);
    return 0;
  }
  endWithReader();
  let worst = 0;
  for (const file of files) {
    const { line, code } = await stamp(file);
    await printLine(printable(line));
    worst = Math.max(worst, code);
  }
  return worst;
}

interface Told {
  readonly line: string;
  readonly code: 0 | 1 | 2;
}

/** Asks for a stamp on one file, or says what its answer is worth. It never throws. */
export async function stamp(name: string): Promise<Told> {
  const tell = (code: Told['code'], text: string): Told => ({ line: `${name}: ${text}`, code });
  const bytes = await readSealed(name);
  if (typeof bytes === 'string') return tell(2, `NOT READABLE: ${bytes}`);
  const opened = await openSessionFile(bytes, { now: new Date().toISOString() });
  const code = exitCodeFor(opened);
  const seal = sealIn(bytes);
  // A stamp says that a record was there. It makes none better than it is.
  if (code !== 0 || seal === null) return { line: verdictLine(name, opened), code };
  const imprint = await imprintOf(seal);
  try {
    const request = await readIfThere(`${name}.tsq`);
    const asked = request && readRequest(request);
    if (request && asked?.imprint !== toHex(imprint))
      return tell(1, `${name}.tsq is no request for this seal; move it away to ask anew.`);
    const answer = await readIfThere(`${name}.tsr`);
    if (answer) return tell(...findingOn(answer, toHex(imprint), asked?.nonce ?? null));
    if (request) return tell(0, `asked for by ${name}.tsq; there is no answer ${name}.tsr yet.`);
    await writeFile(`${name}.tsq`, timeStampRequest(imprint, randomBytes(NONCE_BYTES)), { flag: 'wx' });
    return tell(0, `request written: ${name}.tsq`);
  } catch (error) {
    return tell(2, `its request or answer cannot be read or written (${codeOf(error)}).`);
  }
}

/** What an answer is worth for a seal with this imprint, and for a request with this nonce where one is there. */
function findingOn(
  bytes: Uint8Array<ArrayBuffer>,
  imprint: string,
  nonce: string | null,
): [code: Told['code'], text: string] {
  const answer = readAnswer(bytes);
  switch (answer.kind) {
    case 'unreadable':
      return [2, `the answer cannot be read: ${answer.why}`];
    case 'not granted':
      return [1, `NOT STAMPED: the authority did not grant it: ${answer.why}`];
    case 'stamped': {
      if (answer.imprint !== imprint) return [1, 'NOT STAMPED: the answer is for something else than this seal.'];
      if (nonce !== null && answer.nonce !== nonce) return [1, 'NOT STAMPED: the answer is to another request.'];
      const by = `serial number ${answer.serial}, policy ${answer.policy}`;
      return [0, `stamped ${answer.at}, ${by}; the authority’s signature is not checked here (see --help)`];
    }
  }
}

/** The seal of a file that is intact, as it stands in it. */
function sealIn(bytes: Uint8Array): string | null {
  const unpacked = unpackParts(bytes);
  const seal = unpacked.kind === 'unpacked' ? unpacked.parts.get('seal.jws') : undefined;
  return seal ? new TextDecoder().decode(seal) : null;
}

async function readIfThere(name: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await readFile(name));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? String(error);

/** The files that are named; none where help is asked for; null where it is not used as it should be. */
function filesIn(args: readonly string[]): readonly string[] | null {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { help: { type: 'boolean', short: 'h', default: false } },
    });
    if (values.help) return [];
    return positionals.length > 0 ? positionals : null;
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
