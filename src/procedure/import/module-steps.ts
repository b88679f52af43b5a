/** Steps of a data module as steps of a procedure: in the order of the module, each with its warnings and notes. */
import { leftOut } from '../../words/left-out.ts';
import { importedStep, type ImportedStep } from './imported-step.ts';
import { type Reading, wordsOf } from './module-text.ts';
import { torqueFields } from './quantities.ts';
import { allIn, elementsIn, type Element, plainText } from './xml.ts';
import type { Json, JsonFields } from '../edit/draft.ts';

export interface StepReading extends Reading {
  /** The module's torque tools by the id that links point to, as ids of the procedure. */
  readonly tools: ReadonlyMap<string, string>;
  /** Conditions of the procedure by the id of the applicability that steps refer to. */
  readonly conditions: ReadonlyMap<string, string>;
  /** Warnings and cautions that steps refer to by id. */
  readonly hazards: ReadonlyMap<string, Element>;
}

/** What a step says before its text. */
interface Before {
  readonly hazards: readonly Json[];
  readonly notes: readonly string[];
}
const NOTHING: Before = { hazards: [], notes: [] };

/** What a step has from the steps around it. */
interface Around {
  readonly heading: string;
  readonly before: Before;
  /** On which answer the step around it is worked: then this one is as well. */
  readonly applies: JsonFields;
}

/** Elements of a step that are read in their own place. */
const READ_APART: ReadonlySet<string> = new Set([
  'title',
  'warning',
  'caution',
  'note',
  'proceduralStep',
  'circuitBreakerDescrGroup',
]);

/** All steps in a main procedure, sub-steps after their own step, numbered as the module nests them. */
export function stepsIn(procedure: Element, reading: StepReading): readonly ImportedStep[] {
  for (const child of elementsIn(procedure)) {
    if (child.name !== 'proceduralStep') reading.left.note(child.line, leftOut.element(child.name, summary(child)));
  }
  const top: Around = { heading: '', before: NOTHING, applies: {} };
  return elementsIn(procedure, 'proceduralStep').flatMap((step, i) => stepsOf(step, [i + 1], top, reading));
}

/** The first words, so that a person finds it. */
const summary = (element: Element): string => {
  const text = plainText(element);
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
};

function stepsOf(
  step: Element,
  numbers: readonly number[],
  { heading, before: inherited, applies: around }: Around,
  reading: StepReading,
): readonly ImportedStep[] {
  const number = numbers.join('.');
  reading.left.step = number;
  const own = beforeIn(step, reading);
  const before: Before = {
    hazards: [...inherited.hazards, ...own.hazards],
    notes: [...inherited.notes, ...own.notes],
  };
  const title = wordsOf(elementsIn(step, 'title'), reading).text || heading;
  const body = elementsIn(step).filter(({ name }) => !READ_APART.has(name));
  const words = wordsOf(body, reading);
  for (const breaker of elementsIn(step, 'circuitBreakerDescrGroup')) {
    reading.left.note(breaker.line, leftOut.breakers(summary(breaker)));
  }
  const applies = appliesTo(step, around, reading);
  const children = elementsIn(step, 'proceduralStep');
  // A step without words of its own only gathers others: what it warns of is told before the first of them, and before
  // more where the first are not worked on every unit.
  const isHeading = words.text === '' && children.length > 0;
  const made = isHeading
    ? []
    : [
        importedStep({
          number,
          title,
          text: words.text,
          kind: 'do',
          ...before,
          fields: { ...applies, ...tightening(words, reading) },
        }),
      ];
  noteCheck(step, reading);
  const sure = children.findIndex((child) => isAlwaysWorked(child, reading));
  const rest = children.flatMap((child, i) => {
    const isTold = isHeading && (sure < 0 || i <= sure);
    const inside = { heading: isHeading ? title : '', before: isTold ? before : NOTHING, applies };
    return stepsOf(child, [...numbers, i + 1], inside, reading);
  });
  reading.left.step = null;
  return [...made, ...rest];
}

/** Whether there is work in a step on every unit that comes to the steps around it. */
const isAlwaysWorked = (step: Element, reading: StepReading): boolean =>
  !reading.conditions.has(step.attributes.applicRefId ?? '') &&
  elementsIn(step).some((child) =>
    child.name === 'proceduralStep' ? isAlwaysWorked(child, reading) : !READ_APART.has(child.name),
  );

/** Warnings, cautions and notes of a step, those it holds and those it names. */
export function beforeIn(step: Element, reading: StepReading): Before {
  const referred = ['warningRefs', 'cautionRefs'].flatMap((name) => (step.attributes[name] ?? '').split(/\s+/u));
  const found = referred.filter(Boolean).flatMap((id) => {
    const hazard = reading.hazards.get(id);
    if (hazard === undefined) reading.left.note(step.line, leftOut.hazardElsewhere(id));
    return hazard ?? [];
  });
  return {
    hazards: [...found, ...elementsIn(step, 'warning', 'caution')]
      .toSorted((one, other) => GRAVITY(one) - GRAVITY(other))
      .map((hazard) => hazardOf(hazard, reading)),
    notes: elementsIn(step, 'note').map((note) => wordsOf(elementsIn(note), reading).text),
  };
}

/** The gravest comes first. */
const GRAVITY = ({ name }: Element): number => (name === 'warning' ? 0 : 1);

/** A warning is about harm to people, a caution about harm to equipment (from memory: chapter 3.9 of S1000D). */
const hazardOf = (hazard: Element, reading: Reading): JsonFields => ({
  signal: hazard.name,
  consequence: hazard.name === 'warning' ? 'person' : 'equipment',
  text: wordsOf(elementsIn(hazard), reading).text,
});

/** A step with one torque is a tightening; which fasteners it means is for the person to say. */
function tightening({ torques, links }: ReturnType<typeof wordsOf>, reading: StepReading): JsonFields {
  const [torque, ...others] = torques;
  if (torque === undefined) return {};
  if (others.length > 0) {
    reading.left.note(torque.line, leftOut.twoTorques);
    return {};
  }
  const linked = links.flatMap((link) => reading.tools.get(link) ?? []);
  const [only, second] = [...reading.tools.values()];
  const tool = linked[0] ?? (second === undefined ? only : undefined);
  reading.left.note(torque.line, leftOut.whichFasteners);
  return {
    kind: 'tighten',
    ...(tool === undefined ? {} : { tool }),
    passes: [{ kind: 'torque', ...torqueFields(torque) }],
  };
}

function appliesTo(step: Element, around: JsonFields, reading: StepReading): JsonFields {
  const id = step.attributes.applicRefId;
  if (id === undefined) return around;
  const condition = reading.conditions.get(id);
  if (condition === undefined) {
    reading.left.note(step.line, leftOut.unknownApplicability(JSON.stringify(id)));
    return around;
  }
  if (Object.keys(around).length > 0) reading.left.note(step.line, leftOut.twoApplicabilities);
  return { applies: { condition, is: true } };
}

/** Who is to check a step stands in a code (from memory: attribute independentCheck) that is not known here. */
function noteCheck(step: Element, { left }: StepReading): void {
  const code = step.attributes.independentCheck;
  if (code !== undefined) left.note(step.line, leftOut.independentCheck(code));
}

/** Warnings and cautions that carry an id, wherever they stand outside of steps. */
export const hazardsById = (root: Element): ReadonlyMap<string, Element> =>
  new Map(
    allIn(root, 'warning', 'caution').flatMap((each) => (each.attributes.id ? [[each.attributes.id, each]] : [])),
  );
