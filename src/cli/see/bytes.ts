/** A file read from front to back in pieces: never more of it is in memory than one frame and one piece. */
import { createReadStream } from 'node:fs';

export class Bytes {
  readonly #pieces: AsyncIterator<Buffer, undefined>;
  #left: Buffer = Buffer.alloc(0);
  /** How far it was taken, in bytes from the beginning. */
  position = 0;

  constructor(pieces: AsyncIterable<Buffer>) {
    this.#pieces = pieces[Symbol.asyncIterator]() as AsyncIterator<Buffer, undefined>;
  }

  static of(file: string): Bytes {
    return new Bytes(createReadStream(file, { highWaterMark: 2 ** 18 }));
  }

  /** The next bytes without taking them; fewer at the end. */
  async peek(length: number): Promise<Buffer> {
    const pieces = [this.#left];
    let have = this.#left.length;
    while (have < length) {
      const piece = await this.#next();
      if (!piece) break;
      pieces.push(piece);
      have += piece.length;
    }
    if (pieces.length > 1) this.#left = Buffer.concat(pieces);
    return this.#left.subarray(0, length);
  }

  /** Takes the next bytes; fewer at the end. */
  async take(length: number): Promise<Buffer> {
    const taken = await this.peek(length);
    this.#left = this.#left.subarray(taken.length);
    this.position += taken.length;
    return taken;
  }

  /** Passes over bytes; false where there are fewer. */
  async skip(length: number): Promise<boolean> {
    let open = length;
    for (;;) {
      const part = Math.min(open, this.#left.length);
      this.#left = this.#left.subarray(part);
      this.position += part;
      open -= part;
      if (open === 0) return true;
      const piece = await this.#next();
      if (!piece) return false;
      this.#left = piece;
    }
  }

  /** Takes a line without its end; null where no end comes within so many bytes. */
  async line(longest: number): Promise<string | null> {
    for (let length = 128; ; length = Math.min(2 * length, longest)) {
      const seen = await this.peek(length);
      const end = seen.indexOf(0x0a);
      if (end >= 0) return (await this.take(end + 1)).toString('latin1', 0, end);
      if (seen.length < length || length === longest) return null;
    }
  }

  /** Gives the file back before its end. */
  async close(): Promise<void> {
    await this.#pieces.return?.();
  }

  async #next(): Promise<Buffer | null> {
    return (await this.#pieces.next()).value ?? null;
  }
}
