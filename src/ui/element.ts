/**
 * What elements in TSX become in the build (src/cli/element-calls.ts): a call for each. Solid's own compiler gives each a
 * template and a walk through it instead, which is quicker for thousands of rows and half as much again to fetch. How values
 * follow their signals, and the parts of a screen, stay Solid's.
 */
import { createMemo, createRenderEffect, type JSX } from 'solid-js';
import { addEventListener, classList, DelegatedEvents, delegateEvents, insert, setAttribute } from 'solid-js/web';

/** Attributes by their names in TSX; a function where any of them follows a signal. */
type Attributes = Readonly<Record<string, unknown>>;
type Child = JSX.Element | (() => JSX.Element);

/** What an element has as a property: its attribute is only how it begins. */
const PROPERTIES: ReadonlySet<string> = new Set([
  'value',
  'checked',
  'selected',
  'disabled',
  'multiple',
  'hidden',
  'open',
]);

/** An element of HTML with its attributes and children. */
export const element = (name: string, attributes?: Attributes | (() => Attributes) | null, ...children: Child[]) =>
  filled(document.createElement(name), attributes, children);

/** The same of SVG. */
export const drawing = (name: string, attributes?: Attributes | (() => Attributes) | null, ...children: Child[]) =>
  filled(document.createElementNS('http://www.w3.org/2000/svg', name), attributes, children);

/** One or the other, made anew only when the answer changes, and not whenever what it depends on does. */
export function either(test: () => unknown, one: () => Child, other?: () => Child): () => Child {
  const is = createMemo(() => Boolean(test()));
  return () => (is() ? one() : other?.());
}

/** Children come first: the value of a choice needs its options. */
function filled(
  node: Element,
  attributes: Attributes | (() => Attributes) | null | undefined,
  children: readonly Child[],
): Element {
  // With a place given, each child keeps its own among its neighbours; alone it may be all that there is.
  for (const child of children) insert(node, child, children.length > 1 ? null : undefined);
  if (typeof attributes !== 'function') return (setAll(node, attributes ?? {}, {}), node);
  createRenderEffect((before: Attributes) => setAll(node, attributes(), before), {});
  return node;
}

function setAll(node: Element, attributes: Attributes, before: Attributes): Attributes {
  const now: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(attributes)) now[name] = setOne(node, name, value, before[name]);
  return now;
}

/** Sets an attribute, and gives what is to be handed in when it is set again. */
function setOne(node: Element, name: string, value: unknown, before: unknown): unknown {
  if (name === 'classList') return classList(node, value as Record<string, boolean>, before as Record<string, boolean>);
  if (value === before) return before;
  if (name === 'ref') {
    if (before === undefined) (value as (node: Element) => void)(node);
  } else if (name.startsWith('on')) {
    const event = name.slice(2).toLowerCase();
    const isDelegated = DelegatedEvents.has(event);
    if (isDelegated) delegateEvents([event]);
    else if (before) node.removeEventListener(event, before as EventListener);
    if (value || isDelegated) addEventListener(node, event, value as () => void, isDelegated);
  } else if (PROPERTIES.has(name)) Object.assign(node, { [name]: value });
  else setAttribute(node, name, value as string);
  return value;
}
