/** The embedded voice: the Flite synthesiser, compiled to WebAssembly. No DOM: it runs in a worker and in Node alike. */
import { runCommand } from './wasi.ts';
import { decodeWav } from './wav.ts';
import type { Sound } from './sound.ts';

/** The voices inside the module that are clear enough at 16 kHz. */
export const FLITE_VOICES = ['kal16', 'rms', 'slt', 'awb'] as const;
export type FliteVoice = (typeof FLITE_VOICES)[number];

export interface FliteOptions {
  readonly voice: FliteVoice;
  /** How many times as long as normal each sound lasts; 0.5 to 3, 1 is normal. */
  readonly stretch?: number;
}

const WASM_MAGIC = [0x00, 0x61, 0x73, 0x6d];
const STRETCH = { least: 0.5, most: 3 };

/** Compiles the module's bytes. @throws Error when they are something else, such as a server's error page. */
export async function compileFlite(bytes: Uint8Array<ArrayBuffer>): Promise<WebAssembly.Module> {
  if (!WASM_MAGIC.every((byte, i) => bytes[i] === byte))
    throw new Error(`the voice file is not WebAssembly (${bytes.length} bytes)`);
  return WebAssembly.compile(bytes);
}

/**
 * Turns words into sound: 16 000 samples per second, with the voice's own silence at both ends.
 * The same arguments give the same samples.
 * @throws RangeError for an unknown voice or a stretch out of range; Error when the synthesiser fails.
 */
export function runFlite(module: WebAssembly.Module, text: string, { voice, stretch = 1 }: FliteOptions): Sound {
  // The program itself takes an unknown voice for its 8 kHz one and says nothing.
  if (!FLITE_VOICES.includes(voice))
    throw new RangeError(`No voice is named ${String(voice)}: use one of ${FLITE_VOICES.join(', ')}.`);
  if (!(stretch >= STRETCH.least && stretch <= STRETCH.most))
    throw new RangeError(`The stretch is ${stretch}: it must lie between ${STRETCH.least} and ${STRETCH.most}.`);
  const args = ['flite', '-voice', voice, '--setf', `duration_stretch=${stretch}`, '-t', text, '-o', '/speech.wav'];
  return decodeWav(runCommand(module, args).file);
}
