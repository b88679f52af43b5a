import { describe, expect, it } from 'vitest';
import type { Engine, EngineQuestion } from '../../src/hearing/engine.ts';
import type { Reply } from '../../src/hearing/engine-reply.ts';
import { hushIn, HushEar, WINDOW_MS } from '../../src/hearing/hush-ear.ts';
import type { OwnVoice, Word } from '../../src/hearing/types.ts';

const word = (text: string, start: number, end: number, confidence = 1): Word => ({
  word: text,
  start,
  end,
  confidence,
});
const isHush = (...words: readonly Word[]): boolean => hushIn(words, ['stop'], 5_000, 6_000) === 'stop';

describe('the word that hushes', () => {
  it('is heard whole, wherever it stands in the window and whatever stands beside it', () => {
    expect(isHush(word('stop', 5_300, 5_600))).toBe(true);
    expect(isHush(word('stud', 5_000, 5_300), word('stop', 5_300, 5_500), word('six', 5_500, 6_000))).toBe(true);
  });

  it('is not what only begins or ends like it at the edge of the window', () => {
    expect(isHush(word('stop', 5_700, 6_000))).toBe(false);
    expect(isHush(word('stop', 5_050, 5_400))).toBe(false);
  });

  it('is not guessed, and not a click', () => {
    expect(isHush(word('stop', 5_300, 5_600, 0.4))).toBe(false);
    expect(isHush(word('stop', 5_300, 5_400))).toBe(false);
    expect(isHush(word('steps', 5_300, 5_600), word('[unk]', 5_600, 5_800))).toBe(false);
    expect(isHush()).toBe(false);
  });

  it('is a person’s, not what is left of a word of the app’s own voice', () => {
    const heard = [word('stop', 5_300, 5_600)];
    const spoke = (from: number, to: number): boolean => from < 5_700 && to > 5_650;
    expect(hushIn(heard, ['stop'], 5_000, 6_000, spoke)).toBeNull();
    expect(hushIn([word('stop', 5_400, 5_700)], ['stop'], 5_000, 6_000, spoke)).toBe('stop');
  });
});

const RATE = 16_000;
const VOCABULARY = new Set(['stop', 'help', 'stud', 'six', 'next']);

/** What is heard, by the seconds of sound so far. */
type Hears = (seconds: number) => Reply;

/** An engine that hears what it is told. */
function engineThatHears(hears: Hears) {
  let seconds = 0;
  const asked: EngineQuestion[] = [];
  const engine = {
    newRecogniserId: () => 'one',
    wantWordTimes: () => undefined,
    ask: (question: EngineQuestion) => {
      asked.push(question);
      if (question.action === 'audioChunk') seconds += question.data.length / RATE;
      return Promise.resolve<Reply>(question.action === 'retrieveFinalResult' ? hears(seconds) : { kind: 'done' });
    },
  };
  return { engine: engine as unknown as Engine, asked };
}

const own = (words: string, hush: readonly string[]): OwnVoice => ({ words: words.split(' '), hush });
/** The word, whole, at each moment. */
const STOP: Hears = (seconds) => ({
  kind: 'utterance',
  text: 'stop',
  words: [{ word: 'stop', start: seconds - 0.5, end: seconds - 0.2, confidence: 1 }],
});
const NOTHING: Hears = () => ({ kind: 'utterance', text: '', words: [] });

/**
 * @param share of the power that was heard, what is left without the app's own voice
 * @param isPause at the chunk of this number
 */
async function listen(
  hears: Hears,
  words: string,
  seconds: number,
  hush: readonly string[] = ['stop'],
  share = 1,
  isPause: (at: number) => boolean = () => false,
) {
  const { engine, asked } = engineThatHears(hears);
  const told: string[] = [];
  const ear = HushEar.for(engine, RATE, VOCABULARY, own(words, hush), {
    hush: (word) => told.push(word),
    fault: (detail) => told.push(detail),
  });
  for (let at = 0; at < seconds * 25; at++) {
    const sample = isPause(at) ? 0.001 : 0.1;
    const samples = new Float32Array(RATE / 25).fill(sample);
    void ear?.feed({ samples, time: 1_000 + at * 40, heardPower: sample ** 2 / share });
    await new Promise((resolve) => setTimeout(resolve));
  }
  return { ear, asked, told };
}

describe('the ear for it', () => {
  it('is told the words of the announcement, so that they are not taken for it', async () => {
    const { asked } = await listen(NOTHING, 'next stud six gasket', 0);
    const [create] = asked;
    expect(create).toMatchObject({ action: 'create' });
    const grammar: unknown = JSON.parse((create as { grammar: string }).grammar);
    expect(grammar).toEqual(['stop', 'next stud six', 'next', 'stud', 'six', '[unk]']);
  });

  it.each(['stop stud six', 'stud six stop', 'stud six stopped'])(
    'does not exist while the app says “%s” itself',
    async (words) => {
      const { ear, asked } = await listen(STOP, words, 1);
      expect(ear).toBeNull();
      expect(asked).toEqual([]);
    },
  );

  it('leaves out of several words only those that the app says itself, and tells which it heard', async () => {
    const { asked, told } = await listen(STOP, 'next help', 2, ['stop', 'help']);
    expect(JSON.parse((asked[0] as { grammar: string }).grammar)).toEqual([
      'stop',
      'next help',
      'next',
      'help',
      '[unk]',
    ]);
    expect(told).toEqual(['stop']);
  });

  it('takes a word for a person’s where enough is left beside the app’s own voice, and else for what is left of that voice', async () => {
    expect((await listen(STOP, 'next stud six', 2, ['stop'], 0.2)).told).toEqual(['stop']);
    expect((await listen(STOP, 'next stud six', 2, ['stop'], 0.02)).told).toEqual([]);
  });

  it('asks the engine nothing while only the app is heard', async () => {
    const finals = (asked: readonly EngineQuestion[]) => asked.filter(({ action }) => action === 'retrieveFinalResult');
    expect(finals((await listen(NOTHING, 'next stud six', 2, ['stop'], 0.02)).asked)).toEqual([]);
    expect(finals((await listen(NOTHING, 'next stud six', 2, ['stop'], 1)).asked).length).toBeGreaterThan(15);
  });

  it('knows that a word has ended by the pause after it, and else waits for what may follow', async () => {
    const atTheEnd: Hears = (seconds) => ({
      kind: 'utterance',
      text: 'stop',
      words: [{ word: 'stop', start: seconds - 0.3, end: seconds, confidence: 1 }],
    });
    const isPause = (at: number): boolean => at >= 40;
    expect((await listen(atTheEnd, 'next', 2, ['stop'], 1)).told).toEqual([]);
    expect((await listen(atTheEnd, 'next', 2, ['stop'], 1, isPause)).told).toEqual(['stop']);
  });

  it('decodes the last second again and again, and no more than that', async () => {
    const { asked, told } = await listen(NOTHING, 'next stud six', 4);
    const windows = asked.flatMap((question) =>
      question.action === 'audioChunk' ? [question.data.length / RATE] : [],
    );
    expect(windows.length).toBeGreaterThan(15);
    for (const seconds of windows) expect(seconds * 1_000).toBeLessThan(WINDOW_MS + 80);
    expect(told).toEqual([]);
  });

  it('tells once, gives its recogniser back, and hears no more', async () => {
    const { asked, told } = await listen(STOP, 'next stud six', 4);
    expect(told).toEqual(['stop']);
    expect(asked.filter(({ action }) => action === 'remove')).toHaveLength(1);
    expect(asked.at(-1)?.action).toBe('remove');
  });

  it('tells a fault of the engine', async () => {
    const { told } = await listen(() => ({ kind: 'fault', detail: 'it is gone' }), 'next', 0.3);
    expect(told).toContain('it is gone');
  });
});
