import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createSystemVoice } from '../../src/speaking/system-voice.ts';

/** The machine that runs these tests has no system voice: this stands in for one, for the rules of choice and time. */
class FakeSynthesis {
  readonly spoken: FakeUtterance[] = [];
  cancels = 0;
  constructor(
    private readonly voices: () => Partial<SpeechSynthesisVoice>[],
    private readonly startsAfterMs = 10,
  ) {}
  getVoices = () => this.voices();
  speak(utterance: FakeUtterance): void {
    this.spoken.push(utterance);
    setTimeout(() => utterance.onstart?.(), this.startsAfterMs);
    setTimeout(() => utterance.onend?.(), this.startsAfterMs + 1000);
  }
  cancel(): void {
    this.cancels++;
  }
}
class FakeUtterance {
  voice?: Partial<SpeechSynthesisVoice>;
  rate = 1;
  volume = 1;
  onstart?: () => void;
  onend?: () => void;
  constructor(readonly text: string) {}
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('SpeechSynthesisUtterance', FakeUtterance);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const STRETCH = 2;
const LOCAL = { name: 'Local', lang: 'en-GB', localService: true, default: false };
const createWith = (synthesis: FakeSynthesis) =>
  createSystemVoice(synthesis as unknown as SpeechSynthesis, () => STRETCH);

describe('a system voice is chosen', () => {
  const REMOTE = { ...LOCAL, name: 'Remote', localService: false };
  const GERMAN = { ...LOCAL, name: 'German', lang: 'de-DE' };
  const DEFAULT = { ...LOCAL, name: 'Default', lang: 'en-US', default: true };

  test.each([
    ['the local one', [REMOTE, LOCAL], 'Local'],
    ['the English one', [GERMAN, LOCAL], 'Local'],
    ['the default, where it will do', [LOCAL, DEFAULT], 'Default'],
  ])('%s', async (_which, voices, name) => {
    const synthesis = new FakeSynthesis(() => voices);
    const ready = createWith(synthesis).prepare();
    await vi.advanceTimersByTimeAsync(1000);
    await ready;
    expect(synthesis.spoken[0]?.voice?.name).toBe(name);
  });

  test('though the list fills late', async () => {
    let voices: Partial<SpeechSynthesisVoice>[] = [];
    setTimeout(() => (voices = [LOCAL]), 1500);
    const ready = createWith(new FakeSynthesis(() => voices)).prepare();
    await vi.advanceTimersByTimeAsync(2000);
    await expect(ready).resolves.toBeUndefined();
  });
});

describe('no system voice is used', () => {
  test('when only remote or foreign ones are found within two seconds', async () => {
    const synthesis = new FakeSynthesis(() => [
      { ...LOCAL, localService: false },
      { ...LOCAL, lang: 'fr-FR' },
    ]);
    const refused = expect(createWith(synthesis).prepare()).rejects.toThrow('no local English voice was found');
    await vi.advanceTimersByTimeAsync(2100);
    await refused;
  });

  test('when the check does not start in time; the check is taken back', async () => {
    const synthesis = new FakeSynthesis(() => [LOCAL], 60_000);
    const refused = expect(createWith(synthesis).prepare()).rejects.toThrow(
      'Local failed its check, it did not start within 1500 ms',
    );
    await vi.advanceTimersByTimeAsync(1500);
    await refused;
    expect(synthesis.cancels).toBe(1);
  });

  test('when the browser offers none', async () => {
    await expect(createSystemVoice(undefined, () => STRETCH).prepare()).rejects.toThrow('this browser offers none');
  });
});

test('the check is not heard, speech is: digits set apart, as fast as was chosen', async () => {
  const synthesis = new FakeSynthesis(() => [LOCAL]);
  const voice = createWith(synthesis);
  const ready = voice.prepare();
  await vi.advanceTimersByTimeAsync(100);
  await ready;
  const progress = { sounding: vi.fn(), started: vi.fn() };
  const utterance = { text: 'two four newton metres', urgent: false } as const;
  const said = voice.speak(utterance, new AbortController().signal, progress);
  expect(progress.sounding).toHaveBeenCalledOnce();
  expect(progress.started).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(10);
  expect(progress.started).toHaveBeenCalledOnce();
  await vi.advanceTimersByTimeAsync(1000);
  await said;
  const [check, speech] = synthesis.spoken;
  expect(check?.volume).toBe(0);
  expect(speech).toMatchObject({ text: 'two, four newton metres', volume: 1, rate: 0.5 });
});
