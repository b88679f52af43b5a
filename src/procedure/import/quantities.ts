/**
 * Quantities of a data module. Numbers stand in the language of the author, so that a comma may be a decimal comma or a
 * thousands mark: such a number is kept as it is written and put to the person, never read as either.
 */
import { middleOf, plusMinus } from '../../tightening/index.ts';
import {
  add,
  DECIMAL,
  fromWritten,
  parseUnit,
  subtract,
  toWritten,
  type Torque,
  type Unit,
  type Written,
} from '../../units/index.ts';
import { dataModule } from '../../words/data-module.ts';
import { isRefused } from '../fault.ts';
import type { JsonFields } from '../edit/draft.ts';
import { allIn, elementsIn, type Element, plainText } from './xml.ts';

/** A number with its unit, both as written. */
interface AsWritten {
  readonly value: string;
  readonly unit: string;
}

export interface ModuleQuantity {
  readonly nominal: AsWritten | null;
  readonly min: AsWritten | null;
  readonly max: AsWritten | null;
  /** Tolerances, without their sign. */
  readonly plus: AsWritten | null;
  readonly minus: AsWritten | null;
  /** All that was written. */
  readonly words: string;
  /** Whether it holds values that have no field here: of a type that is not known, or a second one of the same. */
  readonly holdsMore: boolean;
  readonly line: number;
}

/** Reads `quantity`: its groups of type nominal, minimum or maximum, each with values and tolerances. */
export function quantityOf(element: Element): ModuleQuantity {
  const groups = allIn(element, 'quantityGroup');
  const unitOf = ({ attributes }: Element, group: Element): string =>
    attributes.quantityUnitOfMeasure ?? group.attributes.quantityUnitOfMeasure ?? '';
  const read = new Set<Element>();
  const valueOf = (type: string): AsWritten | null => {
    const group = groups.find(({ attributes }) => type === (attributes.quantityGroupType ?? 'nominal'));
    const value = elementsIn(group, 'quantityValue')[0];
    if (!group || !value) return null;
    read.add(value);
    return { value: plainText(value), unit: unitOf(value, group) };
  };
  const nominal = valueOf('nominal');
  const toleranceOf = (side: 'plus' | 'minus'): AsWritten | null => {
    for (const group of groups) {
      for (const each of elementsIn(group, 'quantityTolerance')) {
        const type = each.attributes.quantityToleranceType ?? 'plusorminus';
        if (type !== side && type !== 'plusorminus') continue;
        read.add(each);
        return { value: plainText(each).replace(SIGNS[type], ''), unit: unitOf(each, group) || (nominal?.unit ?? '') };
      }
    }
    return null;
  };
  const fields = {
    nominal,
    min: valueOf('minimum'),
    max: valueOf('maximum'),
    plus: toleranceOf('plus'),
    minus: toleranceOf('minus'),
  };
  const all = groups.flatMap((group) =>
    elementsIn(group, 'quantityValue', 'quantityTolerance').map((each) => {
      const types = [group.attributes.quantityGroupType, each.attributes.quantityToleranceType];
      const words = [...types, withUnit({ value: plainText(each), unit: unitOf(each, group) })];
      return { each, words: words.filter(Boolean).join(' ') };
    }),
  );
  return {
    ...fields,
    words: all.map(({ words }) => words).join(', ') || plainText(element),
    holdsMore: all.some(({ each }) => !read.has(each)),
    line: element.line,
  };
}

/** The sign that goes with each type of tolerance. Another one is left standing, and makes it no plain number. */
const SIGNS = { plus: /^\+\s*/u, minus: /^[-−]\s*/u, plusorminus: /^(?:±|\+(?:\s*\/?\s*[-−])?)\s*/u } as const;

/** '24.5 N·m ± 1.5', '23 to 26 N·m', '24,5 N·m': the numbers as they are written. */
export function quantityWords({ nominal, min, max, plus, minus, words, holdsMore }: ModuleQuantity): string {
  if (holdsMore) return words;
  const parts = [
    ...(nominal ? [withUnit(nominal)] : []),
    ...(plus && minus && plus.value === minus.value && plus.unit === minus.unit
      ? [`± ${toleranceWords(plus, nominal)}`]
      : [
          ...(plus ? [`+ ${toleranceWords(plus, nominal)}`] : []),
          ...(minus ? [`− ${toleranceWords(minus, nominal)}`] : []),
        ]),
    ...(min && max ? [dataModule.window(min.value, withUnit(max))] : []),
    ...(min && !max ? [dataModule.atLeast(withUnit(min))] : []),
    ...(max && !min ? [dataModule.atMost(withUnit(max))] : []),
  ];
  return parts.length > 0 ? parts.join(' ') : words;
}

/** The unit is said once where it is the same. */
const toleranceWords = (tolerance: AsWritten, nominal: AsWritten | null): string =>
  tolerance.unit === nominal?.unit ? tolerance.value : withUnit(tolerance);

const withUnit = ({ value, unit }: AsWritten): string => `${value} ${torqueUnit(unit) ?? unit}`.trim();

/** The unit of torque that a text names; null where it names none. */
export function torqueUnit(text: string): Unit<'torque'> | null {
  try {
    return parseUnit('torque', text);
  } catch (error) {
    if (isRefused(error)) return null;
    throw error;
  }
}

export const isTorque = ({ nominal, min, max, holdsMore }: ModuleQuantity): boolean => {
  const value = nominal ?? min ?? max;
  return !holdsMore && value !== null && torqueUnit(value.unit) !== null;
};

/** Whether it is words, or values without a unit: nobody can tell from it whether it is a torque. */
export const isOnlyWords = ({ nominal, min, max }: ModuleQuantity): boolean =>
  ((nominal ?? min ?? max)?.unit ?? '') === '';

/** The numbers of a quantity that are no plain decimals: "24,5", "1 000"; and tolerances with a sign that is not theirs. */
export const unreadNumbers = ({ nominal, min, max, plus, minus }: ModuleQuantity): readonly string[] => {
  const values = [nominal, min, max].filter((each) => each && !DECIMAL.test(each.value));
  const tolerances = [plus, minus].filter((each) => each && (!DECIMAL.test(each.value) || each.value.startsWith('-')));
  return [...new Set([...values, ...tolerances].flatMap((each) => each?.value ?? []))];
};

/**
 * A torque with its window as fields of a pass. What the module does not say stays away, and what is no plain decimal
 * stands as it was written: both are faults of the draft at their own place.
 */
export function torqueFields(quantity: ModuleQuantity): JsonFields {
  const { nominal, min, max } = quantity;
  const torques = unreadNumbers(quantity).length === 0 ? torquesOf(quantity) : null;
  if (torques) return torques;
  return {
    ...(nominal ? { target: asTyped(nominal) } : {}),
    ...(min || max ? { window: { ...(min ? { min: asTyped(min) } : {}), ...(max ? { max: asTyped(max) } : {}) } } : {}),
  };
}

const asTyped = ({ value, unit }: AsWritten): JsonFields => ({ value, unit: torqueUnit(unit) ?? unit });

/** Null where no window follows from what is written. */
function torquesOf({ nominal, min, max, plus, minus }: ModuleQuantity): JsonFields | null {
  const [target, low, high, above, below] = [nominal, min, max, plus, minus].map((each) => each && torqueOf(each));
  try {
    if (low && high) {
      if (!target) {
        const middle = middleOf(low, high);
        return fieldsOf(middle.target, low, high);
      }
      return fieldsOf(target, low, high);
    }
    if (target && above && below) {
      if (plus?.value === minus?.value && plus?.unit === minus?.unit) {
        const { window } = plusMinus(target, above);
        return fieldsOf(target, window.min, window.max);
      }
      return fieldsOf(target, subtract(target, below), add(target, above));
    }
  } catch (error) {
    if (!isRefused(error)) throw error;
  }
  return null;
}

function torqueOf({ value, unit }: AsWritten): Torque | null {
  const known = torqueUnit(unit);
  return known === null ? null : fromWritten('torque', { value, unit: known });
}

const fieldsOf = (target: Torque, min: Torque, max: Torque): JsonFields => ({
  target: json(toWritten(target)),
  window: { min: json(toWritten(min)), max: json(toWritten(max)) },
});

const json = ({ value, unit }: Written<'torque'>): JsonFields => ({ value, unit });
