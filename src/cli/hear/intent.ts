/** A meaning as it is printed: as `npm run understand` prints it, flat, with all values as text. */
import type { Situation } from '../../language/situation.ts';
import type { Meaning, SaidReading } from '../../session/intent.ts';
import type { Unit } from '../../units/index.ts';

export interface IntentLine {
  readonly kind: Meaning['kind'];
  readonly fastener: string | null;
  readonly value: string | null;
  readonly unit: Unit<'torque'> | null;
  /** Of an answer to a check, or of the second person. */
  readonly outcome?: string;
  /** Of a question or a report: what it is about. */
  readonly about?: string;
  /** Of a reason: the words as they were dictated. */
  readonly text?: string;
  /** Of what is unclear: everything that it can mean. */
  readonly readings?: readonly { readonly fastener: string | null; readonly value: string }[];
}

export function intentLine(meaning: Meaning, { reading, correction }: Situation): IntentLine {
  const { kind } = meaning;
  switch (kind) {
    case 'reading':
    case 'witness':
      return { kind, ...flat(meaning.reading), unit: reading?.unit ?? null };
    case 'correction':
      return { kind, ...flat(meaning.reading), unit: correction?.unit ?? null };
    case 'unclear':
      return { kind, ...NO_VALUE, readings: meaning.readings.map(flat) };
    case 'click':
      return { kind, ...NO_VALUE, fastener: textOf(meaning.fastener) };
    case 'answer':
      return { kind, ...NO_VALUE, outcome: meaning.outcome };
    case 'question': {
      const { question } = meaning;
      const fastener = question.about === 'logged' ? question.fastener : null;
      return { kind, ...NO_VALUE, fastener: textOf(fastener), about: question.about };
    }
    case 'report':
      return { kind, ...NO_VALUE, about: meaning.what };
    case 'reason':
      return { kind, ...NO_VALUE, text: meaning.text };
    case 'witness says':
      return { kind, ...NO_VALUE, outcome: meaning.agrees ? 'agrees' : 'disagrees' };
    default:
      return { kind, ...NO_VALUE };
  }
}

/** "reading, number 4 at 24 N·m" */
export function intentInWords({ kind, fastener, value, unit, outcome, about, text, readings }: IntentLine): string {
  const amount = value === null ? '' : `${value}${unit === null ? '' : ` ${unit}`}`;
  const named = fastener === null ? '' : `number ${fastener}`;
  const detail = [[named, amount].filter(Boolean).join(' at '), outcome, about, text].filter(Boolean).join(', ');
  const possible = (readings ?? []).map((each) =>
    [each.fastener, each.value].filter((part) => part !== null).join(' at '),
  );
  return [kind, detail, possible.join(' or ')].filter(Boolean).join(', ');
}

const NO_VALUE = { fastener: null, value: null, unit: null };
const textOf = (fastener: number | null): string | null => (fastener === null ? null : String(fastener));
const flat = ({ fastener, value }: SaidReading) => ({ fastener: textOf(fastener), value });
