/** Y4M files of films, as a camera or a converter would write them. */
import type { Shot } from './film.ts';

export interface Y4mKind {
  readonly rate: string;
  /** Chroma mode, as after C in the header. */
  readonly mode: string;
  /** Each pixel becomes so many each way. */
  readonly times: number;
}

/** Bytes after the grey plane for one of its samples, which is enough for sizes that divide evenly. */
const CHROMA: Readonly<Record<string, number>> = { mono: 0, '420jpeg': 0.5, '420p10': 0.5, '422': 1, '444': 2 };

export function y4mOf(shots: Iterable<Shot>, { rate, mode, times }: Y4mKind): Buffer {
  const bytes = mode.endsWith('p10') ? 2 : 1;
  const parts: Buffer[] = [];
  for (const { frame } of shots) {
    const [width, height] = [frame.width * times, frame.height * times];
    if (parts.length === 0) parts.push(Buffer.from(`YUV4MPEG2 W${width} H${height} F${rate} Ip A1:1 C${mode}\n`));
    const plane = Buffer.alloc(width * height * bytes);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const value = frame.luma[Math.floor(y / times) * frame.width + Math.floor(x / times)] ?? 0;
        if (bytes === 2) plane.writeUInt16LE(4 * value, 2 * (y * width + x));
        else plane[y * width + x] = value;
      }
    }
    parts.push(Buffer.from('FRAME\n'), plane, Buffer.alloc(plane.length * (CHROMA[mode] ?? 0), 128));
  }
  return Buffer.concat(parts);
}
