/**
 * The number grammar: how mechanics and radio operators say a decimal number in English.
 *
 * This is the one definition. The reader (words to figures), the sayer (figures to words) and the recogniser's word list
 * are all derived from it.
 *
 * Homophones that are ordinary words (to, too, for, won, ate) and "no" are not numbers here, in either direction: a
 * sentence must not grow digits. The radiotelephony spellings that are nothing else in this trade (wun, tree, fower,
 * fife, ait) are understood in text, but not offered to the recogniser. "Too", the ICAO spelling of two, stays out.
 */
import { either, many, perhaps, sequence, spelling, unsaid, usually, word, type Form } from './form.ts';

// ---- figures ---------------------------------------------------------------------------------------------------------

const zero = either(word('zero', '0'), spelling('nought', '0'), spelling('naught', '0'));
const oh = word('oh', '0');

const units: readonly Form[] = [
  either(word('one', '1'), spelling('wun', '1')),
  word('two', '2'),
  either(word('three', '3'), spelling('tree', '3')),
  either(word('four', '4'), spelling('fower', '4')),
  either(word('five', '5'), spelling('fife', '5')),
  word('six', '6'),
  word('seven', '7'),
  either(word('eight', '8'), spelling('ait', '8')),
  either(word('nine', '9'), word('niner', '9')),
];
const unit = either(...units);
const digit = either(zero, unit);

/** "double two", "triple five". The recogniser's small model lacks "triple": it is understood in text only. */
const repeated = (digits: readonly Form[]): Form =>
  either(
    ...digits.flatMap((each) => [
      sequence(word('double'), times(each, 2)),
      sequence(either(spelling('triple'), spelling('treble')), times(each, 3)),
    ]),
  );

/** The same words, standing for their figures `count` times over. */
function times(form: Form, count: number): Form {
  switch (form.kind) {
    case 'word':
      return { ...form, figures: form.figures.repeat(count) };
    case 'unsaid':
      return unsaid(form.figures.repeat(count));
    case 'many':
      return many(times(form.part, count));
    case 'sequence':
    case 'either':
      return { ...form, parts: form.parts.map((part) => times(part, count)) };
  }
}

const ohs = either(oh, repeated([oh]));
const clearDigits = either(digit, repeated([zero, ...units]));
const digitRun = many(either(clearDigits, ohs));

/** "oh" alone is an exclamation: a run of digits needs one word that can be nothing else. */
const clearRun = sequence(perhaps(many(ohs)), clearDigits, perhaps(digitRun));

// ---- eleven, twenty five ---------------------------------------------------------------------------------------------

const teen = either(
  word('ten', '10'),
  word('eleven', '11'),
  word('twelve', '12'),
  word('thirteen', '13'),
  word('fourteen', '14'),
  word('fifteen', '15'),
  word('sixteen', '16'),
  word('seventeen', '17'),
  word('eighteen', '18'),
  word('nineteen', '19'),
);
const tens: Form[] = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'].map((name, index) =>
  word(name, `${index + 2}`),
);
const roundTen = sequence(either(...tens), unsaid('0'));
const tensAndUnit = sequence(either(...tens), unit);

/** Exactly two figures: 10 to 99. */
const twoFigures = either(teen, roundTen, tensAndUnit);

// ---- hundreds and thousands ------------------------------------------------------------------------------------------

const and = word('and');
const hundred = word('hundred');
const thousand = word('thousand');
/** A bare "hundred" is not a number: how many is unsaid, and a lost "two" would sound the same. */
const count = either(unit, word('a', '1'));

const belowHundred = either(sequence(unsaid('0'), unit), twoFigures);
const afterHundred = either(unsaid('00'), sequence(usually(and), belowHundred));
const unitHundreds = sequence(unit, hundred, afterHundred);
const afterThousand = either(
  unsaid('000'),
  sequence(perhaps(and), unitHundreds),
  sequence(usually(and), unsaid('0'), belowHundred),
);
const thousands = sequence(either(count, twoFigures), thousand, afterThousand);

/** "fifteen hundred", "twenty five hundred". Nobody says "forty hundred": it is a misheard "four hundred". */
const manyHundreds = either(teen, tensAndUnit);

const natural = either(
  zero,
  unit,
  twoFigures,
  sequence(count, hundred, afterHundred),
  thousands,
  sequence(manyHundreds, hundred, afterHundred),
);

/** AIM 4-2-8 and ICAO Annex 10: whole hundreds and thousands; above 9 900 the digits of the thousands are said apart. */
const aviationHead = either(unit, sequence(unit, digit), sequence(unit, digit, digit));
const aviationRound = either(
  sequence(unit, hundred, unsaid('00')),
  sequence(aviationHead, thousand, either(unsaid('000'), sequence(unit, hundred, unsaid('00')))),
);

// ---- two groups: one thirty five, twelve fifty, twenty four five -------------------------------------------------------

/**
 * A number said in two groups. A round ten never comes first before another group: "twenty five" is 25, "thirty forty"
 * is a person changing their mind, and "forty zero" is how this recogniser mishears "four zero". More than two groups
 * are too easily misheard: such numbers are said digit by digit.
 */
const groups = (between: Form): Form =>
  either(
    sequence(unit, between, twoFigures),
    sequence(either(teen, tensAndUnit), between, either(twoFigures, sequence(either(oh, zero), unit))),
    sequence(roundTen, between, oh, unit),
  );
/** "twenty four five": as likely 24.5 as 245, and nothing may follow it. */
const groupAndDigit = (between: Form): Form => sequence(either(teen, tensAndUnit), between, digit);
const grouped = groups(unsaid(''));

// ---- decimals and fractions ------------------------------------------------------------------------------------------

export const POINT_WORDS: readonly string[] = ['point', 'decimal'];
const point = either(...POINT_WORDS.map((name) => word(name, '.')));
const decimals = sequence(point, digitRun);
/** "point twenty five". */
const groupedDecimals = sequence(point, twoFigures);
const nothingBefore = unsaid('0');

/** The figures that a half, a quarter and three quarters add: '.5' to one, '50' to a hundred. */
interface Fractions {
  readonly half: string;
  readonly quarter: string;
  readonly threeQuarters: string;
}

const article = either(word('a'), word('one'));
const fraction = ({ half, quarter, threeQuarters }: Fractions): Form =>
  either(
    sequence(article, word('half', half)),
    sequence(article, word('quarter', quarter)),
    sequence(word('three'), either(word('quarters', threeQuarters), word('quarter', threeQuarters))),
  );
/** "and a half". The small "a" of "and a half" is often lost. */
const andFraction = (figures: Fractions): Form => sequence(and, either(fraction(figures), word('half', figures.half)));

const OF_ONE = { half: '.5', quarter: '.25', threeQuarters: '.75' };
const OF_HUNDRED = { half: '50', quarter: '25', threeQuarters: '75' };
const OF_THOUSAND = { half: '500', quarter: '250', threeQuarters: '750' };

// ---- the readings ----------------------------------------------------------------------------------------------------

/** How the words make the number. */
export type ReadingStyle =
  /** Digit by digit: "one three five point two". */
  | 'digits'
  /** "one hundred and thirty five point two". */
  | 'natural'
  /** "one three thousand five hundred". */
  | 'aviation'
  /** In groups: "one thirty five", "one thirty five point twenty five". */
  | 'grouped'
  /** "twenty four and a half". */
  | 'fraction'
  /**
   * In groups with a point that was not said: "twelve fifty" as 12.50. It is never the only reading. The other is 100 or
   * 10 times as much, so that the range of the tool often settles it; a careful listener asks even then.
   */
  | 'unsaid-point'
  /** A fraction of a scale: "a hundred and a half" as 150. A careful listener asks. */
  | 'unsaid-scale';

/** Every way to say a number. Where two ways give the same figures, the first names the style. */
export const READINGS: readonly { readonly style: ReadingStyle; readonly form: Form }[] = [
  {
    style: 'digits',
    form: either(sequence(clearRun, perhaps(decimals)), sequence(either(many(ohs), nothingBefore), point, clearRun)),
  },
  { style: 'natural', form: sequence(natural, perhaps(decimals)) },
  { style: 'aviation', form: aviationRound },
  {
    style: 'grouped',
    form: either(
      sequence(grouped, perhaps(either(decimals, groupedDecimals))),
      sequence(either(natural, clearRun, nothingBefore, oh), groupedDecimals),
      groupAndDigit(unsaid('')),
    ),
  },
  {
    style: 'fraction',
    form: either(
      sequence(nothingBefore, fraction(OF_ONE)),
      sequence(either(natural, clearRun, grouped), andFraction(OF_ONE)),
    ),
  },
  { style: 'unsaid-point', form: either(groups(unsaid('.')), groupAndDigit(unsaid('.'))) },
  {
    style: 'unsaid-scale',
    form: either(
      sequence(either(count, manyHundreds), hundred, andFraction(OF_HUNDRED)),
      sequence(either(count, twoFigures), thousand, andFraction(OF_THOUSAND)),
      sequence(either(count, twoFigures), thousand, unit, hundred, andFraction(OF_HUNDRED)),
    ),
  },
];

// ---- what we say ourselves ---------------------------------------------------------------------------------------------

export type SayStyle = 'digits' | 'aviation' | 'natural';

const plainDigits = sequence(many(digit), perhaps(sequence(point, many(digit))));

/** The forms we say, best first: the last is digit by digit, which has words for every number. */
export const SAYINGS: Readonly<Record<SayStyle, readonly Form[]>> = {
  digits: [plainDigits],
  aviation: [aviationRound, plainDigits],
  natural: [sequence(natural, perhaps(sequence(point, many(digit)))), plainDigits],
};
