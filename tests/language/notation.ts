/** Meanings in the short notation of the corpus. */
import type { Meaning, SaidReading } from '../../src/session/intent.ts';
import type { Understanding } from '../../src/language/understand.ts';

export function notationOf(understanding: Understanding): string {
  if (understanding.kind === 'nothing') return understanding.ask === undefined ? '-' : '?';
  return notationOfMeaning(understanding.meaning);
}

function notationOfMeaning(meaning: Meaning): string {
  switch (meaning.kind) {
    case 'reading':
      return short(meaning.reading);
    case 'correction':
      return `correction ${short(meaning.reading)}`;
    case 'witness':
      return `witness ${short(meaning.reading)}`;
    case 'click':
      return meaning.fastener === null ? 'click' : `click ${meaning.fastener}`;
    case 'answer':
      return `answer ${meaning.outcome}`;
    case 'observed':
      return `observed ${meaning.value}`;
    case 'witness says':
      return meaning.agrees ? 'witness affirm' : 'witness negative';
    case 'report':
      return `report ${meaning.what}`;
    case 'reason':
      return `reason ${meaning.text}`;
    case 'second person':
      return meaning.name === null ? 'second person leaves' : `second person ${meaning.name}`;
    case 'unclear':
      return meaning.doubt === 'several readings' ? `? ${meaning.readings.map(short).join(' | ')}` : meaning.doubt;
    default:
      return meaning.kind;
  }
}

const short = ({ fastener, value }: SaidReading): string => (fastener === null ? value : `${fastener}@${value}`);
