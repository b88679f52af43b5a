/** Runs the embedded voice beside the page, so that the page stays quick while it works. */
import { compileFlite, runFlite } from './flite.ts';
import type { FliteReply, FliteRequest } from './flite-messages.ts';
import { reasonOf } from './voice.ts';

let loading: Promise<WebAssembly.Module> | undefined;

addEventListener('message', ({ data }: MessageEvent<FliteRequest>) => {
  if (data.kind === 'load') void load(data.wasmUrl);
  else void synthesise(data);
});

async function load(wasmUrl: string): Promise<void> {
  loading = fetchModule(wasmUrl);
  try {
    await loading;
    reply({ kind: 'loaded' });
  } catch (error) {
    reply({ kind: 'not loaded', reason: reasonOf(error) });
  }
}

async function fetchModule(wasmUrl: string): Promise<WebAssembly.Module> {
  const response = await fetch(wasmUrl).catch((error: unknown) => {
    throw new Error('the voice file cannot be fetched', { cause: error });
  });
  if (!response.ok) throw new Error(`the voice file cannot be fetched (status ${response.status})`);
  return compileFlite(new Uint8Array(await response.arrayBuffer()));
}

async function synthesise({ id, text, options }: Extract<FliteRequest, { kind: 'synthesise' }>): Promise<void> {
  try {
    if (!loading) throw new Error('the voice file was not loaded');
    const sound = runFlite(await loading, text, options);
    reply({ kind: 'synthesised', id, sound }, [sound.samples.buffer]);
  } catch (error) {
    reply({ kind: 'not synthesised', id, reason: reasonOf(error) });
  }
}

function reply(message: FliteReply, transfer: Transferable[] = []): void {
  postMessage(message, { transfer });
}
