import { parseArgs } from 'node:util';
import { THEMES, type Theme } from '../../storage/display.ts';

/** Phone upright and on its side, tablet upright, laptop, desk, 4K; in CSS pixels. */
export const SIZES = ['360x740', '740x360', '820x1180', '1280x800', '1920x1080', '3840x2160'] as const;
export const PICTURED: readonly Theme[] = THEMES.filter((theme) => theme !== 'as the device');

export const USAGE = `Usage: npm run screens -- --out FOLDER [--only TEXT] [--size WxH]… [--theme NAME]…
Takes a picture of every screen of the built app, of the work screen in each of its main states, and of the printed record
sheet, by walking through a short invented job in a browser without a window. For somebody to look at.
  --out FOLDER   where the pictures go, named STATION-SIZE-THEME.png
  --only TEXT    only stations whose name holds this; the walk is the same
  --size WxH     in CSS pixels (default: ${SIZES.join(', ')})
  --theme NAME   ${PICTURED.join(', ')} (default: all of them)
Exit code 0: all pictures were taken; 1: the walk broke off; 2: not used as above.`;

export interface Options {
  readonly out: string;
  readonly only: string;
  readonly sizes: readonly { readonly width: number; readonly height: number }[];
  readonly themes: readonly Theme[];
}

export function optionsOf(args: readonly string[]): Options | 'help' | { readonly trouble: string } {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        out: { type: 'string' },
        only: { type: 'string', default: '' },
        size: { type: 'string', multiple: true, default: [...SIZES] },
        theme: { type: 'string', multiple: true, default: [...PICTURED] },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return 'help';
    if (values.out === undefined) return { trouble: 'Say where the pictures go: --out FOLDER.' };
    const themes = values.theme.map((name) => PICTURED.find((theme) => theme === name) ?? unknown('--theme', name));
    return { out: values.out, only: values.only, sizes: values.size.map(sizeOf), themes };
  } catch (error) {
    if (error instanceof TypeError || error instanceof RangeError) return { trouble: error.message };
    throw error;
  }
}

function sizeOf(text: string): Options['sizes'][number] {
  const [, width, height] = /^(\d{2,4})x(\d{2,4})$/.exec(text) ?? unknown('--size', text);
  return { width: Number(width), height: Number(height) };
}

function unknown(option: string, text: string): never {
  throw new RangeError(`${option} ${text}: this is none.`);
}
