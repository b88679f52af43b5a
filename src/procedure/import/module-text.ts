/** The words of paragraphs, lists and titles of a data module, with their quantities and links written out. */
import { leftOut } from '../../words/left-out.ts';
import { quoted } from '../fault.ts';
import type { LeftOutList } from './left-out.ts';
import { isOnlyWords, isTorque, type ModuleQuantity, quantityOf, quantityWords, unreadNumbers } from './quantities.ts';
import { elementAt, elementsIn, type Element, plainText } from './xml.ts';

/** What is needed to read the words of a module. */
export interface Reading {
  readonly left: LeftOutList;
  /** Names of tools, supplies and spares by the id that links in the text point to. */
  readonly named: ReadonlyMap<string, string>;
}

/** Words with the quantities that stand in them. */
export interface Words {
  readonly text: string;
  readonly torques: readonly ModuleQuantity[];
  /** Ids that the text links to. */
  readonly links: readonly string[];
}

/** Inline markup whose words are simply part of the sentence. */
const PLAIN: ReadonlySet<string> = new Set([
  'para',
  'notePara',
  'warningAndCautionPara',
  'simplePara',
  'title',
  'listItem',
  'listItemDefinition',
  'attentionListItemPara',
  'attentionRandomListItem',
  'attentionSequentialListItem',
  'emphasis',
  'subScript',
  'superScript',
  'inlineSignificantData',
  'verbatimText',
  'acronym',
  'acronymTerm',
  'acronymDefinition',
  'changeInline',
  'reqCond',
  'name',
  'shortName',
]);

/** Lists are told in one sentence, with semicolons. */
const LISTS: ReadonlySet<string> = new Set([
  'randomList',
  'sequentialList',
  'attentionRandomList',
  'attentionSequentialList',
]);

/** What has no place in a procedure file. */
const WITHOUT_PLACE = [
  ...(['figure', 'graphic', 'symbol', 'multimedia', 'table', 'footnote', 'foldout'] as const),
  ...(['dmRef', 'pmRef', 'externalPubRef'] as const),
];

/** Marks for an index, which nobody misses. */
const UNSEEN = 'indexFlag';

/** All words of these elements, in one line. What they hold besides is put into the list of what was left out. */
export function wordsOf(elements: readonly Element[], reading: Reading): Words {
  const torques: ModuleQuantity[] = [];
  const links: string[] = [];

  const inside = (element: Element): string => element.children.map(textOf).join('');
  const textOf = (child: Element | string): string => {
    if (typeof child === 'string') return child;
    const { name, attributes, line } = child;
    if (name === 'quantity') return ` ${quantityText(child)} `;
    if (name === 'internalRef') return ` ${linkText(child)} `;
    if (LISTS.has(name)) return ` ${elementsIn(child).map(inside).map(oneLine).filter(Boolean).join('; ')}. `;
    if (PLAIN.has(name)) return name.endsWith('ara') || name === 'title' ? ` ${inside(child)} ` : inside(child);
    if (name === UNSEEN) return ' ';
    const what = WITHOUT_PLACE.find((each) => each === name);
    if (what !== undefined) {
      const called = plainText(elementAt(child, 'title')) || attributes.infoEntityIdent || codeIn(child);
      reading.left.note(line, leftOut.thing(what, called ? quoted(called) : ''));
      return ' ';
    }
    reading.left.note(line, leftOut.meaning(name));
    return ` ${inside(child)} `;
  };

  function quantityText(element: Element): string {
    const quantity = quantityOf(element);
    if (isTorque(quantity)) torques.push(quantity);
    if (quantity.holdsMore) reading.left.note(quantity.line, leftOut.manyValues(quoted(quantity.words)));
    else if (isOnlyWords(quantity)) reading.left.note(quantity.line, leftOut.noUnit(quoted(quantity.words)));
    for (const number of unreadNumbers(quantity)) reading.left.note(quantity.line, unreadNumber(number));
    return quantityWords(quantity);
  }

  function linkText(element: Element): string {
    const id = element.attributes.internalRefId ?? '';
    links.push(id);
    const own = plainText(element);
    const name = own || reading.named.get(id);
    if (name === undefined) reading.left.note(element.line, leftOut.link(quoted(id)));
    return name ?? '';
  }

  const text = oneLine(elements.map((element) => textOf(element)).join(' '));
  return { text, torques, links };
}

/** What is said about a number that could be read in two ways. */
const unreadNumber = (number: string): string =>
  number.includes(',') ? leftOut.commaInNumber(quoted(number)) : leftOut.noPlainNumber(quoted(number));

/** Single spaces, and none before a stop. */
const oneLine = (text: string): string =>
  text
    .replace(/\s+/gu, ' ')
    .replace(/ (?=[.,;:!?)])/gu, '')
    .replace(/(?<=[.;:])\.(?=\s|$)/gu, '')
    .trim();

/** "INV-A-29-10-00-00A-720A-A": the code of a data module that is referred to. */
export function codeIn(element: Element | undefined): string {
  const code = elementAt(element, 'dmRefIdent', 'dmCode') ?? elementAt(element, 'dmIdent', 'dmCode');
  return code === undefined ? '' : codeText(code.attributes);
}

function codeText(code: Element['attributes']): string {
  const part = (name: string): string => code[name] ?? '';
  return [
    part('modelIdentCode'),
    part('systemDiffCode'),
    part('systemCode'),
    `${part('subSystemCode')}${part('subSubSystemCode')}`,
    part('assyCode'),
    `${part('disassyCode')}${part('disassyCodeVariant')}`,
    `${part('infoCode')}${part('infoCodeVariant')}`,
    part('itemLocationCode'),
  ]
    .filter((each) => each !== '')
    .join('-');
}
