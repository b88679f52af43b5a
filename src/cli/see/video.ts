/** The door for videos: which kind of file it is, by its first bytes. */
import { stat } from 'node:fs/promises';
import type { Frame } from '../../gesture/frame.ts';
import { NotUsable, openingTrouble } from '../hear/refusal.ts';
import { Bytes } from './bytes.ts';
import { mjpegShots } from './mjpeg.ts';
import { SIGNATURE, y4mShots } from './y4m.ts';

export interface Shot {
  readonly frame: Frame;
  /** Milliseconds from the first frame. */
  readonly time: number;
}

/**
 * The frames of a file, ready to be watched.
 * @param rate frames a second of a file that does not say
 * @throws NotUsable where it cannot be read on, with the mend
 */
export async function* shotsOf(file: string, rate: number): AsyncGenerator<Shot> {
  const found = await stat(file).catch((error: unknown) => {
    throw new NotUsable(openingTrouble(error));
  });
  if (found.isDirectory()) throw new NotUsable('it is a folder; name the videos in it');
  const bytes = Bytes.of(file);
  try {
    const first = await bytes.peek(SIGNATURE.length);
    if (first.length === 0) throw new NotUsable('it is empty; record it again');
    if (first.toString('latin1') === SIGNATURE) yield* y4mShots(bytes);
    else if (first[0] === 0xff && first[1] === 0xd8) yield* mjpegShots(bytes, rate);
    else
      throw new NotUsable(
        'it is neither Y4M nor bare Motion JPEG; write it as one of them first, such as “ffmpeg -i FILE out.y4m”',
      );
  } catch (error) {
    throw error instanceof NotUsable ? error : new NotUsable(openingTrouble(error));
  } finally {
    await bytes.close();
  }
}
