import { expect, it } from 'vitest';
import { createHearing } from '../../src/hearing/hearing.ts';
import { remembered, SoundMemory } from '../../src/hearing/sound-memory.ts';
import type { AudioSink, AudioSource } from '../../src/hearing/types.ts';

it('that a person has closed is known as closed also where no model hears: nothing is remembered of what is said then', async () => {
  const sinks: AudioSink[] = [];
  const source: AudioSource = {
    open: (sink) => {
      sinks.push(sink);
      return Promise.resolve({ sampleRate: 1_000, retry: () => Promise.resolve(), close: () => Promise.resolve() });
    },
  };
  const memory = new SoundMemory(10);
  const hearing = createHearing({ source: remembered(source, memory, () => hearing.closedBy !== 'asked') });
  memory.start();
  await hearing.listen();
  const take = (): Promise<void> | undefined =>
    sinks[0]?.chunk({ samples: new Float32Array(100), time: performance.now() });
  await take();
  hearing.mute('asked');
  hearing.mute('own voice');
  await take();
  expect([hearing.state.kind, hearing.closedBy, memory.length]).toEqual(['off', 'asked', 100]);
  hearing.unmute('asked');
  await take();
  expect([hearing.closedBy, memory.length]).toEqual(['own voice', 200]);
  await hearing.close();
});
