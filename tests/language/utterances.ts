/** Utterances made from the grammar itself, with what was meant by them. */
import fc from 'fast-check';
import type { Form, Part, Rule } from '../../src/language/grammar.ts';
import { sayNumber } from '../../src/language/numbers/index.ts';
import type { Unit } from '../../src/units/index.ts';

/** What a speaker had in mind, and the words for it. */
export interface Said {
  readonly words: string;
  readonly fastener: number | null;
  readonly value: string | null;
  readonly unit: Unit<'torque'> | null;
}

export interface SaidBy extends Said {
  readonly meaning: Rule['meaning'];
  /** Whether a word stands between its numbers, so that it can be cut in one way only. */
  readonly isSeparate: boolean;
}

interface Options {
  /** Only words that the recogniser is told to expect. */
  readonly offeredOnly: boolean;
  readonly style: 'digits' | 'natural' | 'aviation';
  readonly fastener: number;
  readonly value: string;
}

/** Whole utterances of a rule. */
export const utteranceOf = (
  { meaning, forms }: Pick<Rule, 'meaning' | 'forms'>,
  options: Options,
): fc.Arbitrary<SaidBy> =>
  fc
    .constantFrom(...forms.filter((form) => canBeSaid(form, options)))
    .chain((form) => formOf(form, options).map((said) => ({ ...said, meaning, isSeparate: isSeparate(form) })));

const canBeSaid = ({ parts }: Form, { offeredOnly }: Pick<Options, 'offeredOnly'>): boolean =>
  parts.every((part) => part.kind !== 'words' || part.optional || !offeredOnly || part.wordings.some((w) => w.offered));

const isSeparate = ({ parts }: Form): boolean =>
  parts.some((part) => part.kind === 'number' && part.of === 'fastener') && !parts.some((p) => p.kind === 'taken back');

const NOTHING: Said = { words: '', fastener: null, value: null, unit: null };

const formOf = ({ parts }: Form, options: Options): fc.Arbitrary<Said> =>
  fc.tuple(...parts.map((part) => partOf(part, options))).map((said) =>
    said.reduce(
      (all, one) => ({
        words: `${all.words} ${one.words}`.trim(),
        fastener: one.fastener ?? all.fastener,
        value: one.value ?? all.value,
        unit: one.unit ?? all.unit,
      }),
      NOTHING,
    ),
  );

function partOf(part: Part, options: Options): fc.Arbitrary<Said> {
  const { offeredOnly, style, fastener, value } = options;
  switch (part.kind) {
    case 'words': {
      const wordings = part.wordings.filter(({ offered }) => offered || !offeredOnly);
      const said = wordings.map(({ words, unit }): Said => ({ ...NOTHING, words, unit: unit ?? null }));
      return fc.constantFrom(...(part.optional ? [NOTHING, ...said] : said));
    }
    case 'number': {
      const [number, amount] = [sayNumber(`${fastener}`, style).join(' '), sayNumber(value, style).join(' ')];
      const has = part.of;
      const words = { fastener: number, value: amount, 'fastener and value': `${number} ${amount}` }[has];
      return fc.constant({
        ...NOTHING,
        words,
        fastener: has === 'value' ? null : fastener,
        value: has === 'fastener' ? null : value,
      });
    }
    case 'taken back':
      // Another value of the same fastener, of the unit of the tool: the last one counts.
      return fc
        .constantFrom(...part.forms.filter((form) => canBeSaid(form, { offeredOnly: true })))
        .chain((form) => formOf(form, { ...options, offeredOnly: true, value: '17.5' }))
        .map((said) => ({ ...said, value: null, unit: null }));
  }
}
