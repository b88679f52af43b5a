import { describe, expect, it } from 'vitest';
import type { Engine, EngineQuestion } from '../../src/hearing/engine.ts';
import type { Reply } from '../../src/hearing/engine-reply.ts';
import { Transcriber } from '../../src/hearing/transcriber.ts';
import type { Judge } from '../../src/hearing/types.ts';

// What depends on the moment at which an answer comes is tried on an engine that answers when it is told to. Everything
// else is in tests/browser, with the real one.

const RATE = 16_000;
const CHUNK_MS = 100;
const SILENT: Reply = { kind: 'partial', text: '' };

/** Words of a quarter of a second each, with such pauses between, that end at this time of the audio. */
function utterance(text: string, endMs: number, pauseMs = 0): Reply {
  const all = text.split(' ');
  const words = all.map((word, i) => {
    const end = endMs / 1000 - (all.length - 1 - i) * (0.25 + pauseMs / 1000);
    return { word, start: end - 0.25, end, confidence: 1 };
  });
  return { kind: 'utterance', text, words };
}

/** An engine whose answers to chunks of audio are given by hand, in order. */
function engineByHand() {
  const open: ((reply: Reply) => void)[] = [];
  const engine = {
    newRecogniserId: () => 'one',
    wantWordTimes: () => undefined,
    ask: ({ action }: EngineQuestion) => {
      if (action === 'audioChunk') return new Promise<Reply>((answer) => open.push(answer));
      return Promise.resolve<Reply>(
        action === 'retrieveFinalResult' ? { kind: 'utterance', text: '', words: [] } : { kind: 'done' },
      );
    },
  };
  const answer = async (reply: Reply): Promise<void> => {
    open.shift()?.(reply);
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { engine: engine as unknown as Engine, answer };
}

/** Numbers may always go on. */
const NUMBERS: Judge = { completeness: () => 'complete, may go on', isHeardTwice: () => false };

function transcriber() {
  const { engine, answer } = engineByHand();
  const told: string[] = [];
  const shown: (string | null)[] = [];
  const ear = new Transcriber(engine, RATE, ['two four', 'five'], NUMBERS, {
    utterance: ({ text }) => told.push(text),
    provisional: (utterance) => shown.push(utterance?.text ?? null),
    partial: () => undefined,
    fault: (detail) => told.push(detail),
  });
  let time = 0;
  /** One chunk; its answer comes at once, or later by hand. */
  const feed = async (reply?: Reply): Promise<void> => {
    void ear.feed({ samples: new Float32Array((RATE * CHUNK_MS) / 1000), time });
    time += CHUNK_MS;
    if (reply) await answer(reply);
  };
  return { ear, feed, answer, told, shown };
}

describe('words that the engine has ended and that wait for more', () => {
  it('keep their sound for the engine that comes after one that stops', async () => {
    const { ear, feed, told } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(utterance('two four', 900, 400));
    await feed(SILENT);
    expect(told).toEqual([]);
    // "Two" began with the first of it. Without it, the next engine would hear another number.
    expect(ear.unfinished.map(({ time }) => time)).toEqual([0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000]);
  });

  it('are dropped with their rest, where they are interrupted: a piece of a number is no number', async () => {
    const { ear, feed, answer, told } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(utterance('two four', 900, 400));
    await feed();
    ear.interrupt();
    await answer(utterance('five', 1_050));
    await ear.end();
    expect(told).toEqual([]);
  });
});

describe('words that may go on', () => {
  const TWO_FOUR = utterance('two four', 900, 400);

  it('are shown, and the utterance takes their place', async () => {
    const { ear, feed, told, shown } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(TWO_FOUR);
    expect([told, shown]).toEqual([[], ['two four']]);
    await ear.end();
    expect([told, shown]).toEqual([['two four'], ['two four']]);
  });
  it('are taken back as soon as a word follows, and come whole', async () => {
    const { ear, feed, told, shown } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(TWO_FOUR);
    for (let i = 0; i < 4; i++) await feed({ kind: 'partial', text: 'five' });
    expect(shown).toEqual(['two four', null]);
    await feed(utterance('five', 1_500));
    expect(shown).toEqual(['two four', null, 'two four five']);
    await ear.end();
    expect(told).toEqual(['two four five']);
  });
  it('stay where only a sound follows, and no word', async () => {
    const { ear, feed, told, shown } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(TWO_FOUR);
    for (let i = 0; i < 4; i++) await feed(SILENT);
    await feed({ kind: 'utterance', text: '', words: [] });
    expect(shown).toEqual(['two four']);
    await ear.end();
    expect([told, shown]).toEqual([['two four'], ['two four']]);
  });
  it('are taken back where they are interrupted, once', async () => {
    const { ear, feed, told, shown } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed(TWO_FOUR);
    ear.interrupt();
    ear.interrupt();
    await ear.end();
    expect([told, shown]).toEqual([[], ['two four', null]]);
  });
});

describe('an utterance that waits when its judge is taken away', () => {
  it('is decoded again, and what follows is heard', async () => {
    const { engine, answer } = engineByHand();
    const told: string[] = [];
    const phrases = ['two four'];
    const ear = new Transcriber(engine, RATE, phrases, NUMBERS, {
      utterance: ({ text }) => told.push(text),
      provisional: () => undefined,
      partial: () => undefined,
      fault: (detail) => told.push(detail),
    });
    let time = 0;
    const feed = async (amplitude: number, reply: Reply = SILENT): Promise<void> => {
      const samples = Float32Array.from({ length: (RATE * CHUNK_MS) / 1000 }, (_, i) => amplitude * Math.sin(i * i));
      void ear.feed({ samples, time });
      time += CHUNK_MS;
      await answer(reply);
    };
    for (const amplitude of [0.001, 0.001, 0.001, 0.001, 0.5, 0.5, 0.5, 0.5, 0.001, 0.001, 0.001])
      await feed(amplitude);
    ear.setPhrases(phrases, null);
    for (let i = 0; i < 15; i++) await answer(SILENT);
    await feed(0.001, utterance('two four', 800));
    await ear.end();
    expect(told).toEqual(['two four']);
  });
});

describe('an utterance that the engine ends without a word', () => {
  it('leaves its last second to what follows: a word may have begun in it', async () => {
    const { ear, feed } = transcriber();
    for (let i = 0; i < 19; i++) await feed(SILENT);
    await feed({ kind: 'utterance', text: '', words: [] });
    await feed(SILENT);
    expect(ear.unfinished.map(({ time }) => time)).toEqual([
      900, 1000, 1100, 1200, 1300, 1400, 1500, 1600, 1700, 1800, 1900, 2000,
    ]);
  });
});

describe('a number', () => {
  const TWICE: Judge = { completeness: () => 'complete, may go on', isHeardTwice: (words) => words[0] === 'two' };

  /** Counts what the recogniser without phrases is given: it is made after the one with them. */
  function counted() {
    let made = 0;
    const given: string[] = [];
    const open: ((reply: Reply) => void)[] = [];
    const engine = {
      newRecogniserId: () => (made++ === 0 ? 'list' : 'free'),
      wantWordTimes: () => undefined,
      ask: ({ action, ...question }: EngineQuestion) => {
        const id = 'recognizerId' in question ? question.recognizerId : '';
        if (id === 'free') given.push(action);
        if (action === 'audioChunk' && id === 'list') return new Promise<Reply>((answer) => open.push(answer));
        if (action === 'audioChunk') return Promise.resolve(SILENT);
        const isResult = action === 'retrieveFinalResult';
        return Promise.resolve<Reply>(isResult ? { kind: 'utterance', text: '', words: [] } : { kind: 'done' });
      },
    };
    const ear = new Transcriber(engine as unknown as Engine, RATE, ['two four'], TWICE, {
      utterance: () => undefined,
      provisional: () => undefined,
      partial: () => undefined,
      fault: () => undefined,
    });
    let time = 0;
    const feed = async (amplitude: number, text: string): Promise<void> => {
      const samples = Float32Array.from({ length: (RATE * CHUNK_MS) / 1000 }, (_, i) => amplitude * Math.sin(i * i));
      void ear.feed({ samples, time });
      time += CHUNK_MS;
      open.shift()?.({ kind: 'partial', text });
      await new Promise((resolve) => setTimeout(resolve));
    };
    return { ear, feed, given: () => given.filter((action) => action === 'audioChunk').length };
  }

  it('is heard a second time while it is said, from when its sound began, and once', async () => {
    const { feed, given } = counted();
    for (let i = 0; i < 10; i++) await feed(0.001, '');
    for (let i = 0; i < 4; i++) await feed(0.5, '');
    expect(given()).toBe(0);
    await feed(0.5, 'two');
    const atFirst = given();
    // Its sound so far, and a little before.
    expect(atFirst).toBeGreaterThanOrEqual(5);
    expect(atFirst).toBeLessThanOrEqual(9);
    await feed(0.5, 'two four');
    expect(given()).toBe(atFirst + 1);
  });
  it('is not, where it is something else that is said, nor any more after an interruption', async () => {
    const { ear, feed, given } = counted();
    for (let i = 0; i < 10; i++) await feed(0.001, '');
    for (let i = 0; i < 4; i++) await feed(0.5, 'next');
    expect(given()).toBe(0);
    await feed(0.5, 'two');
    const begun = given();
    ear.interrupt();
    for (let i = 0; i < 4; i++) await feed(0.001, '');
    expect(given()).toBe(begun);
  });
});

describe('an interruption', () => {
  it('lets out an utterance that had ended before it', async () => {
    const { ear, feed, answer, told } = transcriber();
    for (let i = 0; i < 9; i++) await feed(SILENT);
    await feed();
    ear.interrupt();
    await answer(utterance('five', 800));
    await ear.end();
    expect(told).toEqual(['five']);
  });
});
