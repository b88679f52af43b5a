import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  again,
  ASK_AFTER_MS,
  ASK_AGAIN_AFTER_MS,
  LIKELY_WHOLE_MS,
  MAY_GO_ON_MS,
  next,
  NO_WORDS_LEAD_MS,
  NOISE_MS,
  NOTHING_MS,
  ONE_BREATH_MS,
  QUIET_IN_NOISE_MS,
  START,
  UNFINISHED_MS,
  UNSURE_MS,
  type Completeness,
  type Input,
  type Order,
  type State,
} from '../../src/hearing/end-of-utterance.ts';

/** As the microphone gives audio, in milliseconds. */
const CHUNK = 40;

/** Goes through sound and quiet, chunk by chunk, and tells what was ordered when. The words are given by the test. */
class Talk {
  now = 0;
  #soundUntil = -Infinity;
  #isClear = true;
  #state: State = START;
  readonly orders: { readonly at: number; readonly order: Order }[] = [];

  sound(ms: number): this {
    for (let at = 0; at < ms; at += CHUNK) {
      this.now += CHUNK;
      this.#soundUntil = this.now;
      this.#take({ kind: 'audio', now: this.now, sound: CHUNK, soundUntil: this.#soundUntil, isClear: this.#isClear });
    }
    return this;
  }

  quiet(ms: number): this {
    for (let at = 0; at < ms; at += CHUNK) {
      this.now += CHUNK;
      this.#take({ kind: 'audio', now: this.now, sound: 0, soundUntil: this.#soundUntil, isClear: this.#isClear });
    }
    return this;
  }

  result(
    of: Completeness,
    { isSure = true, end = this.#soundUntil }: { isSure?: boolean; end?: number | null } = {},
  ): this {
    return this.#take({ kind: 'result', of, isSure, end });
  }

  /** From here on, what sounds hardly stands out of the noise around. */
  inLoudNoise(): this {
    this.#isClear = false;
    return this;
  }

  final(of: Completeness, end: number): this {
    return this.#take({ kind: 'final', of, end });
  }

  listChanges(): this {
    this.#state = again(this.#state);
    return this;
  }

  partial(of: Completeness): this {
    return this.#take({ kind: 'partial', of, isEmpty: false });
  }

  #take(input: Input): this {
    const { state, order } = next(this.#state, input);
    this.#state = state;
    if (order.kind !== 'wait') this.orders.push({ at: this.now, order });
    return this;
  }

  /** What is done with the words, in order. That they are shown changes nothing. */
  get kinds(): readonly Order['kind'][] {
    return this.orders.map(({ order }) => order.kind).filter((kind) => kind !== 'show');
  }

  /** When they were shown. */
  get shown(): readonly number[] {
    return this.orders.filter(({ order }) => order.kind === 'show').map(({ at }) => at);
  }
}

/** Half a second of speech, quiet until the engine is asked, and its answer. */
const said = (of: Completeness, options?: { readonly isSure: boolean }): Talk =>
  new Talk().sound(520).quiet(ASK_AFTER_MS).result(of, options);
const SPOKEN = 520;

/** How long it was quiet when the words were delivered; null while they are not. */
const waited = (talk: Talk): number | null => {
  const delivered = talk.orders.find(({ order }) => order.kind === 'deliver');
  return delivered ? delivered.at - SPOKEN : null;
};

describe('the end of an utterance', () => {
  test('the engine is asked as soon as the sound has stopped, once, and not before', () => {
    const talk = new Talk().sound(520);
    expect(talk.kinds).toEqual([]);
    expect(talk.quiet(2000).orders).toEqual([{ at: SPOKEN + ASK_AFTER_MS, order: { kind: 'ask' } }]);
  });
  test('a room without sound, and a click, ask nothing', () => {
    expect(new Talk().quiet(5000).sound(40).quiet(5000).kinds).toEqual([]);
  });
  test('a command that can go on nowhere ends at once', () => {
    expect(waited(said('complete and closed'))).toBe(ASK_AFTER_MS);
  });
  test.each([
    ['complete, likely whole', LIKELY_WHOLE_MS],
    ['complete, may go on', MAY_GO_ON_MS],
    ['unfinished', UNFINISHED_MS],
    ['nothing', NOTHING_MS],
  ] as const)('what is %s waits for %i ms of quiet', (of, pause) => {
    const talk = said(of).quiet(pause - ASK_AFTER_MS - CHUNK);
    expect(waited(talk)).toBeNull();
    const after = waited(talk.quiet(2 * CHUNK)) ?? 0;
    expect(after).toBeGreaterThanOrEqual(pause);
    expect(after).toBeLessThan(pause + CHUNK);
  });
  test('a command that was not heard surely waits a little', () => {
    expect(waited(said('complete and closed', { isSure: false }))).toBeNull();
    expect(waited(said('complete and closed', { isSure: false }).quiet(UNSURE_MS))).toBeGreaterThanOrEqual(UNSURE_MS);
  });
  test('numbers wait longer than the engine does, and unfinished words longest', () => {
    expect(MAY_GO_ON_MS).toBeGreaterThan(500);
    expect(UNFINISHED_MS).toBeGreaterThanOrEqual(MAY_GO_ON_MS);
  });
});

describe('words that may go on are shown', () => {
  test('once a pause is longer than within one breath, long before they are delivered', () => {
    const talk = said('complete, may go on').quiet(MAY_GO_ON_MS);
    expect(talk.shown).toHaveLength(1);
    const [at = 0] = talk.shown;
    expect(at - SPOKEN).toBeGreaterThanOrEqual(ONE_BREATH_MS);
    expect(at - SPOKEN).toBeLessThan(ONE_BREATH_MS + CHUNK);
    expect(talk.kinds).toEqual(['ask', 'deliver']);
  });
  test('at once where the engine has ended them by itself: the pause was long', () => {
    expect(new Talk().quiet(880).final('complete, may go on', 0).shown).toEqual([880]);
  });
  test('and neither what cannot go on, nor what cannot stand alone, nor what means nothing', () => {
    for (const of of ['complete and closed', 'complete, likely whole', 'unfinished', 'nothing'] as const)
      expect(said(of).quiet(2 * UNFINISHED_MS).shown).toEqual([]);
  });
  test('not where somebody speaks on within one breath', () => {
    expect(said('complete, may go on').quiet(120).sound(400).shown).toEqual([]);
  });
});

describe('who speaks on', () => {
  test('after a short pause is decoded again as a whole', () => {
    const talk = said('complete, may go on').quiet(120).sound(400);
    expect(talk.kinds).toEqual(['ask', 'decode again']);
    expect(talk.quiet(480).kinds).toEqual(['ask', 'decode again', 'ask']);
  });
  test('after a longer pause goes on with the same utterance, from before the new sound and after the old', () => {
    const talk = said('complete, may go on').quiet(640).sound(400);
    const [, order] = talk.orders.map((each) => each.order).filter(({ kind }) => kind !== 'show');
    if (order?.kind !== 'continue') throw new Error('It does not go on.');
    expect(order.from).toBeGreaterThan(SPOKEN);
    expect(order.from).toBeLessThan(SPOKEN + ASK_AFTER_MS + 640);
    expect(talk.quiet(ASK_AFTER_MS).result('complete and closed').kinds).toEqual(['ask', 'continue', 'ask', 'deliver']);
  });
  test('just before the words would be delivered is not cut off, however late the engine hears it', () => {
    const talk = said('complete, may go on').quiet(760).sound(1200);
    expect(talk.kinds.filter((kind) => kind === 'deliver')).toEqual([]);
  });
  test('with gaps between words is asked less hastily, and still before the engine ends it', () => {
    const talk = said('complete, may go on').sound(200).quiet(ASK_AFTER_MS);
    expect(talk.kinds).toEqual(['ask', 'decode again']);
    expect(talk.quiet(ASK_AGAIN_AFTER_MS - ASK_AFTER_MS).kinds).toEqual(['ask', 'decode again', 'ask']);
    expect(ASK_AGAIN_AFTER_MS).toBeLessThan(500);
  });
  test('after other talk is still other talk: asked about once more, then nothing until the engine itself ends it', () => {
    const talk = said('nothing').sound(300).quiet(ASK_AGAIN_AFTER_MS).result('nothing');
    expect(talk.kinds).toEqual(['ask', 'decode again', 'ask']);
    talk.sound(300).quiet(1000);
    expect(talk.kinds).toEqual(['ask', 'decode again', 'ask', 'decode again']);
    expect(talk.final('nothing', talk.now).kinds.at(-1)).toBe('deliver');
  });
  test('after other talk and a pause that would end a command is still the same utterance', () => {
    expect(said('nothing').quiet(320).sound(300).kinds).toEqual(['ask', 'decode again']);
  });
  test('with words that the engine already knows to be other talk, nothing is asked', () => {
    expect(new Talk().sound(400).partial('nothing').quiet(1000).kinds).toEqual([]);
  });
  test.each([80, 640])(
    'after a first syllable that was no word, and %i ms more: it is heard with what follows',
    (gap) => {
      const talk = new Talk().sound(160).quiet(ASK_AFTER_MS).result('unfinished', { end: null }).quiet(gap).sound(400);
      const [, order] = talk.orders.map((each) => each.order);
      if (order?.kind !== 'continue') throw new Error('It does not go on.');
      expect(order.from).toBeLessThanOrEqual(0);
    },
  );
  test('a noise after the words is no word: they are delivered when their time is over', () => {
    const talk = said('complete, may go on').quiet(480).sound(120).quiet(ASK_AFTER_MS);
    expect(talk.kinds).toEqual(['ask', 'continue', 'ask']);
    talk.result('complete, may go on', { end: null }).quiet(MAY_GO_ON_MS);
    expect(waited(talk)).toBeLessThan(MAY_GO_ON_MS + 2 * CHUNK);
  });
});

describe('words that the engine has ended by itself', () => {
  test.each(['complete and closed', 'complete, likely whole', 'nothing'] as const)('%s: are delivered', (of) => {
    expect(new Talk().sound(400).final(of, 200).kinds).toEqual(['deliver']);
  });
  test('digits wait for more, and are delivered when none come', () => {
    const talk = new Talk().quiet(880).final('complete, may go on', 0);
    expect(talk.kinds).toEqual([]);
    expect(talk.quiet(MAY_GO_ON_MS - 880).kinds).toEqual(['deliver']);
  });
  test('digits wait while more words are being heard', () => {
    const talk = new Talk().quiet(880).final('complete, may go on', 0).partial('complete, may go on').quiet(3000);
    expect(talk.kinds).toEqual([]);
  });
});

describe('when the list of phrases changes', () => {
  test('a result in hand is asked for again under the new one', () => {
    const talk = said('complete, may go on').listChanges().quiet(CHUNK);
    expect(talk.kinds).toEqual(['ask', 'ask']);
  });
  test('words that wait for more are not forgotten', () => {
    const talk = new Talk().quiet(880).final('complete, may go on', 0).listChanges();
    expect(talk.quiet(MAY_GO_ON_MS - 880).kinds).toEqual(['deliver']);
  });
});

describe('in noise out of which words hardly stand', () => {
  test('nothing is asked before the engine knows of words: it would begin afresh within one', () => {
    expect(
      new Talk()
        .inLoudNoise()
        .sound(520)
        .quiet(ASK_AFTER_MS)
        .sound(3 * NOISE_MS)
        .quiet(1000).kinds,
    ).toEqual([]);
  });
  test('the result is asked for once it knows of some', () => {
    const talk = new Talk().inLoudNoise().sound(520).quiet(520).partial('complete and closed').quiet(CHUNK);
    expect(talk.kinds).toEqual(['ask']);
    expect(talk.result('complete and closed').kinds).toEqual(['ask', 'deliver']);
  });
  test('a sound that ends without a word is left to the engine', () => {
    expect(new Talk().inLoudNoise().sound(520).quiet(2000).final('nothing', 0).kinds).toEqual(['deliver']);
  });
});

describe('in noise that never ends', () => {
  test('a command is found by its words, when the engine has taken the rest for silence long enough', () => {
    const talk = new Talk().sound(NOISE_MS);
    expect(talk.kinds).toEqual(['ask']);
    talk.result('complete and closed', { end: NOISE_MS - QUIET_IN_NOISE_MS });
    expect(talk.kinds).toEqual(['ask', 'deliver']);
  });
  test('words up to the very end may be cut: they are decoded again, and asked for later', () => {
    const talk = new Talk().sound(NOISE_MS).result('complete and closed', { end: NOISE_MS - 20 });
    expect(talk.kinds).toEqual(['ask', 'decode again']);
    expect(talk.sound(2 * NOISE_MS).kinds).toEqual(['ask', 'decode again', 'ask']);
  });
  test('noise alone is asked about steadily, and decoded on from shortly before', () => {
    const talk = new Talk();
    for (let round = 0; round < 50; round++) {
      talk.sound(200);
      if (talk.kinds.at(-1) === 'ask') talk.result('unfinished', { end: null });
    }
    const asked = talk.orders.filter(({ order }) => order.kind === 'ask');
    expect(asked.length).toBeGreaterThan(8);
    for (const { at, order } of talk.orders)
      if (order.kind === 'continue') expect(at - order.from).toBeLessThanOrEqual(NO_WORDS_LEAD_MS);
    expect(new Set(talk.kinds)).toEqual(new Set(['ask', 'continue']));
  });
});

test('whatever happens, an answer is taken only to a question, and nothing stays undelivered in quiet', () => {
  const of = fc.constantFrom<Completeness[]>(
    'complete and closed',
    'complete, likely whole',
    'complete, may go on',
    'unfinished',
    'nothing',
  );
  const happening = fc.record({ sound: fc.nat(900), quiet: fc.nat(1500), of, isSure: fc.boolean(), late: fc.nat(3) });
  fc.assert(
    fc.property(fc.array(happening, { minLength: 1, maxLength: 8 }), (happenings) => {
      const talk = new Talk();
      let open = false;
      let inHand = false;
      const settle = (of: Completeness, isSure: boolean): void => {
        const kind = talk.kinds.at(-1);
        if (kind !== 'ask' || !open) return;
        talk.result(of, { isSure });
        open = false;
        inHand = true;
      };
      for (const { sound, quiet, of, isSure } of happenings) {
        const before = talk.orders.length;
        talk.sound(sound).quiet(quiet);
        for (const { order } of talk.orders.slice(before)) {
          if (order.kind === 'ask') {
            expect(open).toBe(false);
            open = true;
          } else if (order.kind !== 'show') inHand = false;
        }
        settle(of, isSure);
      }
      // The engine ends by itself what is never asked for.
      if (inHand && !['deliver', 'decode again', 'continue'].includes(talk.kinds.at(-1) ?? '')) {
        talk.quiet(UNFINISHED_MS + CHUNK);
        expect(talk.kinds.at(-1)).toBe('deliver');
      }
    }),
  );
});
