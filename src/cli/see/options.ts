import { parseArgs } from 'node:util';
import { checkRegion, HEIGHT, WIDTH } from '../../gesture/frame.ts';
import type { WatcherOptions } from '../../gesture/watcher.ts';

export const USAGE = `Usage: npm run see -- [--json] [--rate N] [--region L,T,W,H] [--upside-down] [--mirrored] VIDEO…
Watches videos for gestures as the app's camera does, and says of each when it was made, how surely, and why.
  VIDEO          Y4M of any size with whole frames (4:2:0, 4:2:2, 4:1:1, 4:4:4 or grey, 8 to 16 bits), or JPEG pictures one
                 after another (.mjpeg). The whole picture is scaled to ${WIDTH} × ${HEIGHT}
  --rate N       frames a second of .mjpeg files, which do not say (default 15; 5 to 1000)
  --region       where gestures are made: left, top, width, height as parts of the picture, such as 0.2,0,0.6,0.8
  --upside-down  the camera hung head down
  --mirrored     the picture is as in a mirror
  --json         one object a line: file, gesture, from, to (seconds), confidence (0 to 1), why
                 (npm writes two lines of its own first; npm run --silent see leaves them out)
gesture: nod (down and up, twice or more), shake (of the head), wave right, wave left (across the whole view, towards the
mechanic's own side), cover (the lens held shut). What keeps gestures from being seen is told on standard error.
Exit code 0: all read to the end; 1: some not, each with its reason on standard error; 2: not used as above.`;

export interface Options {
  readonly files: readonly string[];
  readonly json: boolean;
  readonly help: boolean;
  readonly rate: number;
  readonly watcher: WatcherOptions;
}

export function optionsOf(args: readonly string[]): Options | { readonly trouble: string } {
  try {
    const { values, positionals: files } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        rate: { type: 'string', default: '15' },
        region: { type: 'string' },
        'upside-down': { type: 'boolean', default: false },
        mirrored: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const rate = values.rate.trim() === '' ? NaN : Number(values.rate);
    if (!(rate >= 5 && rate <= 1000)) return { trouble: `--rate ${values.rate}: give 5 to 1000 frames a second.` };
    if (files.length === 0 && !values.help) return { trouble: 'Name a video.' };
    const region = values.region === undefined ? null : regionOf(values.region);
    const watcher = { ...(region && { region }), upsideDown: values['upside-down'], mirrored: values.mirrored };
    return { files, json: values.json, help: values.help, rate, watcher };
  } catch (error) {
    if (error instanceof TypeError || error instanceof RangeError) return { trouble: error.message };
    throw error;
  }
}

function regionOf(text: string): NonNullable<WatcherOptions['region']> {
  const [left = NaN, top = NaN, width = NaN, height = NaN, ...more] = text.split(',').map(Number);
  if (more.length > 0) throw new RangeError(`--region ${text}: give four numbers.`);
  return checkRegion({ left, top, width, height });
}
