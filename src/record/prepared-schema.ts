/** The door for what was found and said before the first step, as it stands in an entry. */
import * as v from 'valibot';
import { HANDLINGS } from '../lifting/index.ts';
import type { PreparedFact } from '../session/preparation/fact.ts';
import { Count, Day, exactly, Time, written } from './exactly.ts';

const HandlingSchema = v.picklist(HANDLINGS);

export const PreparedFactSchema = exactly<PreparedFact>()(
  v.variant('of', [
    v.strictObject({
      of: v.literal('approved data'),
      document: v.string(),
      revision: v.string(),
      issued: v.nullable(Day),
    }),
    v.strictObject({ of: v.literal('helper'), name: v.string() }),
    v.strictObject({
      of: v.literal('tool'),
      tool: v.string(),
      calibrationDue: v.nullable(Day),
      from: v.picklist(['label', 'procedure file']),
    }),
    v.strictObject({
      of: v.literal('adapter'),
      adapter: v.string(),
      measured: written('length'),
      filed: written('length'),
    }),
    v.strictObject({ of: v.literal('consumable'), consumable: v.string(), expires: Day }),
    v.strictObject({
      of: v.literal('container'),
      capacity: written('volume'),
      needed: written('volume'),
      from: v.picklist(['here', 'procedure file']),
    }),
    v.strictObject({
      of: v.literal('lift'),
      handling: HandlingSchema,
      load: written('mass'),
      limit: written('mass'),
      least: HandlingSchema,
    }),
    v.strictObject({ of: v.literal('hazard'), step: v.string(), index: Count }),
    v.strictObject({
      of: v.literal('microphone'),
      person: v.string(),
      fitness: v.picklist(['fit', 'fit with care', 'do not start by voice']),
      at: Time,
    }),
    v.strictObject({ of: v.literal('warning'), sentence: v.string() }),
  ]),
);
