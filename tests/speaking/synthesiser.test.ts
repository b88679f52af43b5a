import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { FliteReply, FliteRequest } from '../../src/speaking/flite-messages.ts';
import { createSynthesiser } from '../../src/speaking/synthesiser.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A worker whose answers and silences the test decides; the real one is tested in a real browser. */
class FakeWorker extends EventTarget implements Pick<Worker, 'postMessage' | 'terminate'> {
  isTerminated = false;
  constructor(private readonly answer: (request: FliteRequest) => FliteReply | 'nothing' | 'death') {
    super();
  }
  postMessage(request: FliteRequest): void {
    const reply = this.answer(request);
    if (reply === 'nothing') return;
    queueMicrotask(() =>
      this.dispatchEvent(reply === 'death' ? new Event('error') : new MessageEvent('message', { data: reply })),
    );
  }
  terminate(): void {
    this.isTerminated = true;
  }
}

const SOUND = { samples: Float32Array.of(0.5), rate: 16_000 };
const loads = (request: FliteRequest): FliteReply | 'nothing' =>
  request.kind === 'load' ? { kind: 'loaded' } : 'nothing';
const works = (request: FliteRequest): FliteReply =>
  request.kind === 'load' ? { kind: 'loaded' } : { kind: 'synthesised', id: request.id, sound: SOUND };

/** A synthesiser that gets these workers, one after another. */
function withWorkers(...answers: ConstructorParameters<typeof FakeWorker>[0][]) {
  const workers: FakeWorker[] = [];
  const synthesiser = createSynthesiser({
    startWorker() {
      const answer = answers[workers.length];
      if (!answer) throw new Error('no more workers were to be started');
      const worker = new FakeWorker(answer);
      workers.push(worker);
      return worker as unknown as Worker;
    },
    wasmUrl: '/voice.wasm',
    loadWithinMs: 30_000,
    synthesiseWithinMs: 5_000,
  });
  return { synthesiser, workers };
}
const say = ['stud one', { voice: 'kal16' }] as const;

test('one worker serves all requests', async () => {
  const { synthesiser, workers } = withWorkers(works);
  await synthesiser.load();
  expect(await Promise.all([synthesiser.synthesise(...say), synthesiser.synthesise(...say)])).toEqual([SOUND, SOUND]);
  expect(workers).toHaveLength(1);
});

test('a worker that hangs is ended and replaced once', async () => {
  const { synthesiser, workers } = withWorkers(loads, works);
  const sound = synthesiser.synthesise(...say);
  await vi.advanceTimersByTimeAsync(5_000);
  expect(await sound).toEqual(SOUND);
  expect(workers.map(({ isTerminated }) => isTerminated)).toEqual([true, false]);
});

test('a worker that dies is replaced without waiting', async () => {
  const { synthesiser } = withWorkers((request) => (request.kind === 'load' ? { kind: 'loaded' } : 'death'), works);
  expect(await synthesiser.synthesise(...say)).toEqual(SOUND);
});

test('a second worker that hangs is the end of the attempt, with the reason', async () => {
  const { synthesiser, workers } = withWorkers(loads, loads);
  const sound = expect(synthesiser.synthesise(...say)).rejects.toThrow('it made no sound within 5000 ms');
  await vi.advanceTimersByTimeAsync(10_000);
  await sound;
  expect(workers.map(({ isTerminated }) => isTerminated)).toEqual([true, true]);
});

test('a voice file that never comes is given up, and asked for again next time', async () => {
  const { synthesiser } = withWorkers(() => 'nothing', works);
  const load = expect(synthesiser.load()).rejects.toThrow('it did not load within 30000 ms');
  await vi.advanceTimersByTimeAsync(30_000);
  await load;
  await expect(synthesiser.load()).resolves.toBeUndefined();
});

test('the reason of a failed load comes through', async () => {
  const { synthesiser } = withWorkers(() => ({ kind: 'not loaded', reason: 'the voice file cannot be fetched' }));
  await expect(synthesiser.load()).rejects.toThrow('the voice file cannot be fetched');
});
