/** Words without a value, time-outs, and the page loaded again. */
import fc from 'fast-check';
import { expect } from 'vitest';
import type { Meaning } from '../../../src/session/intent.ts';
import type { Loop } from './loop.ts';
import {
  command,
  expectIdle,
  meet,
  NOT_UNDERSTOOD,
  spoken,
  SURENESS,
  sureness,
  type Command,
  type Told,
} from './meeting.ts';

const PHRASES = {
  affirm: 'affirm',
  negative: 'negative',
  disregard: 'disregard',
  next: 'next',
  back: 'go back',
  'stand by': 'stand by',
  continue: 'continue',
  'say again': 'say again',
};
type Phrase = keyof typeof PHRASES;
/** These are taken from a halting voice too: missing one would cost more. */
const HARMLESS: readonly Phrase[] = ['negative', 'stand by', 'say again'];

export const sayPlain = (told: Told, loop: Loop, word: Phrase, confidence: number): Promise<void> =>
  meet(told, loop, async () => {
    const meaning = await loop.hear(spoken(PHRASES[word], confidence));
    if (confidence < SURENESS.sure && !HARMLESS.includes(word)) {
      expect(meaning).toBeNull();
      return NOT_UNDERSTOOD;
    }
    if (meaning === null) return expectIdle(told.now, { word });
    expect(meaning).toEqual({ kind: word });
    return { word };
  });

export const plain = (...words: readonly Phrase[]): fc.Arbitrary<Command> =>
  fc
    .record({ word: fc.constantFrom(...words), by: fc.constantFrom('voice', 'voice', 'touch'), sureness })
    .map(({ word, by, sureness }) =>
      command((told, loop, print) => {
        print(by === 'touch' ? `[${word}]` : `"${word}" (${sureness})`);
        if (by === 'voice') return sayPlain(told, loop, word, sureness);
        return meet(told, loop, async () => {
          await loop.act({ kind: word }, 'touch');
          return { word };
        });
      }),
    );

export const timeOut = fc.constant('silence' as const).map((word) =>
  command((told, loop, print) => {
    print('(silence)');
    return meet(told, loop, async () => {
      await loop.act({ kind: word }, 'program');
      return { word };
    });
  }),
);

/** Longer than work may be broken off without being asked about; alone, it is no more than a silence. */
export const longPause = fc.constant('long pause' as const).map((word) =>
  command((told, loop, print) => {
    print('(forty minutes)');
    return meet(told, loop, () => {
      loop.pause(40);
      return Promise.resolve({ word });
    });
  }),
);

export const loadAgain = fc.constant('reload' as const).map((word) =>
  command((told, loop, print) => {
    print('(the page is loaded again)');
    return meet(told, loop, async () => {
      await loop.reload();
      return { word };
    });
  }),
);

/** A question, or talk that is for nobody here: neither changes anything. */
const idle = (word: 'question' | 'not understood', lines: readonly string[]): fc.Arbitrary<Command> =>
  fc.constantFrom(...lines).map((line) =>
    command((told, loop, print) => {
      print(`"${line}"`);
      return meet(told, loop, async () => {
        const meaning = await loop.hear(spoken(line, SURENESS.sure));
        if (meaning !== null) expect(meaning.kind).toBe(word === 'question' ? word : 'unclear');
        return { word: meaning === null ? 'not understood' : word };
      });
    }),
  );

export const question = idle('question', [
  ...['where are we', 'remaining', 'last values', 'explain', 'say slowly', 'look up stud one'],
]);
export const otherTalk = idle('not understood', [
  ...['yes', 'no', 'okay', 'roger', 'that is correct', 'confirm', 'logged', 'affirm it', 'next please', 'not negative'],
  ...[
    'hand me the cloth',
    'two or four',
    'about two four',
    'stud',
    'correction',
    'witness',
    'stud one at',
    'five point',
  ],
]);

/** Words that this step has no use for. */
export const useless = fc
  .constantFrom<Meaning>({ kind: 'turned' }, { kind: 'answer', outcome: 'reuse' })
  .map((meaning) =>
    command((told, loop, print) => {
      print(`[${meaning.kind}]`);
      return meet(told, loop, async () => {
        await loop.act(meaning, 'touch');
        return NOT_UNDERSTOOD;
      });
    }),
  );
