/** The procedure file: the one source of its types and of its published JSON Schema. */
import * as v from 'valibot';
import { USUAL_MARGIN_PERCENT } from '../lifting/index.ts';
import { expected } from '../words/expected.ts';
import {
  DateText,
  fields,
  Flag,
  Id,
  notNegative,
  NumberText,
  oneOf,
  Percent,
  positive,
  quantity,
  Text,
  TorqueRange,
  Whole,
} from './fields.ts';
import { Layout, Order } from './pattern-schema.ts';
import { StepSchema } from './step-schema.ts';

export const FORMAT = 'bothhands-procedure';
/** The version of the format that this program writes and reads. */
export const VERSION = 1;

const Component = fields({
  name: Text,
  partNumber: v.optional(Text),
  dryMass: positive('mass'),
  /** The upper end where the source gives the density as a range: heavier is the safe side. */
  fluid: v.optional(fields({ name: Text, density: positive('density') })),
  /** What runs out when it is drained. */
  drains: v.optional(notNegative('volume')),
  /** What stays inside after that, and is carried. */
  retains: v.optional(notNegative('volume')),
  portsUp: v.optional(
    v.array(Text, () => expected.list('ports')),
    [],
  ),
});

/** Under the component while it drains. */
const Container = fields({
  name: Text,
  capacity: positive('volume'),
  /** On top of what may drain. */
  marginPercent: v.optional(Percent(200), `${USUAL_MARGIN_PERCENT}`),
});

const LiftEnd = fields({
  /** From the middle between the ankles to the middle between the hands. */
  horizontal: positive('length'),
  /** From the floor to the hands. */
  vertical: notNegative('length'),
  /** To the side of straight ahead. */
  asymmetry: v.pipe(
    notNegative('angle'),
    v.check(
      ({ value }) => value <= 180,
      () => expected.angleUpTo180,
    ),
  ),
});

/** What the lifting equation wants to know (NIOSH 94-110). It may warn; it certifies nothing. */
const Lift = fields({
  /** The equation has a metric and a US form, which are not conversions of each other. */
  system: oneOf('metric', 'US'),
  persons: Whole(1, 3),
  origin: LiftEnd,
  destination: LiftEnd,
  perMinute: v.pipe(
    NumberText,
    v.check(
      (rate) => rate >= 0 && rate <= 60,
      () => expected.liftsPerMinute,
    ),
  ),
  duration: oneOf('short', 'moderate', 'long'),
  coupling: v.exactOptional(oneOf('good', 'fair', 'poor')),
  gloves: Flag,
  outside: v.exactOptional(
    v.array(oneOf('one hand', 'kneeling or seated', 'constrained space', 'slippery footing', 'holding'), () =>
      expected.list('circumstances'),
    ),
  ),
});

const Opening = fields({ id: Id, name: Text, closure: oneOf('cap', 'plug') });

const Tool = fields({
  id: Id,
  name: Text,
  /** ISO 6789-1: type I shows the torque, type II is set to it and signals. */
  type: oneOf('indicating', 'setting'),
  /** Lowest mark to full scale. */
  range: TorqueRange,
  /** One graduation, or the last digit of a display. */
  resolution: positive('torque'),
  /** Letter of its class within the type, ISO 6789-1. */
  class: v.optional(oneOf('A', 'B', 'C', 'D', 'E', 'F', 'G')),
  /** Maximum permissible error in per cent of the reading, as declared for this tool; else that of its class. */
  maximumError: v.optional(Percent(20)),
  /** Drive centre to the point of the grip where the hand pulls. An adapter needs it. */
  lever: v.optional(positive('length')),
  /** The last day on which its calibration holds. */
  calibrationDue: v.optional(DateText),
  /** It is accounted for by itself before the work ends. */
  counted: v.optional(Flag, false),
});

const Adapter = fields({
  id: Id,
  name: Text,
  /** Drive centre to fastener centre. */
  length: notNegative('length'),
  /** Between adapter and wrench: 0° straight ahead, 90° square, 180° back along the handle. */
  angle: v.pipe(
    quantity('angle'),
    v.check(
      ({ value }) => value >= 0 && value <= 180,
      () => expected.angleFrom0To180,
    ),
  ),
});

const Seal = fields({
  id: Id,
  name: Text,
  partNumber: v.optional(Text),
  /** What it is coated with before it is fitted. */
  fluid: v.optional(Text),
  reuse: oneOf('never', 'if it passes inspection'),
  /** Each is asked by itself, so each is said so that "affirm" means the seal is sound: "no cut". */
  criteria: v.optional(
    v.array(Text, () => expected.list('criteria')),
    [],
  ),
  /** The consumable that it is coated with. */
  coatedFrom: v.optional(Id),
  /** The consumable that a new one is. */
  replacedBy: v.optional(Id),
});

const Consumable = fields({
  id: Id,
  name: Text,
  expires: v.optional(Flag, false),
  /** How many there are; without limit, where it is absent. */
  quantity: v.optional(Whole(1, 1000)),
  /** What of it is accounted for before the work ends: its wrapper where it was opened, or the thing itself. */
  counted: v.optional(oneOf('wrapper', 'itself')),
});

const Pattern = fields({
  id: Id,
  name: Text,
  fastener: oneOf('stud', 'nut', 'bolt', 'screw'),
  thread: v.optional(Text),
  /** Thread condition as the source states it ("dry", "oiled with …"): a lubricated value is never derived. */
  threadCondition: v.optional(Text),
  /** The seal that this pattern clamps. */
  seal: v.optional(Id),
  layout: Layout,
  order: Order,
});

type Described = 'conditions' | 'openings' | 'tools' | 'adapters' | 'seals' | 'consumables' | 'patterns';

const MOST_DESCRIBED = 100;

/** A list of described things, at most a hundred. */
const described = <Item extends v.GenericSchema>(item: Item, of: Described) =>
  v.pipe(
    v.array(item, () => expected.list(of)),
    v.maxLength(MOST_DESCRIBED, () => expected.atMost(MOST_DESCRIBED, of)),
  );
const maybe = <Item extends v.GenericSchema>(item: Item, of: Described) => v.optional(described(item, of), []);

const MOST_STEPS = 500;

export const ProcedureSchema = fields({
  $schema: v.optional(v.string(() => expected.schemaAddress)),
  format: v.literal(FORMAT, () => expected.format(FORMAT)),
  version: v.literal(VERSION, () => expected.version(VERSION)),
  id: Id,
  title: Text,
  /** True for demonstrations: shown and spoken, so that nobody works to invented values. */
  invented: v.optional(Flag, false),
  source: fields({ document: Text, revision: Text, issued: v.optional(DateText) }),
  /** How many people the work needs. */
  persons: v.optional(Whole(1, 20)),
  component: Component,
  container: v.optional(Container),
  lift: v.optional(Lift),
  conditions: maybe(fields({ id: Id, question: Text }), 'conditions'),
  openings: maybe(Opening, 'openings'),
  tools: described(Tool, 'tools'),
  adapters: maybe(Adapter, 'adapters'),
  seals: maybe(Seal, 'seals'),
  consumables: maybe(Consumable, 'consumables'),
  patterns: described(Pattern, 'patterns'),
  /** Who signs before the record is closed, in this order. */
  signatures: v.optional(
    v.pipe(
      v.array(oneOf('mechanic', 'inspector'), () => expected.list('roles')),
      v.check(
        (roles) => new Set(roles).size === roles.length,
        () => expected.eachRoleOnce,
      ),
    ),
    [],
  ),
  steps: v.pipe(
    v.array(StepSchema, () => expected.list('steps')),
    v.minLength(1, () => expected.atLeast('one step')),
    v.maxLength(MOST_STEPS, () => expected.atMost(MOST_STEPS, 'steps')),
  ),
});

/** A procedure as it is written in a file. */
export type ProcedureFile = v.InferInput<typeof ProcedureSchema>;
/** A procedure read from a file: quantities in full precision, absent parts filled with their stated defaults. */
export type Procedure = v.InferOutput<typeof ProcedureSchema>;
