import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { replyOf } from '../../src/hearing/engine-reply.ts';

describe('what the engine’s worker answers', () => {
  // Messages as recorded from the engine.
  test.each([
    [undefined, { kind: 'done' }],
    [{ event: 'load', result: true }, { kind: 'done' }],
    [
      { event: 'error', error: undefined },
      { kind: 'fault', detail: 'no reason given' },
    ],
    [
      { event: 'error', recognizerId: 'a', error: 'Not ready' },
      { kind: 'fault', detail: 'Not ready' },
    ],
    [
      { event: 'partialresult', result: { partial: '' } },
      { kind: 'partial', text: '' },
    ],
    [
      { event: 'result', result: { text: '' } },
      { kind: 'utterance', text: '', words: [] },
    ],
    [
      { event: 'result', result: { text: 'one', result: [{ conf: 1.0000001, start: 0.87, end: 1.65, word: 'one' }] } },
      { kind: 'utterance', text: 'one', words: [{ word: 'one', start: 0.87, end: 1.65, confidence: 1 }] },
    ],
  ])('%o is %o', (message, reply) => expect(replyOf(message)).toEqual(reply));

  test('anything else is a fault, never an exception and never an utterance', () => {
    fc.assert(
      fc.property(fc.anything(), (message) => {
        fc.pre(message !== null && message !== undefined);
        expect(replyOf(message).kind).toBe('fault');
      }),
    );
  });

  test('a word without a time is a fault', () => {
    const message = { event: 'result', result: { text: 'one', result: [{ conf: 1, word: 'one' }] } };
    expect(replyOf(message).kind).toBe('fault');
  });
});
