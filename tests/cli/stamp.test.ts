/** The stamp command beside OpenSSL, which plays the authority: requests and answers go between two programs. */
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFile, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
import { stamp } from '../../src/cli/stamp.ts';
import { unpackParts } from '../../src/record/container.ts';
import { imprintOf, readAnswer, timeStampRequest } from '../../src/record/time-stamp.ts';
import { forgedDemo, run } from './verify-run.ts';

const hasOpenssl = spawnSync('openssl', ['version']).status === 0;
if (!hasOpenssl) console.warn('openssl is not on this machine: time-stamps are not tried against another program.');

let folder: string;
let file: string;
const openssl = (...args: readonly string[]): string =>
  execFileSync('openssl', args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'stamp-'));
  file = path.join(folder, 'session.bhsession');
  await copyFile(DEMO_SESSION_FILE, file);
});
afterAll(() => rm(folder, { recursive: true }));

/** An authority of our own, for this test alone. */
const AUTHORITY = `[ts]
serial = serial
signer_cert = authority.pem
certs = authority.pem
signer_key = authority.key
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256
[req]
distinguished_name = name
[name]
[ext]
extendedKeyUsage = critical,timeStamping
`;

async function becomeAuthority(): Promise<void> {
  await writeFile(path.join(folder, 'authority.cnf'), AUTHORITY);
  await writeFile(path.join(folder, 'serial'), '0A\n');
  const key = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-keyout', 'authority.key'];
  const name = ['-subj', '/CN=Invented authority', '-config', 'authority.cnf', '-extensions', 'ext'];
  openssl('req', '-x509', ...key, ...name, '-out', 'authority.pem');
}

const answer = (): string =>
  openssl('ts', '-reply', '-config', 'authority.cnf', '-section', 'ts', '-queryfile', `${file}.tsq`, '-out', `${file}.tsr`); // prettier-ignore

describe.runIf(hasOpenssl)('stamp', () => {
  it('asks for a stamp on the seal, finds the answer to be for it, and no other', async () => {
    await becomeAuthority();
    expect(await run('stamp', [file])).toEqual({ code: 0, out: [`${file}: request written: ${file}.tsq`], err: '' });

    const unpacked = unpackParts(await readFile(file));
    const seal = unpacked.kind === 'unpacked' ? unpacked.parts.get('seal.jws') : undefined;
    const imprint = Buffer.from(await imprintOf(new TextDecoder().decode(seal)));
    const asked = openssl('ts', '-query', '-in', `${file}.tsq`, '-text');
    const digits = [...asked.matchAll(/^ {4}[0-9a-f]{4} - ((?:[0-9a-f]{2}[ -]){16})/gm)].map(([, line = '']) => line);
    expect(digits.join('').replace(/[ -]/g, '')).toBe(imprint.toString('hex'));
    expect(asked).toMatch(/Version: 1\nHash Algorithm: sha256\n/);
    expect(asked).toMatch(/Nonce: 0x[4-7][0-9A-F]{31}\nCertificate required: yes\n/);

    answer();
    await writeFile(path.join(folder, 'seal.jws'), seal ?? '');
    const checks = ['-in', `${file}.tsr`, '-data', 'seal.jws', '-CAfile', 'authority.pem'];
    expect(openssl('ts', '-verify', ...checks)).toContain('Verification: OK');
    const other = path.join(folder, 'other.bhsession');
    const { bytes } = await forgedDemo();
    await writeFile(other, bytes);
    const again = await stamp(file);
    expect(again.code).toBe(0);
    expect(again.line).toMatch(/: stamped 20\d\d-\S+Z, serial number 0b, policy 1\.2\.3\.4\.1; .* not checked here/);
    expect(await stamp(other)).toMatchObject({
      code: 1,
      line: expect.stringContaining('NOT INTACT at entry') as string,
    });
    const text = openssl('ts', '-reply', '-in', `${file}.tsr`, '-text');
    const at = /stamped (\S+),/.exec(again.line)?.[1] ?? '';
    expect(Date.parse(/Time stamp: (.*)/.exec(text)?.[1] ?? '')).toBe(Math.floor(Date.parse(at) / 1000) * 1000);
  });

  it('reads the bare token of an answer as well', async () => {
    openssl('ts', '-reply', '-in', `${file}.tsr`, '-token_out', '-out', 'token.der');
    const token = readAnswer(new Uint8Array(await readFile(path.join(folder, 'token.der'))));
    expect(token).toEqual(readAnswer(new Uint8Array(await readFile(`${file}.tsr`))));
    expect(token.kind).toBe('stamped');
  });

  it('says so where an answer is to another request, is for another seal, is none, or was refused', async () => {
    const worth = async (): Promise<string> => {
      const { code, line } = await stamp(file);
      return `${code}${line.slice(file.length)}`;
    };
    const answered = await readFile(`${file}.tsr`);
    await Promise.all([rm(`${file}.tsq`), rm(`${file}.tsr`)]);
    expect(await worth()).toContain('0: request written');
    expect(await worth()).toContain('0: asked for');
    await writeFile(`${file}.tsr`, answered);
    expect(await worth()).toContain('1: NOT STAMPED: the answer is to another request');
    await writeFile(`${file}.tsq`, timeStampRequest(new Uint8Array(32), new Uint8Array(16)));
    expect(await worth()).toContain('.tsq is no request for this seal');
    answer();
    await rm(`${file}.tsq`);
    expect(await worth()).toContain('1: NOT STAMPED: the answer is for something else');
    await writeFile(`${file}.tsr`, 'Dear all');
    expect(await worth()).toContain('2: the answer cannot be read');
    await rm(`${file}.tsr`);
    await stamp(file);
    const strict = AUTHORITY.replace('digests = sha256', 'digests = sha512');
    await writeFile(path.join(folder, 'authority.cnf'), strict);
    answer();
    expect(await worth()).toMatch(/^1: NOT STAMPED: the authority did not grant it: \S/);
  });
});
