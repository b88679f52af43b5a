import type { BrowserContext, Page } from 'playwright-core';
import { resample, type Sound } from './speech.ts';

const RATE = 16_000;

declare global {
  /** Plays 16-bit samples (Base64, 16 kHz) into the made-up microphone; resolves with when it began and ended (ms since 1970). */
  var speakIntoMicrophone: (base64: string) => Promise<{ from: number; to: number }>;
}

/**
 * Puts a microphone made of sound into every page of a browser: `getUserMedia` gives a real stream, and all behind it
 * (worklet, recogniser) is the real path. A test can then speak when the app listens, as a person does.
 */
export async function installMicrophone(context: BrowserContext): Promise<void> {
  await context.addInitScript((rate) => {
    const audio = new AudioContext();
    const output = audio.createMediaStreamDestination();
    // A quiet room, not the exact zeros of a dead device.
    const room = audio.createBuffer(1, audio.sampleRate, audio.sampleRate);
    room.getChannelData(0).forEach((_, at, samples) => (samples[at] = 2e-4 * Math.sin(at * at)));
    const hiss = new AudioBufferSourceNode(audio, { buffer: room, loop: true });
    hiss.connect(output);
    hiss.start();
    navigator.mediaDevices.getUserMedia = async () => {
      await audio.resume();
      return output.stream.clone();
    };
    globalThis.speakIntoMicrophone = (base64) => {
      const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
      const samples = Float32Array.from(new Int16Array(bytes.buffer), (sample) => sample / 32768);
      const buffer = audio.createBuffer(1, samples.length, rate);
      buffer.copyToChannel(samples, 0);
      const source = new AudioBufferSourceNode(audio, { buffer });
      source.connect(output);
      const from = Date.now();
      source.start();
      return new Promise((resolve) => (source.onended = () => resolve({ from, to: Date.now() })));
    };
  }, RATE);
}

/** Speaks into the microphone of a page. @returns when it sounded, in ms since 1970 */
export function speak(page: Page, sound: Sound): Promise<{ from: number; to: number }> {
  return page.evaluate((base64) => globalThis.speakIntoMicrophone(base64), samplesInBase64(sound));
}

function samplesInBase64(sound: Sound): string {
  const { samples } = resample(sound, RATE);
  const bytes = Buffer.alloc(samples.length * 2);
  samples.forEach((sample, i) => bytes.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample)) * 32767), i * 2));
  return bytes.toString('base64');
}
