/**
 * A grammar as a machine that walks words and figures together. Both directions walk the same states, and a walk costs
 * a few map look-ups per word, so that all numbers of a tool's range can be checked in a test.
 */
import type { Form } from './form.ts';

export interface Machine<Tag> {
  readonly start: State<Tag>;
}

interface State<Tag> {
  /** Steps by word. */
  readonly steps: Map<string, Step<Tag>[]>;
  /** The same steps in the order of the grammar. */
  readonly inOrder: Step<Tag>[];
  readonly ends: { readonly figures: string; readonly tag: Tag }[];
}

interface Step<Tag> {
  readonly word: string;
  readonly offered: boolean;
  readonly figures: string;
  readonly to: State<Tag>;
}

/** A state while it is being built: edges without a word are still there. */
interface Node<Tag> {
  readonly edges: {
    readonly word?: string;
    readonly offered: boolean;
    readonly figures: string;
    readonly to: Node<Tag>;
  }[];
  readonly end?: { readonly tag: Tag };
}

export function buildMachine<Tag>(alternatives: readonly { readonly tag: Tag; readonly form: Form }[]): Machine<Tag> {
  const entries = alternatives.map(({ tag, form }) => nodeFor(form, { edges: [], end: { tag } }));
  return { start: settle({ edges: entries.map((to) => ({ offered: true, figures: '', to })) }) };
}

function nodeFor<Tag>(form: Form, next: Node<Tag>): Node<Tag> {
  switch (form.kind) {
    case 'word':
      return { edges: [{ word: form.word, offered: form.offered, figures: form.figures, to: next }] };
    case 'unsaid':
      return { edges: [{ offered: true, figures: form.figures, to: next }] };
    case 'sequence':
      return form.parts.reduceRight((rest, part) => nodeFor(part, rest), next);
    case 'either':
      return { edges: form.parts.map((part) => ({ offered: true, figures: '', to: nodeFor(part, next) })) };
    case 'many': {
      const again: Node<Tag> = { edges: [{ offered: true, figures: '', to: next }] };
      const entry = nodeFor(form.part, again);
      again.edges.push({ offered: true, figures: '', to: entry });
      return entry;
    }
  }
}

/** Turns a node into a state by following every edge that needs no word. */
function settle<Tag>(start: Node<Tag>): State<Tag> {
  const settled = new Map<Node<Tag>, State<Tag>>();
  const stateOf = (node: Node<Tag>): State<Tag> => {
    const known = settled.get(node);
    if (known) return known;
    const state: State<Tag> = { steps: new Map(), inOrder: [], ends: [] };
    settled.set(node, state);
    follow(node, '', state);
    return state;
  };
  const follow = (node: Node<Tag>, figures: string, into: State<Tag>): void => {
    if (node.end) into.ends.push({ figures, tag: node.end.tag });
    for (const edge of node.edges) {
      if (edge.word === undefined) follow(edge.to, figures + edge.figures, into);
      else
        addStep(into, {
          word: edge.word,
          offered: edge.offered,
          figures: figures + edge.figures,
          to: stateOf(edge.to),
        });
    }
  };
  return stateOf(start);
}

function addStep<Tag>(state: State<Tag>, step: Step<Tag>): void {
  state.inOrder.push(step);
  const sameWord = state.steps.get(step.word);
  if (sameWord) sameWord.push(step);
  else state.steps.set(step.word, [step]);
}

/** Calls `found` for all figures that exactly these words stand for, with the tag of each alternative. */
export function eachFigures<Tag>(
  machine: Machine<Tag>,
  words: readonly string[],
  found: (figures: string, tag: Tag) => void,
): void {
  let walks = [{ figures: '', state: machine.start }];
  for (const word of words) {
    const further: typeof walks = [];
    for (const { figures, state } of walks) {
      for (const step of state.steps.get(word) ?? []) further.push({ figures: figures + step.figures, state: step.to });
    }
    if (further.length === 0) return;
    walks = further;
  }
  for (const { figures, state } of walks) {
    for (const end of state.ends) found(figures + end.figures, end.tag);
  }
}

/**
 * Calls `found` for every word sequence that stands for exactly these figures, in the order of the grammar, made of the
 * offered words that `mayUse` allows, until `found` returns 'enough'.
 */
export function eachWords<Tag>(
  machine: Machine<Tag>,
  figures: string,
  mayUse: (word: string) => boolean,
  found: (words: readonly string[], tag: Tag) => 'enough' | 'more',
): void {
  const said: string[] = [];
  const walk = (state: State<Tag>, from: number): 'enough' | 'more' => {
    for (const end of state.ends) {
      const ends = from + end.figures.length === figures.length && figures.endsWith(end.figures);
      if (ends && found([...said], end.tag) === 'enough') return 'enough';
    }
    for (const step of state.inOrder) {
      if (!step.offered || !figures.startsWith(step.figures, from) || !mayUse(step.word)) continue;
      said.push(step.word);
      if (walk(step.to, from + step.figures.length) === 'enough') return 'enough';
      said.pop();
    }
    return 'more';
  };
  walk(machine.start, 0);
}
