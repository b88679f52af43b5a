/** What a data module wants before the work and after it: people, conditions, equipment, supplies, spares and safety. */
import { leftOut } from '../../words/left-out.ts';
import { dataModule } from '../../words/data-module.ts';
import { freshId, idFrom } from '../edit/things.ts';
import { type Draft, emptyDraft, insert, type JsonFields } from '../edit/draft.ts';
import { importedStep, type ImportedStep } from './imported-step.ts';
import type { LeftOutList } from './left-out.ts';
import { type Reading, wordsOf } from './module-text.ts';
import { allIn, elementAt, elementsIn, type Element, plainText } from './xml.ts';

/** Lists of the procedure that come out of the preliminary requirements. */
export interface Needed {
  readonly draft: Draft;
  /** Names of all that is needed by the id that links in the text point to. */
  readonly named: ReadonlyMap<string, string>;
  /** Torque tools by the same ids. */
  readonly tools: ReadonlyMap<string, string>;
  /** Equipment that is no torque tool, to be told before the work. */
  readonly equipment: readonly string[];
}

interface Item {
  readonly name: string;
  readonly partNumber: string;
  readonly quantity: string;
  /** For links; the empty text where it has none. */
  readonly link: string;
  readonly line: number;
}

/** Reads equipment, supplies and spares into lists of a draft. */
export function neededIn(preliminary: Element | undefined, left: LeftOutList): Needed {
  const named = new Map<string, string>();
  const tools = new Map<string, string>();
  const equipment: string[] = [];
  let draft = emptyDraft();
  const add = (list: string, item: Item, fields: JsonFields): string => {
    const id = freshId(draft, [list], idFrom(item.name, list.slice(0, -1)));
    draft = insert(draft, [list], { id, ...fields });
    return id;
  };
  const itemsIn = (group: string, element: string): readonly Item[] =>
    allIn(preliminary, group).flatMap((found) =>
      elementsIn(found).flatMap((each) => {
        if (each.name === element) return [itemOf(each)];
        left.note(each.line, leftOut.element(each.name, plainText(each)));
        return [];
      }),
    );
  const remember = (item: Item): void => {
    if (item.link !== '') named.set(item.link, item.name);
  };
  for (const item of itemsIn('supportEquipDescrGroup', 'supportEquipDescr')) {
    remember(item);
    if (TORQUE_TOOL.test(item.name)) {
      const id = add('tools', item, { name: item.name });
      if (item.link !== '') tools.set(item.link, id);
      else tools.set(`#${id}`, id);
      left.note(item.line, leftOut.toolFacts(item.name));
    } else equipment.push(inFull(item));
  }
  for (const item of itemsIn('supplyDescrGroup', 'supplyDescr')) {
    remember(item);
    add('consumables', item, { name: inFull(item) });
  }
  for (const item of itemsIn('spareDescrGroup', 'spareDescr')) {
    remember(item);
    // A seal that is listed as a spare is replaced. What else is listed is laid out with the consumables.
    if (SEAL.test(item.name)) {
      const partNumber = item.partNumber === '' ? {} : { partNumber: item.partNumber };
      add('seals', item, { name: quantified(item), ...partNumber, reuse: 'never' });
    } else add('consumables', item, { name: inFull(item) });
  }
  return { draft, named, tools, equipment };
}

const TORQUE_TOOL = /torque/iu;
const SEAL = /\b(?:seals?|gaskets?|o-?rings?|packings?)\b/iu;

function itemOf(element: Element): Item {
  const quantity = elementAt(element, 'reqQuantity');
  const unit = quantity?.attributes.unitOfMeasure ?? '';
  return {
    name: plainText(elementAt(element, 'name')) || plainText(elementAt(element, 'shortName')) || dataModule.unnamed,
    partNumber:
      plainText(elementAt(element, 'identNumber', 'partAndSerialNumber', 'partNumber')) ||
      (elementAt(element, 'supplyNumber', 'identNumber') ? '' : plainText(elementAt(element, 'supplyNumber'))),
    // "EA" only says that they are counted.
    quantity: `${plainText(quantity)} ${/^ea$/iu.test(unit) ? '' : unit}`.trim(),
    link: element.attributes.id ?? '',
    line: element.line,
  };
}

const quantified = ({ name, quantity }: Item): string =>
  quantity === '' || quantity === '1' ? name : `${name}, ${quantity}`;
const inFull = (item: Item): string =>
  item.partNumber === '' ? quantified(item) : dataModule.withPartNumber(quantified(item), item.partNumber);

/** How many people the module asks for; null where it does not say. What they are is left out. */
export function personsIn(preliminary: Element | undefined, left: LeftOutList): number | null {
  const people = elementsIn(elementAt(preliminary, 'reqPersons'), 'person', 'personnel');
  for (const person of people) {
    const words = [
      elementAt(person, 'personCategory')?.attributes.personCategoryCode,
      elementAt(person, 'personSkill')?.attributes.skillLevelCode,
      plainText(elementAt(person, 'trade')),
      plainText(elementAt(person, 'estimatedTime')),
    ].flatMap((each) => each || []);
    if (words.length > 0) left.note(person.line, leftOut.person(words));
  }
  const count = people.reduce((sum, { attributes }) => sum + (Number(attributes.numRequired) || 1), 0);
  return count >= 1 && count <= 20 ? count : null;
}

/** A question for each required condition: work goes on only when it is so. */
export function conditionSteps(
  groups: readonly Element[],
  number: string,
  heading: string,
  reading: Reading,
): readonly ImportedStep[] {
  const conditions = groups.flatMap((group) => elementsIn(group)).filter(({ name }) => name !== 'noConds');
  return conditions.map((condition, i) => {
    const { text } = wordsOf(elementsIn(condition, 'reqCond', 'dmRef', 'externalPubRef', 'pmRef'), reading);
    return importedStep({
      number: `${number}${i + 1}`,
      title: heading,
      text: text || plainText(condition),
      kind: 'check',
      hazards: [],
      notes: [],
      fields: {
        outcomes: [
          { id: 'affirm', text: dataModule.conditionIsSo, then: 'go on' },
          { id: 'negative', text: dataModule.conditionIsNot, then: 'stay' },
        ],
      },
    });
  });
}
