/** Motion JPEG without a container (.mjpeg): one JPEG picture after another. It says nothing of time. */
import { decode } from 'jpeg-js';
import { NotUsable } from '../hear/refusal.ts';
import type { Bytes } from './bytes.ts';
import { MOST_PIXELS, scaled } from './scale.ts';
import type { Shot } from './video.ts';

/** A picture of more bytes is none. */
const LONGEST = 2 ** 25;
const STEP = 2 ** 16;
const [START, END] = [0xd8, 0xd9];

/**
 * The pictures, each with its time.
 * @param rate frames a second, as told
 * @throws NotUsable at the first picture that cannot be read
 */
export async function* mjpegShots(bytes: Bytes, rate: number): AsyncGenerator<Shot> {
  for (let count = 0; (await bytes.peek(1)).length > 0; count++) {
    const at = bytes.position;
    const jpeg = await nextPicture(bytes);
    if (!jpeg)
      throw new NotUsable(
        `picture ${count + 1}, at byte ${at}, is cut off or no JPEG; copy or record it again. The ${count} before it were looked at`,
      );
    yield { frame: frameOf(jpeg, count + 1), time: (count * 1000) / rate };
  }
}

function frameOf(jpeg: Buffer, number: number): Shot['frame'] {
  try {
    const { width, height, data } = decode(jpeg, {
      useTArray: true,
      formatAsRGBA: false,
      maxResolutionInMP: MOST_PIXELS / 1e6,
      maxMemoryUsageInMB: 512,
    });
    // The weights of ITU-R BT.601, by which JPEG itself makes grey of colours.
    return scaled(width, height, (x, y) => {
      const i = 3 * (y * width + x);
      return 0.299 * (data[i] ?? 0) + 0.587 * (data[i + 1] ?? 0) + 0.114 * (data[i + 2] ?? 0);
    });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new NotUsable(`picture ${number} cannot be decoded (${reason}); write the file anew`);
  }
}

/** Takes one picture from its first to its last byte; null where there is none. */
async function nextPicture(bytes: Bytes): Promise<Buffer | null> {
  for (let length = STEP; ; length *= 2) {
    const seen = await bytes.peek(length);
    if (seen[0] !== 0xff || seen[1] !== START) return null;
    const end = endOfPicture(seen);
    if (end !== null) return bytes.take(end);
    if (seen.length < length || length >= LONGEST) return null;
  }
}

/** Behind the end of the picture; null where it is not in these bytes. A small picture inside a segment does not end it. */
function endOfPicture(seen: Buffer): number | null {
  let at = 2;
  while (at + 2 <= seen.length) {
    const marker = seen[at + 1] ?? 0;
    const isMark = seen[at] === 0xff && marker !== 0 && marker !== 0xff && !(marker >= 0xd0 && marker <= 0xd7);
    if (!isMark) at += 1;
    else if (marker === END) return at + 2;
    else if (at + 4 > seen.length) return null;
    else at += 2 + seen.readUInt16BE(at + 2);
  }
  return null;
}
