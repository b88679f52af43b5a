/**
 * XML (1.0) as a tree, from a file nobody vouches for. Entities are neither fetched nor expanded: a document that declares
 * any that text could use is refused before they could matter.
 */
import { SaxesParser } from 'saxes';
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

interface Growing extends Element {
  readonly children: (Element | string)[];
}

function treeOf(text: string): Element {
  const parser = new SaxesParser({ position: true, xmlns: false as const });
  const open: Growing[] = [];
  let root: Element | null = null;
  let count = 0;
  parser.on('error', ({ message }) => {
    throw new Stop(brokenAt(message));
  });
  parser.on('doctype', (declaration) => {
    if (declaresText(declaration)) throw new Stop(dataModule.entities(parser.line));
  });
  // An element begins where its tag begins, which may be lines before the tag ends.
  let line = 1;
  parser.on('opentagstart', () => (line = parser.line));
  parser.on('opentag', ({ name, attributes }) => {
    count += 1;
    if (count > MOST_ELEMENTS) throw new Stop(dataModule.tooManyElements(line, MOST_ELEMENTS));
    if (open.length >= DEEPEST) throw new Stop(dataModule.tooDeep(line, DEEPEST));
    const element: Growing = { name, attributes, children: [], line };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  parser.on('text', (words) => open.at(-1)?.children.push(words));
  parser.on('cdata', (words) => open.at(-1)?.children.push(words));
  parser.write(text).close();
  if (root === null) throw new Stop(dataModule.noElement);
  return root;
}

/** The parser's "3:14: unmatched close tag." in our order. */
function brokenAt(message: string): string {
  const [, line, column, what] = /^(\d+):(\d+): (.*)$/su.exec(message) ?? [];
  return line === undefined || column === undefined || what === undefined
    ? dataModule.notXml(message)
    : dataModule.notXmlAt(line, column, what);
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
