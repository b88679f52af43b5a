import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { align, distance } from '../../src/cli/hear/alignment.ts';
import { intentInWords, intentLine } from '../../src/cli/hear/intent.ts';
import { judgeOf } from '../../src/cli/hear/judge.ts';
import { confusionsIn, falseAcceptsIn, isInPhrases, scoreOf, type Trial } from '../../src/cli/hear/score.ts';
import { speechEnd } from '../../src/cli/hear/speech-end.ts';

const words = fc.array(fc.constantFrom('one', 'two', 'three', 'stop'), { maxLength: 6 });

describe('the distance between two texts', () => {
  it('is nothing for equal texts and for these only, and the same both ways', () => {
    fc.assert(
      fc.property(words, words, (a, b) => {
        expect(distance(a, b) === 0).toBe(a.join(' ') === b.join(' '));
        expect(distance(a, b)).toBe(distance(b, a));
      }),
    );
  });

  it('is never shortened by a way round', () => {
    fc.assert(
      fc.property(words, words, words, (a, b, c) => {
        expect(distance(a, c)).toBeLessThanOrEqual(distance(a, b) + distance(b, c));
      }),
    );
  });

  it('is at least the difference of their lengths, and at most the longer', () => {
    fc.assert(
      fc.property(words, words, (a, b) => {
        expect(distance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
        expect(distance(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });

  it('lies on an alignment that holds both texts whole', () => {
    fc.assert(
      fc.property(words, words, (a, b) => {
        const pairs = align(a, b);
        expect(pairs.flatMap(({ said }) => said ?? [])).toEqual(a);
        expect(pairs.flatMap(({ heard }) => heard ?? [])).toEqual(b);
      }),
    );
  });

  it('grows by one with each word that is changed, lost or added', () => {
    const said = ['stud', 'four', 'two', 'four'];
    expect(distance(said, ['stud', 'four', 'to', 'four'])).toBe(1);
    expect(distance(said, ['four', 'two', 'four'])).toBe(1);
    expect(distance(said, ['stud', 'four', 'two', 'four', 'four'])).toBe(1);
    expect(distance(said, [])).toBe(4);
  });
});

const reading = judgeOf({ kind: 'situation', name: 'reading' });

/** A recording in which each of these utterances was surely heard. */
const trial = (transcript: string, ...heard: readonly string[]): Trial => ({
  file: `${transcript}.wav`,
  transcript,
  kind: null,
  utterances: heard.map((text) => ({
    text,
    decisionMs: 700,
    ...reading.judge(text.split(' ').map((word) => ({ word, confidence: 1 }))),
  })),
});

describe('a score', () => {
  it('counts words by what became of them, and sentences that are right as a whole', () => {
    const trials = [trial('two four', 'two four'), trial('two five', 'two nine five'), trial('three one', 'four')];
    const { words, sentences } = scoreOf(trials, reading);
    expect(words).toEqual({ said: 6, changed: 1, lost: 1, added: 1 });
    expect(sentences).toEqual({ said: 3, right: 1 });
  });

  it('tells a reading that was heard as another from one that is asked about and from one that is missed', () => {
    const trials = [
      trial('two four', 'two four'),
      trial('two five', 'two nine'),
      trial('two six', 'twenty four five'),
      trial('two seven'),
      trial('two eight', '[unk] eight'),
      trial('next', 'next'),
    ];
    expect(scoreOf(trials, reading).readings).toEqual({ said: 5, right: 1, wrong: 1, asked: 1, missed: 2 });
  });

  it('counts a reading that was cut in two as wrong where a part of it was taken', () => {
    const { readings, falseAccepts } = scoreOf([trial('two four point five', 'two four', 'point five')], reading);
    expect(readings).toMatchObject({ said: 1, right: 0, wrong: 1 });
    expect(falseAccepts).toEqual({ ofOther: 1, amongMeant: 1, ofNothing: 0, amongNothing: 0 });
  });

  it('has asking as right where the words allow more than one reading', () => {
    expect(scoreOf([trial('twenty four five', 'twenty four five')], reading).readings.right).toBe(1);
  });

  it('counts what was accepted though nothing was said for us, and leaves it out of the words', () => {
    const noise = [trial('', 'two four'), trial(''), trial('', '[unk]'), trial('go to lunch', 'stand by')];
    const score = scoreOf(noise, reading);
    expect(score.falseAccepts).toEqual({ ofOther: 0, amongMeant: 0, ofNothing: 2, amongNothing: 4 });
    expect(score.words.said).toBe(3);
    expect(noise.flatMap((each) => falseAcceptsIn(each, reading))).toMatchObject([
      { said: '', heard: 'two four', meaning: { kind: 'reading' } },
      { said: 'go to lunch', heard: 'stand by', meaning: { kind: 'stand by' } },
    ]);
  });

  it('knows recordings whose words are all in some phrase: others can only be refused', () => {
    const isIn = (transcript: string): boolean => isInPhrases(trial(transcript), reading);
    expect(['two four', 'stand by', 'go to lunch', ''].map(isIn)).toEqual([true, true, false, false]);
  });

  it('lists confused words, the commonest first', () => {
    const trials = [trial('two four', 'to four'), trial('two', 'to'), trial('nine'), trial('five', 'five five')];
    expect(confusionsIn(trials)).toEqual([
      { pair: { said: 'two', heard: 'to' }, count: 2 },
      { pair: { said: 'nine', heard: null }, count: 1 },
      { pair: { said: null, heard: 'five' }, count: 1 },
    ]);
  });
});

describe('what the app makes of an utterance', () => {
  const judged = (text: string, confidence = 1, judge = reading) => {
    const { outcome, meaning, says } = judge.judge(text.split(' ').map((word) => ({ word, confidence })));
    return [outcome, meaning && intentInWords(intentLine(meaning, judge.situation)), says];
  };

  it('is taken, asked about or refused as in a job', () => {
    expect(judged('two four')).toEqual(['accepted', 'reading, 24 N·m', null]);
    expect(judged('next week')).toEqual(['refused', null, null]);
    expect(judged('stud four at two four')).toEqual([
      'refused',
      'reading, number 4 at 24 N·m',
      'Stud four is out of order. Next is stud six.',
    ]);
    expect(judged('two four', 0.6)).toEqual(['asked', 'unclear, 24', 'That was not clear. Say again.']);
    expect(judged('nine zero')).toMatchObject(['asked', 'reading, 90 N·m', /off the scale/]);
    const confirm = judgeOf({ kind: 'situation', name: 'confirm' });
    expect(judged('yes', 1, confirm)).toEqual(['asked', null, 'Say affirm or negative.']);
    expect(judged('affirm', 1, confirm)).toEqual(['accepted', 'affirm', null]);
  });

  it('is any words where a reason is dictated', () => {
    const deviation = judgeOf({ kind: 'situation', name: 'deviation' });
    expect(deviation.phrases).toBeNull();
    expect(judged('thread is torn', 1, deviation)).toEqual(['accepted', 'reason, thread is torn', null]);
  });

  it('is a phrase of a list as a whole, surely heard, or nothing', () => {
    const list = judgeOf({ kind: 'phrases', phrases: ['stop', 'go on'] });
    expect(judged('go on', 1, list)).toEqual(['accepted', 'answer, go on', null]);
    expect(judged('go on stop', 1, list)).toEqual(['refused', null, null]);
    expect(judged('stop', 0.5, list)).toEqual(['refused', null, null]);
  });
});

describe('the end of speech', () => {
  const RATE = 16_000;
  /** Seconds of a level each, in dBFS. */
  const levels = (...parts: readonly (readonly [seconds: number, level: number])[]): Float32Array =>
    Float32Array.from(
      parts.flatMap(([seconds, level]) =>
        Array.from({ length: seconds * RATE }, (_, i) => Math.SQRT2 * 10 ** (level / 20) * Math.sin(i / 3)),
      ),
    );

  it('is where it is last louder than halfway between quiet and loud', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 60 }),
        fc.integer({ min: 20, max: 60 }),
        fc.integer({ min: -40, max: -5 }),
        (before, long, loud) => {
          const sound = levels([before / 100, loud - 40], [long / 100, loud], [0.4, loud - 40]);
          expect(Math.abs((speechEnd(sound, RATE) ?? NaN) - (before + long) / 100)).toBeLessThan(0.015);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('does not depend on how loud the recording is', () => {
    const sound = levels([0.3, -60], [0.5, -20], [0.4, -60]);
    expect(
      speechEnd(
        sound.map((sample) => sample / 8),
        RATE,
      ),
    ).toEqual(speechEnd(sound, RATE));
  });

  it('may be looked for in the beginning only', () => {
    const sound = levels([0.3, -60], [0.3, -20], [0.5, -60], [0.3, -20], [0.3, -60]);
    expect(speechEnd(sound, RATE)).toBeCloseTo(1.4, 2);
    expect(speechEnd(sound, RATE, 1)).toBeCloseTo(0.6, 2);
  });

  it('is none where nothing stands out', () => {
    expect(speechEnd(levels([1, -30]), RATE)).toBeNull();
    expect(speechEnd(new Float32Array(RATE), RATE)).toBeNull();
    expect(speechEnd(new Float32Array(0), RATE)).toBeNull();
  });
});
