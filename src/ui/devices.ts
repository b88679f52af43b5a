import { createSignal, type Accessor } from 'solid-js';
import { createCamera, type Camera, type CameraState } from '../gesture/camera.ts';
import { createHearing } from '../hearing/hearing.ts';
import { microphone } from '../hearing/microphone.ts';
import { remembered, SoundMemory } from '../hearing/sound-memory.ts';
import type { Hearing, HearingState, LoadOutcome, ModelInfo, ModelSource, Sound } from '../hearing/types.ts';
import { CALL_WORD, hushWords, spokenWords } from '../language/hush.ts';
import { createCameraReport } from './camera-report.ts';
import { createEarReport } from './ear-report.ts';
import { heardSound, type HeardSound } from './heard-sound.ts';
import { EAR, takePen, type Pen } from '../storage/pen.ts';
import { SECONDS_REMEMBERED } from './sound-keeper.ts';
import { STRETCH, type Speed } from '../speaking/speed.ts';
import { createSpeaking, type Speaking, type SpeakingState, type ToneKind } from '../speaking/speaking.ts';

/**
 * Ear and voice of the app, with their states as signals. While the voice sounds, the ear is closed to everything but the
 * word that hushes it.
 */
export interface Devices {
  readonly hearing: Hearing;
  readonly speaking: Speaking;
  /** Off until somebody turns it on. */
  readonly camera: Camera;
  readonly cameraState: Accessor<CameraState>;
  readonly hearingState: Accessor<HearingState>;
  readonly speakingState: Accessor<SpeakingState>;
  /** dBFS */
  readonly level: Accessor<number>;
  /** What the ear measures; null before the microphone has given any. */
  readonly measured: Accessor<Sound | null>;
  /** The same, judged and rounded for the screen; null before the microphone has given any. */
  readonly sound: Accessor<HeardSound | null>;
  readonly modelName: Accessor<string | null>;
  /** The speech model that is loaded. */
  readonly model: Accessor<Pick<ModelInfo, 'name' | 'sha256'> | null>;
  /** The last seconds of the microphone, while it is started: only in a session whose people agreed to that. */
  readonly memory: SoundMemory;
  loadModel(source: ModelSource): Promise<LoadOutcome>;
  /**
   * Says texts one after another, in place of what is being said. The ear is closed from the first to the last.
   * @param said told of each text that was said in words, to its end
   * @returns whether all of them were
   */
  announce(texts: readonly string[], said?: (text: string) => void): Promise<boolean>;
  /** The same, cutting in on news that wait as well. */
  callOut(texts: readonly string[]): Promise<boolean>;
  /** Says a text after what is being said: news of the devices may not cut off a read-back. */
  addNews(text: string): Promise<boolean>;
  /** Sounds a short signal as loud as the room needs it, where signals are wanted; the ear is closed meanwhile. */
  tone(kind: ToneKind): Promise<void>;
  /** How fast the voice of this device speaks, from the next announcement on. */
  readonly speed: Accessor<Speed>;
  setSpeed(speed: Speed): void;
  /** Whether signals are wanted on this device. What they tell is on the screen as well. */
  readonly hasTones: Accessor<boolean>;
  setTones(wanted: boolean): void;
  /**
   * Hears the call for help while the app speaks, too, whenever it is wanted as an announcement begins.
   * @returns stops that
   */
  heedCall(isWanted: () => boolean, call: () => void): () => void;
  /** Another window of this app has ear and voice: two that answer one voice would both act on it. */
  readonly elsewhere: Accessor<boolean>;
  /**
   * Call from a tap or key: browsers give sound and microphone only then. With a closed ear it speaks and does not listen,
   * until it is started without.
   */
  start(ear?: 'closed'): Promise<void>;
  /** The same, where sound or microphone still wait for a tap; does nothing else. */
  wake(): void;
}

export function createDevices(voice: 'embedded' | 'system'): Devices {
  const memory = new SoundMemory(SECONDS_REMEMBERED);
  const [speed, setSpeed] = createSignal<Speed>('normal');
  // What is said while a person has closed the ear is nobody's business, the memory's neither.
  const isOpen = (): boolean => hearing.closedBy !== 'asked';
  const hearing: Hearing = createHearing({ source: remembered(microphone(), memory, isOpen) });
  const speaking = createSpeaking({
    prefer: voice,
    stretch: () => STRETCH[speed()],
    sounded: ({ samples, rate }, from) => hearing.plays(samples, rate, from),
  });
  const [hearingState, setHearingState] = createSignal(hearing.state);
  const [speakingState, setSpeakingState] = createSignal(speaking.state);
  const camera = createCamera();
  const [cameraState, setCameraState] = createSignal(camera.state);
  const [level, setLevel] = createSignal(-Infinity);
  const [measured, setMeasured] = createSignal<Sound | null>(null);
  const [sound, setSound] = createSignal<HeardSound | null>(null);
  const [model, setModel] = createSignal<ModelInfo | null>(null);

  hearing.subscribe(setHearingState);
  hearing.onLevel(setLevel);
  hearing.onSound((now) => {
    setMeasured(now);
    setSound((before) => heardSound(now, before?.background ?? null));
  });
  speaking.subscribe(setSpeakingState);
  // What was being said stays on the screen.
  hearing.onHush((word) => {
    speaking.hush();
    if (word === CALL_WORD) onCall?.();
  });
  let isCallWanted = (): boolean => false;
  let onCall: (() => void) | null = null;
  const addNews = (text: string): Promise<boolean> => speak([text], saying > 0 ? words : []);
  hearing.subscribe(createEarReport((text) => void addNews(text)));
  camera.onState(setCameraState);
  camera.onState(createCameraReport((text) => void addNews(text)));
  /** Runs of announcements that are under way, and the words that sound. */
  let saying = 0;
  /** These, and signals. */
  let sounding = 0;
  let words: readonly string[] = [];
  const [hasTones, setTones] = createSignal(true);
  const [elsewhere, setElsewhere] = createSignal(false);
  let ear: Pen | null = null;

  async function speak(
    texts: readonly string[],
    before: readonly string[] = [],
    urgent = false,
    said?: (text: string) => void,
  ): Promise<boolean> {
    sounding++;
    saying++;
    words = [...before, ...texts.flatMap(spokenWords)];
    hearing.mute('own voice');
    hearing.saying({ words, hush: hushWords(words, isCallWanted()) });
    const ends = texts.map((text) => speaking.say({ text, urgent }));
    texts.forEach((text, i) => void ends[i]?.then((outcome) => outcome === 'said' && said?.(text)));
    const outcomes = await Promise.all(ends);
    // News that were added meanwhile are words of their own; a signal is none.
    if (--saying === 0) hearing.saying(null);
    if (--sounding === 0) hearing.unmute('own voice');
    return outcomes.every((outcome) => outcome === 'said');
  }

  /** A signal is no speech: the ear is closed as long as it sounds, and a little longer. */
  async function tone(kind: ToneKind): Promise<void> {
    if (!hasTones()) return;
    sounding++;
    hearing.mute('own voice');
    await speaking.tone(kind, measured()?.noise ?? null);
    if (--sounding === 0) hearing.unmute('own voice');
  }

  async function open(): Promise<void> {
    ear ??= await takePen(EAR);
    setElsewhere(ear === null);
    if (ear === null) return;
    await speaking.unlock();
    await hearing.listen();
  }

  return {
    hearing,
    speaking,
    camera,
    cameraState,
    hearingState,
    speakingState,
    level,
    measured,
    sound,
    modelName: () => model()?.name ?? null,
    model,
    memory,
    async loadModel(source) {
      const loaded = await hearing.loadModel(source);
      if (loaded.ok) setModel(loaded.model);
      return loaded;
    },
    async announce(texts, said) {
      speaking.hush();
      return speak(texts, [], false, said);
    },
    async callOut(texts) {
      speaking.hush();
      return speak(texts, [], true);
    },
    addNews,
    heedCall(isWanted, call) {
      [isCallWanted, onCall] = [isWanted, call];
      return () => {
        if (onCall === call) [isCallWanted, onCall] = [() => false, null];
      };
    },
    tone,
    speed,
    setSpeed,
    hasTones,
    setTones,
    elsewhere,
    async start(ear) {
      if (ear === 'closed') hearing.mute('asked');
      else hearing.unmute('asked');
      await open();
    },
    wake() {
      const { state } = hearing;
      const isHeld = state.kind === 'failed' && state.failure.code === 'microphone held';
      const isWaiting = isHeld || state.kind === 'off' || speaking.state.why !== undefined || elsewhere();
      if (isWaiting) void open();
    },
  };
}
