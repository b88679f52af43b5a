/** Unit text from files and people to the unit's one spelling. */
import { quantities } from '../words/quantities.ts';
import { type Kind, type Unit, unitsOf, type Units } from './factors.ts';
import { refuse } from './refused.ts';

/** Other spellings, already folded (see `fold`). Separators are gone, so 'in-lb', 'in·lb' and 'IN LB' are all 'inlb'. */
const ALIASES: { readonly [K in Kind]: Readonly<Partial<Record<string, Units[K]>>> } = {
  torque: {
    ...spellings('N·m', ['nm', 'newtonmetre', 'newtonmetres', 'newtonmeter', 'newtonmeters']),
    ...spellings('kgf·m', ['kgfm', 'kgm', 'mkgf', 'mkg', 'kpm', 'mkp']),
    ...spellings('kgf·cm', ['kgfcm', 'kgcm', 'cmkgf', 'cmkg', 'kpcm', 'cmkp']),
    ...spellings('lbf·in', pounds('in', 'inch', 'inches')),
    ...spellings('lbf·ft', pounds('ft', 'foot', 'feet')),
    ...spellings('ozf·in', ['ozfin', 'ozin', 'inozf', 'inoz', 'ounceinch', 'ounceinches', 'inchounce', 'inchounces']),
  },
  mass: {
    ...spellings('kg', ['kg', 'kgs', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes']),
    ...spellings('g', ['g', 'gram', 'grams', 'gramme', 'grammes']),
    ...spellings('lb', ['lb', 'lbs', 'lbm', 'pound', 'pounds']),
  },
  length: {
    ...spellings('m', ['m', 'metre', 'metres', 'meter', 'meters']),
    ...spellings('cm', ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters']),
    ...spellings('mm', ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
    ...spellings('in', ['in', 'inch', 'inches', '"', '″']),
    ...spellings('ft', ['ft', 'foot', 'feet', "'", '′']),
  },
  volume: {
    ...spellings('L', ['l', 'litre', 'litres', 'liter', 'liters']),
    ...spellings('mL', ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters']),
    ...spellings('US gal', ['usgal', 'usgallon', 'usgallons']),
    ...spellings('US qt', ['usqt', 'usquart', 'usquarts']),
    ...spellings('Imp gal', ['impgal', 'impgallon', 'impgallons', 'imperialgallon', 'imperialgallons', 'ukgal']),
  },
  angle: spellings('°', ['°', 'deg', 'degree', 'degrees']),
  density: {
    ...spellings('kg/L', ['kg/l', 'g/ml', 'g/cm3']),
    ...spellings('lb/US gal', ['lb/usgal', 'lbs/usgal', 'lbm/usgal']),
  },
};

/** A gallon and a quart differ between countries by a fifth: ask, never guess. */
const AMBIGUOUS = /^(lbs?\/)?(gal|gallons?|qt|quarts?)$/;

/** Lower case, without the marks people put between two units: space, point, dot, hyphen, asterisk, ×. A slash stays. */
const fold = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s.\-‐‑–·⋅•∙*×_]/gu, '');

/**
 * The unit of a kind that a text names: its own spelling or a shop form such as 'in-lb', 'Nm' or 'inch-pounds'.
 * @throws Refused `ambiguous-unit` for a bare gallon or quart, `unknown-unit` otherwise.
 */
export function parseUnit<K extends Kind>(kind: K, text: string): Unit<K> {
  const folded = fold(text);
  const found = Object.hasOwn(ALIASES[kind], folded) ? ALIASES[kind][folded] : undefined;
  if (found !== undefined) return found;
  if (AMBIGUOUS.test(folded)) {
    refuse('ambiguous-unit', quantities.ambiguousUnit(text));
  }
  return refuse('unknown-unit', quantities.unknownUnit(text, kind, unitsOf(kind)));
}

function spellings<U extends string>(unit: U, folded: readonly string[]): Readonly<Partial<Record<string, U>>> {
  return Object.fromEntries(folded.map((text) => [text, unit]));
}

/** Both orders of a pound torque: 'inlb', 'lbin', 'inchpounds', 'poundinches', … */
function pounds(...lengths: readonly string[]): string[] {
  return lengths.flatMap((length) =>
    ['lb', 'lbs', 'lbf', 'pound', 'pounds'].flatMap((pound) => [length + pound, pound + length]),
  );
}
