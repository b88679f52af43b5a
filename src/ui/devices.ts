import { createSignal, type Accessor } from 'solid-js';
import { createHearing } from '../hearing/hearing.ts';
import type { Hearing, HearingState, LoadOutcome, ModelSource } from '../hearing/types.ts';
import { createSpeaking, type Speaking, type SpeakingState } from '../speaking/speaking.ts';

/** Ear and voice of the app, with their states as signals. While the voice sounds, the ear is closed. */
export interface Devices {
  readonly hearing: Hearing;
  readonly speaking: Speaking;
  readonly hearingState: Accessor<HearingState>;
  readonly speakingState: Accessor<SpeakingState>;
  /** dBFS */
  readonly level: Accessor<number>;
  readonly modelName: Accessor<string | null>;
  loadModel(source: ModelSource): Promise<LoadOutcome>;
  /** Call from a tap or key: browsers give sound and microphone only then. */
  start(): Promise<void>;
}

export function createDevices(voice: 'embedded' | 'system'): Devices {
  const hearing = createHearing({});
  const speaking = createSpeaking({ prefer: voice });
  const [hearingState, setHearingState] = createSignal(hearing.state);
  const [speakingState, setSpeakingState] = createSignal(speaking.state);
  const [level, setLevel] = createSignal(-Infinity);
  const [modelName, setModelName] = createSignal<string | null>(null);

  hearing.subscribe(setHearingState);
  hearing.onLevel(setLevel);
  speaking.subscribe((state) => {
    setSpeakingState(state);
    if (state.saying === null) hearing.unmute('own voice');
    else hearing.mute('own voice');
  });

  return {
    hearing,
    speaking,
    hearingState,
    speakingState,
    level,
    modelName,
    async loadModel(source) {
      const loaded = await hearing.loadModel(source);
      if (loaded.ok) setModelName(loaded.model.name);
      return loaded;
    },
    async start() {
      await speaking.unlock();
      hearing.unmute('asked');
      await hearing.listen();
    },
  };
}
