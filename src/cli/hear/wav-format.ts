/** The head of a WAV file: where its samples lie, and how they are written. */
import { NotUsable } from './refusal.ts';

/** How samples are written: numbers of whole bytes, channels side by side. */
export interface WavFormat {
  readonly encoding: 'integer' | 'float';
  readonly bits: 8 | 16 | 24 | 32 | 64;
  readonly channels: number;
  /** In hertz. */
  readonly rate: number;
}

export interface WavLayout {
  readonly format: WavFormat;
  /** Where the samples begin in the file, and how many bytes of them there are. */
  readonly from: number;
  readonly bytes: number;
  /** Bytes that the head promises beyond the end of the file. */
  readonly missing: number;
}

/** Reads bytes of the file: fewer where it ends. */
export type ReadAt = (from: number, length: number) => Promise<DataView<ArrayBuffer>>;

export const RATES = { least: 8_000, most: 96_000 } as const;
const MOST_CHANNELS = 32;
/** What programs write that do not know the length yet, and correct at the end: such a file was never closed. */
const OPEN_ENDS: readonly number[] = [0, 0xffff_ffff];
/** Chunks before the samples: more is no head but chance. */
const MOST_CHUNKS = 100;

const INTEGER = 1;
const FLOAT = 3;
/** The encoding is then in the first two bytes of the extension's GUID. */
const EXTENSIBLE = 0xfffe;
const NAMED: Readonly<Record<number, string>> = { 2: 'ADPCM', 6: 'A-law', 7: 'mu-law', 17: 'IMA ADPCM', 85: 'MP3' };

const MEND = 'save it as WAV with 16-bit PCM';

/** Files that are sound, but no WAV, by their first bytes. */
const OTHER_FILES: readonly (readonly [RegExp, string])[] = [
  [/^RIFX/, 'a big-endian WAV file (RIFX)'],
  [/^(RF64|BW64)/, 'a WAV file of the long kind (RF64)'],
  [/^OggS/, 'an Ogg file'],
  [/^fLaC/, 'a FLAC file'],
  [/^(ID3|\xff[\xe2-\xfb])/, 'an MP3 file'],
  [/^FORM/, 'an AIFF file'],
  [/^.{4}ftyp/s, 'an MP4 file'],
  [/^.E\xdf\xa3/s, 'a WebM or Matroska file'],
  [/^RIFF/, 'a RIFF file that holds no WAVE'],
];

/**
 * Finds the samples.
 * @param size of the file, in bytes
 * @throws NotUsable when the file is something else, or its head is cut or of a format that is not read
 */
export async function wavLayout(readAt: ReadAt, size: number): Promise<WavLayout> {
  if (size === 0) throw new NotUsable('it is empty; record it again');
  const first = await readAt(0, 12);
  if (tag(first, 0) !== 'RIFF' || tag(first, 8) !== 'WAVE') throw notWav(first);
  const isOpen = OPEN_ENDS.includes(first.getUint32(4, true));
  let format: WavFormat | null = null;
  let at = 12;
  for (let count = 0; at + 8 <= size && count < MOST_CHUNKS; count++) {
    const head = await readAt(at, 8);
    const length = head.getUint32(4, true);
    if (tag(head, 0) === 'fmt ') format = formatOf(await readAt(at + 8, Math.min(length, 26)));
    if (tag(head, 0) === 'data') {
      if (!format) throw new NotUsable(`its samples come before their format, at byte ${at}; ${MEND}`);
      const there = size - at - 8;
      const isToEnd = length === 0xffff_ffff || (length === 0 && isOpen);
      const promised = isToEnd ? there : length;
      const bytes = Math.min(promised, there);
      return { format, from: at + 8, bytes, missing: promised - bytes };
    }
    at += 8 + length + (length % 2);
  }
  throw new NotUsable(
    `its header is cut off: the file ends at byte ${size}, before a data chunk with samples; copy or record it again`,
  );
}

function notWav(first: DataView): NotUsable {
  const bytes = [...new Uint8Array(first.buffer, first.byteOffset, first.byteLength)];
  const text = String.fromCharCode(...bytes);
  const other = OTHER_FILES.find(([magic]) => magic.test(text));
  if (first.byteLength < 12 && 'RIFF'.startsWith(text.slice(0, 4)))
    return new NotUsable(`its header is cut off after ${first.byteLength} bytes; copy or record it again`);
  return new NotUsable(`it is ${other ? other[1] : 'not a WAV file: it does not begin with RIFF and WAVE'}; ${MEND}`);
}

function formatOf(body: DataView): WavFormat {
  if (body.byteLength < 16) throw new NotUsable('its header is cut off inside the format; copy or record it again');
  const code = body.getUint16(0, true);
  const isExtended = code === EXTENSIBLE && body.byteLength >= 26;
  const encoding = isExtended ? body.getUint16(24, true) : code;
  const channels = body.getUint16(2, true);
  const rate = body.getUint32(4, true);
  const bits = body.getUint16(14, true);
  if (channels < 1 || channels > MOST_CHANNELS)
    throw new NotUsable(`it has ${channels} channels; 1 to ${MOST_CHANNELS} are read; ${MEND} and one channel`);
  if (rate < RATES.least || rate > RATES.most)
    throw new NotUsable(
      `its rate is ${rate} Hz; ${RATES.least} to ${RATES.most} Hz are read; record at 16000 or 48000 Hz`,
    );
  if (encoding === INTEGER && (bits === 8 || bits === 16 || bits === 24 || bits === 32))
    return { encoding: 'integer', bits, channels, rate };
  if (encoding === FLOAT && (bits === 32 || bits === 64)) return { encoding: 'float', bits, channels, rate };
  const name = { [INTEGER]: 'PCM', [FLOAT]: 'float', ...NAMED }[encoding] ?? `encoding ${encoding}`;
  throw new NotUsable(`it is ${name} of ${bits} bits; PCM of 8, 16, 24, 32 and float of 32, 64 bits are read; ${MEND}`);
}

const tag = (view: DataView, at: number): string =>
  at + 4 <= view.byteLength ? String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i))) : '';
