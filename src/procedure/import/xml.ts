/**
 * XML (1.0) as a tree, from a file nobody vouches for. Entities are neither fetched nor expanded: a document that declares
 * any that text could use is refused before they could matter.
 */
import { parseXml, XmlDocumentType, XmlElement, XmlError, XmlText, type XmlNode } from '@rgrove/parse-xml';
import { dataModule } from '../../words/data-module.ts';

/** Characters. A long data module has a tenth of it. */
export const LARGEST_XML = 2_000_000;
const DEEPEST = 64;
const MOST_ELEMENTS = 100_000;

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (Element | string)[];
  /** Where it begins in the file, from 1. */
  readonly line: number;
}

export type Xml =
  | { readonly kind: 'read'; readonly root: Element }
  /** In words, with the line where there is one. */
  | { readonly kind: 'refused'; readonly why: string };

class Stop extends Error {}

/** Reads a whole document, or says why not. It never throws, fetches nothing and expands no entity. */
export function readXml(text: string): Xml {
  if (text.length > LARGEST_XML) {
    return { kind: 'refused', why: dataModule.tooLong(text.length, LARGEST_XML) };
  }
  const misread = text.indexOf('\uFFFD');
  if (misread >= 0) {
    const line = text.slice(0, misread).split('\n').length;
    return { kind: 'refused', why: dataModule.notUtf8(line) };
  }
  try {
    return { kind: 'read', root: treeOf(text) };
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { kind: 'refused', why: error.message };
  }
}

function treeOf(text: string): Element {
  const document = parsed(text, { includeOffsets: true, preserveDocumentType: true, resolveUndefinedEntity: () => '' });
  const { root } = document;
  const lines = lineFinder(text);
  for (const node of document.children) {
    if (node instanceof XmlDocumentType && declaresText(node.internalSubset ?? ''))
      throw new Stop(dataModule.entities(lines(node.end)));
  }
  // An entity that nobody declared was passed over only to tell the two apart.
  if (text.includes('&')) parsed(text, {});
  if (root === null) throw new Stop(dataModule.noElement);
  let count = 0;
  return elementOf(root, 1);

  function elementOf({ name, attributes, children, start }: XmlElement, depth: number): Element {
    const line = lines(start);
    count += 1;
    if (count > MOST_ELEMENTS) throw new Stop(dataModule.tooManyElements(line, MOST_ELEMENTS));
    if (depth > DEEPEST) throw new Stop(dataModule.tooDeep(line, DEEPEST));
    return { name, attributes, line, children: children.flatMap((child) => childOf(child, depth)) };
  }

  function childOf(child: XmlNode, depth: number): readonly (Element | string)[] {
    if (child instanceof XmlElement) return [elementOf(child, depth + 1)];
    return child instanceof XmlText ? [child.text] : [];
  }
}

function parsed(text: string, options: Parameters<typeof parseXml>[1]): ReturnType<typeof parseXml> {
  try {
    return parseXml(text, options);
  } catch (error) {
    if (error instanceof XmlError) throw new Stop(dataModule.notXmlAt(error.line, error.column, said(error)));
    // It calls itself for each element inside another.
    if (error instanceof RangeError) throw new Stop(dataModule.tooDeep(1, DEEPEST));
    throw error;
  }
}

/** What is wrong, without the place and the piece of the text that stand behind it. */
const said = ({ message }: XmlError): string => message.replace(/ \(line \d+, column \d+\)\n[^]*$/u, '');

/** The line in which a character stands, from 1. Asked in the order of the text it counts each line once. */
function lineFinder(text: string): (at: number) => number {
  let line = 1;
  let counted = 0;
  return (at) => {
    for (; counted < at; counted++) if (text[counted] === '\n') line += 1;
    return line;
  };
}

/**
 * Whether a document type declares entities that text or attributes could use. Those of pictures (NDATA) cannot be put
 * into text, and data modules of the field name their figures so.
 */
function declaresText(doctype: string): boolean {
  const declarations = doctype.match(/<!ENTITY\b[^>]*/gu) ?? [];
  return /<!ENTITY\s+%/u.test(doctype) || declarations.some((each) => !/\sNDATA\s+[\w.-]+\s*$/u.test(each));
}

/** The elements inside an element, of these names or of any. */
export const elementsIn = (element: Element | undefined, ...names: readonly string[]): readonly Element[] =>
  (element?.children ?? []).filter(
    (child): child is Element => typeof child !== 'string' && (names.length === 0 || names.includes(child.name)),
  );

/** The element at the end of a path of names, the first of each; undefined where there is none. */
export const elementAt = (element: Element | undefined, ...names: readonly string[]): Element | undefined =>
  names.reduce<Element | undefined>((found, name) => elementsIn(found, name)[0], element);

/** All elements of these names inside an element, however deep. */
export const allIn = (element: Element | undefined, ...names: readonly string[]): readonly Element[] =>
  elementsIn(element).flatMap((child) => [...(names.includes(child.name) ? [child] : []), ...allIn(child, ...names)]);

/** All words inside an element, with single spaces between them. */
export const plainText = (element: Element | undefined): string =>
  (element?.children ?? [])
    .map((child) => (typeof child === 'string' ? child : ` ${plainText(child)} `))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();
