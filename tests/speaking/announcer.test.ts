import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createAnnouncer } from '../../src/speaking/announcer.ts';
import type { SpeakingState } from '../../src/speaking/types.ts';
import { OutputStopped } from '../../src/speaking/voice.ts';
import { breaksWith, fakeVoice, hangs, neverEnds, speaksFor } from './fake-voice.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Lets `ms` pass, and with it everything that was due. */
const pass = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);

describe('announcements', () => {
  test('wait until a voice is chosen, and are then spoken in order', async () => {
    const voice = fakeVoice('embedded');
    const announcer = createAnnouncer([voice]);
    const outcomes = Promise.all([announcer.say({ text: 'stud one' }), announcer.say({ text: 'stud six' })]);
    await pass(60_000);
    expect(voice.heard).toEqual([]);
    expect(announcer.state).toEqual({ voice: 'choosing', saying: null });

    await announcer.choose();
    await pass(500);
    expect(voice.heard).toEqual(['stud one']);
    await pass(1000);
    expect(voice.heard).toEqual(['stud one', 'stud six']);
    await pass(1000);
    expect(await outcomes).toEqual(['said', 'said']);
  });

  test('an urgent one cuts in, in the same turn, and the rest goes on after it', async () => {
    const voice = fakeVoice('embedded');
    const announcer = createAnnouncer([voice]);
    await announcer.choose();
    const first = announcer.say({ text: 'stud one' });
    const second = announcer.say({ text: 'stud six' });
    await pass(300);
    const stop = announcer.say({ text: 'stop', urgent: true });
    expect(announcer.state.saying).toBe('stop');
    expect(await first).toBe('cut short');
    await pass(2000);
    expect(await Promise.all([stop, second])).toEqual(['said', 'said']);
    expect(voice.heard).toEqual(['stud one', 'stop', 'stud six']);
  });

  test('a hush stops the sound in the same turn, empties the queue and leaves it fit for use', async () => {
    let isStopped = false;
    const voice = fakeVoice('embedded', (utterance, signal, progress) => {
      signal.addEventListener('abort', () => (isStopped = true));
      return speaksFor(1000)(utterance, signal, progress);
    });
    const announcer = createAnnouncer([voice]);
    await announcer.choose();
    const outcomes = Promise.all(['one', 'two', 'three'].map((text) => announcer.say({ text })));
    await pass(300);
    announcer.hush();
    expect(isStopped).toBe(true);
    expect(announcer.state.saying).toBeNull();
    expect(await outcomes).toEqual(['cut short', 'cut short', 'cut short']);

    const next = announcer.say({ text: 'four' });
    await pass(1000);
    expect(await next).toBe('said');
    expect(voice.heard).toEqual(['one', 'four']);
  });

  test('the text is in the state before its first sound and until after its last', async () => {
    const order: string[] = [];
    const voice = fakeVoice('embedded', async (_utterance, _signal, { sounding, started }) => {
      await new Promise((resolve) => setTimeout(resolve, 200));
      sounding();
      order.push('first sound');
      started(100);
      await new Promise((resolve) => setTimeout(resolve, 100));
      order.push('last sound');
    });
    const announcer = createAnnouncer([voice]);
    await announcer.choose();
    announcer.subscribe(({ saying }) => order.push(String(saying)));
    const said = announcer.say({ text: 'stud one' });
    await pass(100);
    expect(order).toEqual([]);
    await pass(1000);
    await said;
    expect(order).toEqual(['stud one', 'first sound', 'last sound', 'null']);
  });

  test.each(['', '   ', '…', '漢'])('text without an English word (%j) is over at once, and silent', async (text) => {
    const voice = fakeVoice('embedded');
    const announcer = createAnnouncer([voice]);
    await announcer.choose();
    expect(await announcer.say({ text })).toBe('silent');
    expect(voice.heard).toEqual([]);
  });

  test('after closing they are cut short, and the voices are let go', async () => {
    const voice = fakeVoice('embedded');
    const announcer = createAnnouncer([voice]);
    await announcer.choose();
    const open = announcer.say({ text: 'one' });
    announcer.close();
    expect(await open).toBe('cut short');
    expect(await announcer.say({ text: 'two' })).toBe('cut short');
    expect(voice.isClosed).toBe(true);
  });
});

describe('a voice that fails', () => {
  test('to get ready is passed over, and the state says why', async () => {
    const announcer = createAnnouncer([fakeVoice('system', hangs, 'there is none'), fakeVoice('embedded')]);
    await announcer.choose();
    expect(announcer.state).toEqual({
      voice: 'embedded',
      saying: null,
      why: "The system's voice is not used: there is none.",
    });
  });

  test('to start within its time is left, and the next one says the same words', async () => {
    const embedded = fakeVoice('embedded');
    const announcer = createAnnouncer([fakeVoice('system', hangs), embedded]);
    await announcer.choose();
    const said = announcer.say({ text: 'stud one' });
    await pass(1499);
    expect(announcer.state.voice).toBe('system');
    await pass(1);
    expect(announcer.state).toMatchObject({
      voice: 'embedded',
      saying: 'stud one',
      why: "The system's voice is not used: it did not start within 1500 ms.",
    });
    await pass(1000);
    expect(await said).toBe('said');
  });

  test('to end within three times the expected duration is left', async () => {
    const embedded = fakeVoice('embedded');
    const announcer = createAnnouncer([fakeVoice('system', neverEnds(1000)), embedded]);
    await announcer.choose();
    const said = announcer.say({ text: 'stud one' });
    await pass(3000);
    expect(announcer.state.voice).toBe('system');
    await pass(500);
    expect(embedded.heard).toEqual(['stud one']);
    await pass(1000);
    expect(await said).toBe('said');
  });

  test('with an error is left for good; the queue goes on without it', async () => {
    const embedded = fakeVoice('embedded', breaksWith(new Error('it broke')));
    const tones = fakeVoice('tones');
    const announcer = createAnnouncer([embedded, tones]);
    await announcer.choose();
    const outcomes = Promise.all([announcer.say({ text: 'one' }), announcer.say({ text: 'two' })]);
    await pass(2000);
    expect(await outcomes).toEqual(['toned', 'toned']);
    expect(announcer.state.why).toBe('The embedded voice is not used: it broke.');
  });

  test('is not tried again by a new choice while another one speaks', async () => {
    let isBroken = true;
    const system = fakeVoice('system');
    system.prepare = () => (isBroken ? Promise.reject(new Error('there is none')) : Promise.resolve());
    const announcer = createAnnouncer([system, fakeVoice('embedded')]);
    await announcer.choose();
    isBroken = false;
    await announcer.choose();
    expect(announcer.state.voice).toBe('embedded');
  });

  test('is tried again by a new choice when nothing but tones was left', async () => {
    let isBroken = true;
    const embedded = fakeVoice('embedded', (...call) =>
      isBroken ? Promise.reject(new Error('it broke')) : speaksFor(100)(...call),
    );
    const announcer = createAnnouncer([embedded, fakeVoice('tones')]);
    await announcer.choose();
    void announcer.say({ text: 'one' });
    await pass(1000);
    expect(announcer.state.voice).toBe('tones');

    isBroken = false;
    await announcer.choose();
    expect(announcer.state).toEqual({ voice: 'embedded', saying: null });
  });

  test('with every other one makes the announcements silent, not stuck', async () => {
    const announcer = createAnnouncer([fakeVoice('embedded', hangs, 'a'), fakeVoice('tones', hangs)]);
    await announcer.choose();
    const outcomes = Promise.all([announcer.say({ text: 'one' }), announcer.say({ text: 'two' })]);
    await pass(2000);
    expect(await outcomes).toEqual(['silent', 'silent']);
    expect(announcer.state.why).toContain('The tone generator is not used');
  });

  test('late sounds of a voice that was given up do not show in the state', async () => {
    const late = fakeVoice('system', async (_utterance, _signal, { sounding }) => {
      await new Promise((resolve) => setTimeout(resolve, 4000));
      sounding();
    });
    const announcer = createAnnouncer([late, fakeVoice('embedded')]);
    await announcer.choose();
    void announcer.say({ text: 'stud one' });
    await pass(3000);
    const states: SpeakingState[] = [];
    announcer.subscribe((state) => states.push(state));
    await pass(5000);
    expect(states).toEqual([]);
  });
});

test('a stopped output is no fault of the voice: silent, told of, and the voice stays', async () => {
  let isStopped = true;
  const voice = fakeVoice('embedded', (...call) =>
    isStopped ? Promise.reject(new OutputStopped('Touch the screen once.')) : speaksFor(100)(...call),
  );
  const announcer = createAnnouncer([voice, fakeVoice('tones')]);
  await announcer.choose();
  expect(await announcer.say({ text: 'one' })).toBe('silent');
  expect(announcer.state).toEqual({ voice: 'embedded', saying: null, why: 'Touch the screen once.' });

  isStopped = false;
  const said = announcer.say({ text: 'two' });
  await pass(100);
  expect(await said).toBe('said');
  expect(announcer.state).toEqual({ voice: 'embedded', saying: null });
});
