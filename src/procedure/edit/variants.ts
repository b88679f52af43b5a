/** Things of which there are several kinds: steps, layouts, orders and passes. What two kinds share stays on a change. */
import { Layout, OrderVariants, Pass } from '../pattern-schema.ts';
import { StepSchema } from '../step-schema.ts';
import type { Step } from '../steps.ts';
import { stepForm } from '../../words/step-form.ts';
import { type Draft, isFields, type Json, type JsonFields, listAt, wordsAt } from './draft.ts';

export type StepKind = Step['kind'];

/** The fields of a new thing of a kind. Values are never made up: those are left for the person to fill in. */
interface Skeletons {
  readonly [kind: string]: JsonFields;
}

const AROUND = {
  ring: { count: 8 },
  'double ring': { outer: 8, inner: 8 },
  rectangle: { columns: 4, rows: 3, fill: 'edge' },
  free: { places: [] },
} satisfies Skeletons;
const ORDERS = {
  crosswise: {},
  spiral: {},
  circular: {},
  explicit: {},
  grouped: { size: 2 },
} satisfies Skeletons;
const PASSES = {
  percent: { percent: '100' },
  torque: {},
  snug: {},
  angle: {},
  'circular check': {},
} satisfies Skeletons;

const kindsOf = <Kind extends string>(all: Readonly<Record<Kind, JsonFields>>): readonly Kind[] =>
  Object.keys(all) as Kind[];
const skeletonOf = (all: Skeletons, kind: string): JsonFields | undefined => all[kind];

/** The kinds that the page offers. A file may hold others; they stay as they are. */
export const SHAPES = kindsOf(AROUND);
export const ORDER_KINDS = kindsOf(ORDERS);
export const PASS_KINDS = kindsOf(PASSES);
export const STEP_KINDS = [
  'do',
  'check',
  'open',
  'close',
  'hold',
  'loosen',
  'tighten',
  'measure',
  'witness',
  'note',
] as const satisfies readonly StepKind[];

export const layoutOfShape = (shape: string, before?: Json): JsonFields =>
  ofKind('shape', shape, skeletonOf(AROUND, shape), before, entriesOf(Layout.options, 'shape', shape));
export const orderOfKind = (kind: string, before?: Json): JsonFields =>
  ofKind('kind', kind, skeletonOf(ORDERS, kind), before, entriesOf(OrderVariants.options, 'kind', kind));
export const passOfKind = (kind: string, before?: Json): JsonFields =>
  ofKind('kind', kind, skeletonOf(PASSES, kind), before, entriesOf(Pass.options, 'kind', kind));

/** A step as another kind of step: its words, hazards and whatever else both kinds have stay. */
export const stepOfKind = (kind: StepKind, before: Json | undefined, draft: Draft): JsonFields =>
  ofKind('kind', kind, stepSkeleton(kind, draft), before, entriesOf(StepSchema.options, 'kind', kind));

function stepSkeleton(kind: StepKind, draft: Draft): JsonFields {
  const first = (list: string, field: string): JsonFields => {
    const id = wordsAt(listAt(draft, [list])[0], ['id']);
    return id === '' ? {} : { [field]: id };
  };
  switch (kind) {
    case 'tighten':
      return { ...first('patterns', 'pattern'), ...first('tools', 'tool'), passes: [passOfKind('percent')] };
    case 'loosen':
      return first('patterns', 'pattern');
    case 'open':
    case 'close':
      return first('openings', 'opening');
    case 'check':
      return {
        outcomes: [
          { id: 'affirm', text: stepForm.outcome.affirm, then: 'go on' },
          { id: 'negative', text: stepForm.outcome.negative, then: 'stay' },
        ],
      };
    case 'do':
    case 'hold':
    case 'measure':
    case 'witness':
    case 'note':
      return {};
  }
}

interface Option {
  readonly entries: Readonly<Record<string, object>>;
}

/** The names of the fields that one kind has, as the schema says. */
function entriesOf(options: readonly Option[], key: string, kind: string): readonly string[] {
  const option = options.find(({ entries }) => literalOf(entries[key]) === kind);
  return Object.keys(option?.entries ?? {});
}

const literalOf = (schema: object | undefined): unknown =>
  schema !== undefined && 'literal' in schema ? schema.literal : undefined;

/** A thing as another kind: what both kinds have stays in its place, what the new one needs besides comes after it. */
function ofKind(
  key: string,
  kind: string,
  skeleton: JsonFields | undefined,
  before: Json | undefined,
  names: readonly string[],
): JsonFields {
  const old = Object.entries(isFields(before) ? before : {}).filter(([name]) => names.includes(name));
  const kept = Object.fromEntries(old.map(([name, value]) => [name, name === key ? kind : value]));
  const started = Object.hasOwn(kept, key) ? kept : { [key]: kind, ...kept };
  return { ...started, ...skeleton, ...started };
}
