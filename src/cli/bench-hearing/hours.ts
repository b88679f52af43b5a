/** Whether a shift of listening makes memory grow. */
import type { Sound } from '../../speaking/sound.ts';
import { resample } from '../hear/resample.ts';
import type { Ears } from './host.ts';
import { shopSpeech } from './shop.ts';

/** What a microphone gives most often, in hertz. */
const RATE = 48_000;
/** Between two utterances, in seconds, in turn: some follow at once, most do not. */
const PAUSES = [1, 6, 3, 12];
/** As loud as a quiet workshop, about −50 dBFS. */
const NOISE = 0.006;
const REPORT_MINUTES = 15;

/**
 * Listens for so many hours of sound and prints what the memory is on the way. A growth shows in the last lines: at first
 * everything is made that is then kept.
 */
export async function listenFor(ears: Ears, hours: number): Promise<void> {
  await ears.beginShift(await shopSound());
  const begun = performance.now();
  console.log('hours of sound; hours it took; utterances; phrase lists; MB: engine, page and workers');
  for (let minutes = 0; minutes < hours * 60;) {
    const next = Math.min(REPORT_MINUTES, hours * 60 - minutes);
    const { utterances, lists, failures } = await ears.goOn(next * 60);
    minutes += next;
    const { engine, all } = await ears.memory();
    const took = (performance.now() - begun) / 3_600_000;
    console.log(
      [(minutes / 60).toFixed(2), took.toFixed(2), utterances, lists, `${megabytes(engine)}, ${megabytes(all)}`].join(
        '; ',
      ),
    );
    for (const failure of failures) console.log(`  failed: ${failure}`);
  }
}

const megabytes = (bytes: number | null): string => (bytes === null ? 'unknown' : (bytes / 2 ** 20).toFixed(1));

/** All that is said in the shop, in steady noise. */
async function shopSound(): Promise<Sound> {
  const quiet = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * RATE));
  const parts = (await shopSpeech()).flatMap(({ sound }, at) => [
    resample(sound(), RATE).samples,
    quiet(PAUSES[at % PAUSES.length] ?? 0),
  ]);
  const samples = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let from = 0;
  for (const part of parts) {
    samples.set(part, from);
    from += part.length;
  }
  // Any noise will do, as long as it is the same in each run.
  return { samples: samples.map((sample, at) => sample * 0.5 + NOISE * Math.sin(at * at)), rate: RATE };
}
