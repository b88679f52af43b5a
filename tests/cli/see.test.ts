import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { encode } from 'jpeg-js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { optionsOf } from '../../src/cli/see/options.ts';
import { shotsOf } from '../../src/cli/see/video.ts';
import { y4mFormat } from '../../src/cli/see/y4m.ts';
import { createWatcher } from '../../src/gesture/watcher.ts';
import { gestureFilm, type Shot } from '../support/gesture-clips/film.ts';
import { y4mOf } from '../support/gesture-clips/y4m.ts';

const ROOT = path.join(import.meta.dirname, '../..');
const RATE = 15;
/** One gesture in its scene, at 15 frames a second. */
const film = gestureFilm(31, 1);
const shots: readonly Shot[] = [...film.shots()];
const kind = film.acts.find(({ gesture }) => gesture !== null)?.gesture;

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'see-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function written(name: string, content: Buffer | string): Promise<string> {
  const file = path.join(folder, name);
  await writeFile(file, content);
  return file;
}

/** What the watcher makes of a file, and what stopped the reading. */
async function watched(file: string): Promise<{ kinds: string[]; frames: number; trouble: string | null }> {
  const watcher = createWatcher();
  const kinds: string[] = [];
  let frames = 0;
  try {
    for await (const { frame, time } of shotsOf(file, RATE)) {
      frames += 1;
      const seen = watcher.see(frame, time);
      if (seen.kind === 'gesture') kinds.push(seen.gesture.kind);
    }
  } catch (error) {
    return { kinds, frames, trouble: String(error) };
  }
  return { kinds, frames, trouble: null };
}

const small = (): Buffer => y4mOf(shots.slice(0, 3), { rate: '15:1', mode: '420jpeg', times: 1 });
const header = 'YUV4MPEG2 W160 H120 F15:1 Ip A1:1 C420jpeg\n';

describe('a video is read', () => {
  it.each([
    ['420jpeg', 1],
    ['420p10', 1],
    ['422', 2],
    ['444', 1],
    ['mono', 3],
  ])('as Y4M of the chroma mode %s, %i times as large', async (mode, times) => {
    const file = await written(`${mode}.y4m`, y4mOf(shots, { rate: '15:1', mode, times }));
    expect(await watched(file)).toEqual({ kinds: [kind], frames: shots.length, trouble: null });
  });
  it('as JPEG pictures one after another', async () => {
    const pictures = shots.slice(0, 6).map(({ frame: { width, height, luma } }) => {
      const data = Buffer.alloc(4 * width * height, 255);
      luma.forEach((value, i) => data.fill(value, 4 * i, 4 * i + 3));
      return encode({ width, height, data }, 85).data;
    });
    const file = await written('film.mjpeg', Buffer.concat(pictures));
    expect(await watched(file)).toEqual({ kinds: [], frames: 6, trouble: null });
    for await (const { frame, time } of shotsOf(file, RATE)) {
      const drawn = shots[Math.round((time * RATE) / 1000)]?.frame.luma ?? [];
      const error =
        [...frame.luma].reduce((sum, value, i) => sum + Math.abs(value - (drawn[i] ?? 0)), 0) / frame.luma.length;
      expect(error, 'grey values as drawn, but for what JPEG loses').toBeLessThan(6);
    }
    const cut = await written('cut.mjpeg', Buffer.concat(pictures.slice(0, 4)).subarray(0, -40));
    expect(await watched(cut)).toMatchObject({
      frames: 3,
      trouble: expect.stringMatching(/picture 4, .* is cut off/) as string,
    });
  });
  it('a piece at a time: a file that claims ten hours is not waited for', async () => {
    const file = await written('long.y4m', small());
    const first = await shotsOf(file, RATE).next();
    expect(first.value).toMatchObject({ time: 0 });
  });
});

describe('a video is refused, with the mend, when', () => {
  it.each<[string, Buffer | string, RegExp]>([
    ['it is empty', '', /empty; record it again/],
    ['it is something else', 'RIFF....AVI ', /neither Y4M nor bare Motion JPEG; write it as one/],
    ['it has no frame', header, /has a header and no frame/],
    ['its header never ends', `YUV4MPEG2 ${'X'.repeat(9000)}`, /no end within 4096 bytes/],
    ['its last frame is cut off', small().subarray(0, -100), /frame 3 is cut off.* The 2 before it were looked at/],
    [
      'its size is not that of its frames',
      Buffer.concat([Buffer.from(header.replace('W160', 'W162')), small().subarray(header.length)]),
      /frame 2 does not begin with FRAME, at byte \d+/,
    ],
  ])('%s', async (name, content, trouble) => {
    const file = await written(`${name}.y4m`, content);
    expect((await watched(file)).trouble).toMatch(trouble);
  });
  it('it is not there, or a folder', async () => {
    expect((await watched(path.join(folder, 'none.y4m'))).trouble).toMatch(/no such file/);
    expect((await watched(folder)).trouble).toMatch(/it is a folder/);
  });
  it.each([
    ['W0 H120 F15:1', /W, its width that is a whole number \(0\)/],
    ['H120 F15:1', /W, its width/],
    ['W160 H-1 F15:1', /H, its height/],
    ['W99999 H99999 F15:1', /99999 × 99999; scale it/],
    ['W160 H120', /no rate/],
    ['W160 H120 F0:0', /no rate/],
    ['W160 H120 F1:36000', /claims 0.0000278 frames a second/],
    ['W160 H120 F15:1 It', /interlaced \(It\); make whole frames/],
    ['W160 H120 F15:1 Crgb', /mode Crgb; write it anew as C420jpeg/],
  ])('its header says %s', (fields, trouble) => {
    expect(() => y4mFormat(`YUV4MPEG2 ${fields}`)).toThrow(trouble);
  });
  it('in the planes that are passed over, sizes that are odd are rounded up', () => {
    expect(y4mFormat('YUV4MPEG2 W5 H3 F30000:1001 C420')).toMatchObject({ rest: 12, bits: 8 });
    expect(y4mFormat('YUV4MPEG2 W5 H3 F30:1 C422p10')).toMatchObject({ rest: 36, bits: 10 });
    expect(y4mFormat('YUV4MPEG2 W5 H3 F30:1 C411')).toMatchObject({ rest: 12 });
    expect(y4mFormat('YUV4MPEG2 W5 H3 F30:1 C444alpha')).toMatchObject({ rest: 45 });
  });
});

describe('options', () => {
  it.each([
    [[], /Name a video/],
    [['--rate', '2', 'a'], /--rate 2: give 5 to 1000/],
    [['--region', '0,0,1', 'a'], /region to watch/],
    [['--region', '0,0,1,1,1', 'a'], /give four numbers/],
    [['--loud', 'a'], /--loud/],
  ])('%j are refused', (args, trouble) => {
    expect(optionsOf(args)).toEqual({ trouble: expect.stringMatching(trouble) as string });
  });
});

/** The command as a process of its own. */
const see = (...args: readonly string[]): Promise<{ code: number | null; out: string; err: string }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/see.ts', ...args], { cwd: ROOT });
    let [out, err] = ['', ''];
    child.stdout.on('data', (data) => (out += String(data)));
    child.stderr.on('data', (data) => (err += String(data)));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });

describe('see', () => {
  it('prints one object for each gesture, goes on after a bad file, and ends with 1', async () => {
    const bad = await written('bad.y4m', header);
    const good = await written('good.y4m', y4mOf(shots, { rate: '15:1', mode: '420jpeg', times: 1 }));
    const { code, out, err } = await see('--json', bad, good);
    expect(code).toBe(1);
    expect(err).toContain(`${bad}: it has a header and no frame`);
    const lines = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines).toHaveLength(1);
    expect(Object.keys(lines[0] ?? {})).toEqual(['file', 'gesture', 'from', 'to', 'confidence', 'why']);
    expect(lines[0]).toMatchObject({ file: good, gesture: kind });
  });
  it('explains itself, with the exit codes', async () => {
    const { code, out } = await see('--help');
    expect(code).toBe(0);
    expect(out).toContain('Exit code 0: all read to the end; 1: some not');
  });
});
