import fc from 'fast-check';
import { mkdtemp, open, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { NotUsable } from '../../src/cli/hear/refusal.ts';
import { LONGEST_MINUTES, readRecording, readRecordingBytes } from '../../src/cli/hear/wav-file.ts';
import { encodeWav } from '../support/wav.ts';

const RATE = 16_000;

/** A tone of this length, as samples of −1 … 1. */
const tone = (samples: number, level = 0.5): Float32Array<ArrayBuffer> =>
  Float32Array.from({ length: samples }, (_, i) => level * Math.sin(i / 7));

const wav = (samples = tone(RATE), rate = RATE): Uint8Array => encodeWav({ samples, rate });

interface Kind {
  readonly encoding: number;
  readonly bits: number;
  readonly write: (view: DataView, at: number, sample: number) => void;
}

/** Every kind of sample that is read, written by the definition of each. */
const KINDS: readonly Kind[] = [
  { encoding: 1, bits: 8, write: (view, at, sample) => view.setUint8(at, Math.round(sample * 127) + 128) },
  { encoding: 1, bits: 16, write: (view, at, sample) => view.setInt16(at, Math.round(sample * 32_767), true) },
  {
    encoding: 1,
    bits: 24,
    write: (view, at, sample) => {
      const value = Math.round(sample * 8_388_607);
      view.setUint16(at, value & 0xffff, true);
      view.setInt8(at + 2, value >> 16);
    },
  },
  { encoding: 1, bits: 32, write: (view, at, sample) => view.setInt32(at, Math.round(sample * 2_147_483_647), true) },
  { encoding: 3, bits: 32, write: (view, at, sample) => view.setFloat32(at, sample, true) },
  { encoding: 3, bits: 64, write: (view, at, sample) => view.setFloat64(at, sample, true) },
];

/** A WAV file of any kind; each channel has its own samples. */
function wavOf({ encoding, bits, write }: Kind, channels: readonly Float32Array[], rate = RATE): Uint8Array {
  const bytes = new Uint8Array(44 + (channels[0]?.length ?? 0) * channels.length * (bits / 8));
  const head = wav(new Float32Array());
  bytes.set(head);
  const view = new DataView(bytes.buffer);
  view.setUint16(20, encoding, true);
  view.setUint16(22, channels.length, true);
  view.setUint32(24, rate, true);
  view.setUint16(34, bits, true);
  view.setUint32(40, bytes.length - 44, true);
  channels.forEach((samples, channel) =>
    samples.forEach((sample, i) => write(view, 44 + ((i * channels.length + channel) * bits) / 8, sample)),
  );
  return bytes;
}

const refusal = async (bytes: Uint8Array): Promise<string> => {
  const error: unknown = await readRecordingBytes(bytes).catch((thrown: unknown) => thrown);
  if (!(error instanceof NotUsable)) throw new Error(`It was not refused: ${String(error)}`);
  return error.message;
};

describe('a recording', () => {
  it.each(KINDS)('of encoding $encoding with $bits bits is the sound that was written', async (kind) => {
    const samples = tone(2000);
    const { sound, notes } = await readRecordingBytes(wavOf(kind, [samples]));
    expect(notes).toEqual([]);
    expect(sound.rate).toBe(RATE);
    expect(sound.samples).toHaveLength(samples.length);
    samples.forEach((sample, i) => expect(Math.abs((sound.samples[i] ?? NaN) - sample)).toBeLessThan(1 / 120));
  });

  it('of several channels is their mean', async () => {
    const [left, right] = [tone(2000, 0.5), tone(2000, 0.25)];
    const { sound } = await readRecordingBytes(wavOf(KINDS[4] as Kind, [left, right]));
    left.forEach((sample, i) => expect(sound.samples[i]).toBeCloseTo((sample + (right[i] ?? 0)) / 2, 6));
  });

  it('keeps its rate, but is raised to the least that the engine takes', async () => {
    const lengthOf = async (rate: number) => {
      const { sound } = await readRecordingBytes(wav(tone(rate), rate));
      return [sound.rate, sound.samples.length];
    };
    expect(await lengthOf(48_000)).toEqual([48_000, 48_000]);
    expect(await lengthOf(44_100)).toEqual([44_100, 44_100]);
    expect(await lengthOf(96_000)).toEqual([96_000, 96_000]);
    expect(await lengthOf(22_050)).toEqual([22_050, 22_050]);
    expect(await lengthOf(11_025)).toEqual([16_000, 16_000]);
    expect(await lengthOf(8_000)).toEqual([16_000, 16_000]);
  });

  it('may say its encoding in an extension, and have other chunks before its samples', async () => {
    const plain = wavOf(KINDS[4] as Kind, [tone(2000)]);
    const extension = new Uint8Array(24);
    new DataView(extension.buffer).setUint16(8, 3, true);
    const note = [...new TextEncoder().encode('LIST'), 3, 0, 0, 0, 1, 2, 3, 0];
    const bytes = Uint8Array.from([...plain.subarray(0, 36), ...extension, ...note, ...plain.subarray(36)]);
    const view = new DataView(bytes.buffer);
    view.setUint32(16, 40, true);
    view.setUint16(20, 0xfffe, true);
    expect((await readRecordingBytes(bytes)).sound.samples).toHaveLength(2000);
  });

  it('that is clipped is decoded, and it is said', async () => {
    const loud = tone(2000, 3).map((sample) => Math.max(-1, Math.min(1, sample)));
    const { notes } = await readRecordingBytes(wav(loud));
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/^clipped: \d+ samples at full scale; .*record it quieter$/);
  });

  it('that is cut off is decoded as far as it goes, and it is said', async () => {
    const { sound, notes } = await readRecordingBytes(wav(tone(RATE)).subarray(0, 44 + RATE));
    expect(sound.samples).toHaveLength(RATE / 2);
    expect(notes).toEqual(['cut off: its header promises 1.00 s, 0.50 s are there and were decoded']);
  });

  it('whose stream was never closed is read to its end without a word', async () => {
    const bytes = wav(tone(RATE));
    bytes.fill(0xff, 40, 44);
    expect((await readRecordingBytes(bytes)).notes).toEqual([]);
  });

  it.each([0, 0xffff_ffff])(
    'whose program wrote %i for lengths it did not know yet is read to its end',
    async (length) => {
      const bytes = wav(tone(RATE));
      const view = new DataView(bytes.buffer);
      view.setUint32(4, length, true);
      view.setUint32(40, length, true);
      const { sound, notes } = await readRecordingBytes(bytes);
      expect(sound.samples).toHaveLength(RATE);
      expect(notes).toEqual([]);
    },
  );

  it('whose header alone says ten hours is decoded as far as it goes, and it is said', async () => {
    const bytes = wav(tone(RATE));
    new DataView(bytes.buffer).setUint32(40, 10 * 3600 * RATE * 2, true);
    const { sound, notes } = await readRecordingBytes(bytes);
    expect(sound.samples).toHaveLength(RATE);
    expect(notes).toEqual(['cut off: its header promises 36000.00 s, 1.00 s are there and were decoded']);
  });

  it('with samples that are no numbers has silence there, and it is said', async () => {
    const samples = tone(2000);
    samples.fill(NaN, 10, 13);
    const { sound, notes } = await readRecordingBytes(wavOf(KINDS[4] as Kind, [samples]));
    expect([...sound.samples.subarray(10, 13)]).toEqual([0, 0, 0]);
    expect(notes).toEqual(['3 samples are no numbers and were taken for silence']);
  });
});

describe('what is no recording is refused by name, with the mend', () => {
  const text = (content: string): Uint8Array => Uint8Array.from(content, (character) => character.charCodeAt(0));
  const changed = (at: number, ...values: readonly number[]): Uint8Array => {
    const bytes = wav();
    bytes.set(values, at);
    return bytes;
  };
  it.each<[string, Uint8Array, RegExp]>([
    ['an empty file', new Uint8Array(), /^it is empty; record it again$/],
    ['text', text('file\ttranscript\nand so on'), /^it is not a WAV file: .*; save it as WAV/],
    ['an MP3 file', text('ID3\x03\x00\x00\x00\x00\x00\x00\x00\x00\x00'), /^it is an MP3 file; save it as WAV/],
    ['an Ogg file', text('OggS\x00\x02\x00\x00\x00\x00\x00\x00\x00'), /^it is an Ogg file/],
    ['a FLAC file', text('fLaC\x00\x00\x00\x22\x10\x00\x10\x00\x00'), /^it is a FLAC file/],
    ['an MP4 file', text('\x00\x00\x00\x20ftypM4A \x00'), /^it is an MP4 file/],
    ['a WebM file', text('\x1aE\xdf\xa3\x9fB\x86\x81\x01B\xf7\x81\x01'), /^it is a WebM or Matroska file/],
    ['another RIFF file', text('RIFF\x00\x01\x00\x00AVI LIST'), /^it is a RIFF file that holds no WAVE/],
    ['four bytes of a header', wav().subarray(0, 4), /^its header is cut off after 4 bytes/],
    ['a header cut in its format', wav().subarray(0, 30), /^its header is cut off inside the format/],
    ['a header without samples', wav().subarray(0, 40), /^its header is cut off: the file ends at byte 40/],
    ['no samples at all', wav(new Float32Array()), /^it holds no samples; record it again$/],
    ['one sample', wav(tone(1)), /^it is too short to hold a word: 1 sample, 0.063 ms; record at least 100 ms$/],
    ['exact zeros', wav(new Float32Array(RATE)), /^it holds no sound, all samples are equal; see that the microphone/],
    ['A-law', changed(20, 6), /^it is A-law of 16 bits; PCM of 8, 16, 24, 32 and float of 32, 64 bits are read/],
    ['12 bits', changed(34, 12), /^it is PCM of 12 bits/],
    ['no channels', changed(22, 0), /^it has 0 channels; 1 to 32 are read/],
    ['4 kHz', wav(tone(8000), 4000), /^its rate is 4000 Hz; 8000 to 96000 Hz are read/],
    [
      'floats on another scale',
      wavOf(KINDS[4] as Kind, [tone(2000, 20_000)]),
      /^its float samples reach 2.00e\+4; scale/,
    ],
  ])('%s', async (_, bytes, message) => {
    expect(await refusal(bytes)).toMatch(message);
  });

  it('ten hours, by the length alone: none of the sound is read', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'hear-'));
    const file = path.join(folder, 'long.wav');
    const [hours, rate] = [10, 8000];
    const bytes = wav(tone(rate), rate);
    new DataView(bytes.buffer).setUint32(40, hours * 3600 * rate * 2, true);
    await writeFile(file, bytes);
    const handle = await open(file, 'r+');
    // A file with a hole takes no room on the disk.
    await handle.truncate(44 + hours * 3600 * rate * 2);
    await handle.close();
    await expect(readRecording(file)).rejects.toThrow(
      `it is 10.0 hours long; at most ${LONGEST_MINUTES} minutes are decoded; cut it into pieces`,
    );
    await rm(folder, { recursive: true });
  });

  it('a missing file, a folder', async () => {
    await expect(readRecording(path.join(tmpdir(), 'no-such-file.wav'))).rejects.toThrow(
      'there is no such file; see that its name and folder are right',
    );
    await expect(readRecording(tmpdir())).rejects.toThrow('it is no plain file; name a WAV file');
  });

  it('anything else: a file changed anywhere is read or refused, and never breaks the door', async () => {
    const bytes = wav(tone(2000));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.nat(60), fc.nat(255)), { maxLength: 6 }),
        fc.nat(bytes.length),
        async (changes, length) => {
          const broken = bytes.slice(0, length);
          for (const [at, value] of changes) if (at < length) broken[at] = value;
          const read = await readRecordingBytes(broken).catch((error: unknown) => error);
          if (read instanceof Error) expect(read).toBeInstanceOf(NotUsable);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
