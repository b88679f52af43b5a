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
  /** All that was written, for a quantity that has no groups. */
  readonly words: string;
  readonly line: number;
}

/** Reads `quantity`: its groups of type nominal, minimum or maximum, each with values and tolerances. */
export function quantityOf(element: Element): ModuleQuantity {
  const groups = allIn(element, 'quantityGroup');
  const unitOf = ({ attributes }: Element, group: Element): string =>
    attributes.quantityUnitOfMeasure ?? group.attributes.quantityUnitOfMeasure ?? '';
  const valueOf = (...types: readonly string[]): AsWritten | null => {
    const group = groups.find(({ attributes }) => types.includes(attributes.quantityGroupType ?? 'nominal'));
    const value = elementsIn(group, 'quantityValue')[0];
    return group && value ? { value: plainText(value), unit: unitOf(value, group) } : null;
  };
  const nominal = valueOf('nominal');
  const toleranceOf = (...types: readonly string[]): AsWritten | null => {
    for (const group of groups) {
      const found = elementsIn(group, 'quantityTolerance').find(({ attributes }) =>
        types.includes(attributes.quantityToleranceType ?? 'plusorminus'),
      );
      const sign = types.includes('minus') ? /^[-−]\s*/u : /^[+±]\s*/u;
      if (found)
        return { value: plainText(found).replace(sign, ''), unit: unitOf(found, group) || (nominal?.unit ?? '') };
    }
    return null;
  };
  return {
    nominal,
    min: valueOf('minimum'),
    max: valueOf('maximum'),
    plus: toleranceOf('plus', 'plusorminus'),
    minus: toleranceOf('minus', 'plusorminus'),
    words: plainText(element),
    line: element.line,
  };
}

/** '24.5 N·m ± 1.5', '23 to 26 N·m', '24,5 N·m': the numbers as they are written. */
export function quantityWords({ nominal, min, max, plus, minus, words }: ModuleQuantity): string {
  const parts = [
    ...(nominal ? [withUnit(nominal)] : []),
    ...(plus && minus && plus.value === minus.value && plus.unit === minus.unit
      ? [`± ${toleranceWords(plus, nominal)}`]
      : [
          ...(plus ? [`+ ${toleranceWords(plus, nominal)}`] : []),
          ...(minus ? [`− ${toleranceWords(minus, nominal)}`] : []),
        ]),
    ...(min && max ? [`${min.value} to ${withUnit(max)}`] : []),
    ...(min && !max ? [`at least ${withUnit(min)}`] : []),
    ...(max && !min ? [`at most ${withUnit(max)}`] : []),
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

export const isTorque = ({ nominal, min, max }: ModuleQuantity): boolean => {
  const value = nominal ?? min ?? max;
  return value !== null && torqueUnit(value.unit) !== null;
};

/** The numbers of a quantity that are no plain decimals: "24,5", "1 000". */
export const unreadNumbers = ({ nominal, min, max, plus, minus }: ModuleQuantity): readonly string[] => [
  ...new Set(
    [nominal, min, max, plus, minus].flatMap((each) => (each && !DECIMAL.test(each.value) ? [each.value] : [])),
  ),
];

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
