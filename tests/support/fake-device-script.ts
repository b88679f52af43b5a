/** A job spoken into a microphone that cannot wait for the app: its pauses are worked out from what the app will say. */
import { announce } from '../../src/language/announce.ts';
import { situationOf } from '../../src/language/situation.ts';
import { typedWords } from '../../src/language/typed.ts';
import { understand } from '../../src/language/understand.ts';
import { readProcedure } from '../../src/procedure/procedure.ts';
import { SILENCE } from '../../src/session/silence.ts';
import { fold } from '../../src/session/fold.ts';
import { createEmbeddedVoice } from '../../src/speaking/embedded-voice.ts';
import { STRETCH } from '../../src/speaking/speed.ts';
import { openedBy } from '../record/sealed.ts';
import { eventOf, happened, refused, start, tell, type Play } from '../session/play.ts';
import { join, silence, synthesise, type Sound } from './speech.ts';

/** Of the app's voice in hertz, and of the sound that is made here: the browser takes it to the rate of its device. */
const RATE = 16_000;
/** In milliseconds: the microphone opens before the work screen is up and its voice begins. */
const OPENING = 2500;
/** In milliseconds: the pause that ends an utterance, and the tail of the app's own voice. The ear is open after them. */
const EAR_CLOSED = 900 + 300;
/**
 * From the end of a line to the next one, without the answer between them, in milliseconds: half way between the ear's
 * opening and the silence after which a reading is asked about again, so that a busy machine may be late as well as early.
 */
const TURN = EAR_CLOSED + (SILENCE * 1000) / 2;
/** In milliseconds: what follows the file is exact zeros, and they are a dead microphone to the app. */
const END = 15_000;

/**
 * Speaks a whole job as one sound: each line, then a pause in which the app answers it, so that a line comes when the app
 * listens. The session is played as the app plays it, and the answers are spoken by the app's own voice.
 * @throws Error where a line means nothing or is refused at its place, and where the job is not done after the last one
 */
export async function spokenJob(procedureFile: unknown, lines: readonly string[]): Promise<Sound> {
  let play = await opened(procedureFile);
  let sound = silence(OPENING + (await answerLength(play)), RATE);
  for (const line of lines) {
    play = said(play, line);
    sound = join(sound, await synthesise(line, { voice: 'rms' }), silence(TURN + (await answerLength(play)), RATE));
  }
  if (play.state.phase !== 'closed') throw new Error('The job is not done after the last line.');
  return roomTone(join(sound, silence(END, RATE)));
}

async function opened(procedureFile: unknown): Promise<Play> {
  const loaded = readProcedure(procedureFile);
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults, null, 2));
  const { state } = start(loaded.procedure);
  const event = eventOf(await openedBy(procedureFile), 0);
  return { state: fold(state, event), events: [event], last: { kind: 'accepted', events: [event.body] } };
}

function said(play: Play, line: string): Play {
  const words = typedWords(line).map((word) => ({ word, confidence: 1 }));
  const understood = understand(words, situationOf(play.state));
  if (understood.kind === 'nothing') throw new Error(`"${line}" means nothing at its place.`);
  const after = tell(play, understood.meaning);
  const refusal = refused(after);
  if (refusal) throw new Error(`"${line}" is refused: ${refusal.code}.`);
  return after;
}

/** How long the app speaks after the last decision, in milliseconds. */
async function answerLength(play: Play): Promise<number> {
  let length = 0;
  const voice = createEmbeddedVoice({
    synthesiser: { load: () => Promise.resolve(), synthesise, close: () => undefined },
    output: {
      start: () => Promise.resolve(),
      play: (_sound, _signal, started) => Promise.resolve(started()),
      close: () => Promise.resolve(),
    },
    voice: 'kal16',
    stretch: () => STRETCH.faster,
    startWithinMs: Infinity,
  });
  const progress = { sounding: () => undefined, started: (ms: number) => void (length += ms) };
  for (const text of announce(play.state, happened(play)))
    await voice.speak({ text, urgent: false }, new AbortController().signal, progress);
  return length;
}

/** Exact zeros are what a dead microphone sends; a room is never that quiet. */
const roomTone = ({ samples, rate }: Sound): Sound => ({
  samples: samples.map((sample, at) => sample + 2e-4 * Math.sin(at * at)),
  rate,
});
