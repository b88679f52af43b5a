/** YUV4MPEG2 (.y4m): a line of text, then frames of bare samples. Only the grey plane is looked at. */
import { NotUsable } from '../hear/refusal.ts';
import type { Bytes } from './bytes.ts';
import { MOST_PIXELS, scaled } from './scale.ts';
import type { Shot } from './video.ts';

export const SIGNATURE = 'YUV4MPEG2';
const LONGEST_LINE = 4096;
/** Frames a second. Below five, a nod is a jump from picture to picture. */
const RATES = { least: 5, most: 1000 };

export interface Y4mFormat {
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
  /** Of each sample: up to 8 bits take one byte, more take two, the low one first. */
  readonly bits: number;
  /** Bytes of a frame after its grey plane. */
  readonly rest: number;
}

/** @throws NotUsable when the header is none, or of a kind that is not looked at */
export function y4mFormat(header: string): Y4mFormat {
  const fields = header.split(' ').slice(1).filter(Boolean);
  const field = (letter: string): string | null => fields.find((text) => text.startsWith(letter))?.slice(1) ?? null;
  const width = wholeNumber(field('W'), 'W, its width');
  const height = wholeNumber(field('H'), 'H, its height');
  if (width * height > MOST_PIXELS)
    throw new NotUsable(`its frames are ${width} × ${height}; scale it to at most 16 megapixels, 160 × 120 is enough`);
  const [above, below] = (field('F') ?? '').split(':').map(Number);
  const rate = above !== undefined && below !== undefined ? above / below : NaN;
  if (!(rate > 0 && Number.isFinite(rate)))
    throw new NotUsable(`its header has no rate (F${field('F') ?? ''}); expected frames to seconds, such as F15:1`);
  if (rate < RATES.least || rate > RATES.most)
    throw new NotUsable(
      `it claims ${rate.toPrecision(3)} frames a second; at least ${RATES.least} are needed and at most ${RATES.most} are believed: record it anew, or mend F in its header`,
    );
  const interlace = field('I') ?? 'p';
  if (interlace !== 'p' && interlace !== '?')
    throw new NotUsable(`its lines are interlaced (I${interlace}); make whole frames of it first (deinterlace)`);
  return { width, height, rate, ...samples(field('C') ?? '420jpeg', width, height) };
}

function wholeNumber(text: string | null, what: string): number {
  if (text === null || !/^[1-9]\d{0,8}$/.test(text))
    throw new NotUsable(
      `its header has no ${what} that is a whole number${text === null ? '' : ` (${text})`}; write it anew`,
    );
  return Number(text);
}

/** Bits of a sample and bytes after the grey plane, by the chroma mode. */
function samples(mode: string, width: number, height: number): { readonly bits: number; readonly rest: number } {
  const match = /^(420jpeg|420paldv|420mpeg2|420|411|422|444alpha|444|mono)(?:p?(9|1[0-6]))?$/.exec(mode);
  if (!match) throw new NotUsable(`its colours are of the mode C${mode}; write it anew as C420jpeg or Cmono`);
  const bits = Number(match[2] ?? 8);
  const bytes = bits > 8 ? 2 : 1;
  const [across, along] = [(by: number) => Math.ceil(width / by), (by: number) => Math.ceil(height / by)];
  const rest = ((): number => {
    switch (match[1]) {
      case 'mono':
        return 0;
      case '444':
        return 2 * width * height;
      case '444alpha':
        return 3 * width * height;
      case '422':
        return 2 * across(2) * height;
      case '411':
        return 2 * across(4) * height;
      default:
        return 2 * across(2) * along(2);
    }
  })();
  return { bits, rest: rest * bytes };
}

/** The frames, each with its time. @throws NotUsable at the place where it is no such file any more */
export async function* y4mShots(bytes: Bytes): AsyncGenerator<Shot> {
  const header = await bytes.line(LONGEST_LINE);
  if (header === null) throw new NotUsable(`its header has no end within ${LONGEST_LINE} bytes; write it anew`);
  const { width, height, rate, bits, rest } = y4mFormat(header);
  const size = width * height * (bits > 8 ? 2 : 1);
  for (let count = 0; ; count++) {
    const at = bytes.position;
    if ((await bytes.peek(1)).length === 0) {
      if (count === 0) throw new NotUsable('it has a header and no frame; record it again');
      return;
    }
    const mark = await bytes.line(LONGEST_LINE);
    if (mark === null || !/^FRAME( |$)/.test(mark))
      throw new NotUsable(
        `frame ${count + 1} does not begin with FRAME, at byte ${at}: ${mark === null ? 'cut off' : 'its size or colours are not as the header says'}; write it anew`,
      );
    const plane = await bytes.take(size);
    if (plane.length < size || !(await bytes.skip(rest)))
      throw new NotUsable(
        `frame ${count + 1} is cut off; copy or record it again. The ${count} before it were looked at`,
      );
    const grey =
      bits > 8
        ? (x: number, y: number) => plane.readUInt16LE(2 * (y * width + x)) / 2 ** (bits - 8)
        : (x: number, y: number) => plane[y * width + x] ?? 0;
    yield { frame: scaled(width, height, grey), time: (count * 1000) / rate };
  }
}
