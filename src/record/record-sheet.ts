/**
 * The record sheet: what a person signs. It is worked out of the record alone, states what was done with reference to
 * the approved data, and approves nothing.
 */
import type { Volume } from '../units/index.ts';
import { sheetFacts } from '../words/sheet-facts.ts';
import { isOfWork, stateAfter, type SessionRecord } from './session-record.ts';
import { asWritten } from './sheet/as-written.ts';
import { holdsOf, signaturesOf, valuesOf } from './sheet/observed.ts';
import { interruptionsOf, peopleOf, type Interruption, type SheetPerson } from './sheet/people.ts';
import { pointsOnSheet, type SheetPoint } from './sheet/points.ts';
import { preparationOf, type SheetFact } from './sheet/preparation.ts';
import { conditionsOf, openingsOf, openPointsOf, stepsOf, type SheetOpening, type SheetStep } from './sheet/steps.ts';
import { soundAgreement } from './sound-agreement.ts';
import { sheetTime, type SheetTime } from './sheet/times.ts';
import { partsOf, toolsOf, type SheetTool } from './sheet/tools.ts';
import { torqueTables, type TorqueTable } from './sheet/torque.ts';

/** A name and what it is: a line of a list of facts. */
export type Fact = readonly [name: string, value: string];

export interface RecordSheet {
  readonly title: string;
  /** What was worked by: document, revision, where it came from. */
  readonly approvedData: readonly Fact[];
  readonly isInvented: boolean;
  /** Whether the record is whole; where it is not, nothing after the break is on the sheet. */
  readonly isIntact: boolean;
  readonly verification: string;
  readonly isClosed: boolean;
  readonly component: readonly Fact[];
  readonly parts: readonly string[];
  readonly people: readonly SheetPerson[];
  readonly opened: SheetTime | null;
  /** Of the last event of the work: that sounds were deleted, maybe weeks later, is none. */
  readonly ended: SheetTime | null;
  readonly interruptions: readonly Interruption[];
  /** Whether sound may be kept, by whose word; null where nobody was asked. */
  readonly sound: string | null;
  /** What was found and said before the first step; empty where the record has nothing of it. */
  readonly preparation: readonly SheetFact[];
  readonly conditions: readonly string[];
  readonly tools: readonly SheetTool[];
  readonly steps: readonly SheetStep[];
  readonly tables: readonly TorqueTable[];
  /** Weights that were held, with how long. */
  readonly holds: readonly string[];
  /** Values read off something else than a torque tool. */
  readonly values: readonly string[];
  /** Who signed; empty where the procedure asks nobody to. */
  readonly signatures: readonly string[];
  /** What others have to decide about. */
  readonly openPoints: readonly string[];
  readonly openings: readonly SheetOpening[];
  /** Openings, caps, seals, criteria, what was counted, and values: as they were answered. */
  readonly points: readonly SheetPoint[];
  readonly hashes: readonly Fact[];
  readonly made: SheetTime;
}

/** What the sheet says that is not in the entries themselves. */
export interface SheetOptions {
  /** IANA name of the zone whose time stands beside UTC. The record keeps UTC alone: it is that of the reader's device. */
  readonly timeZone: string;
  /** When the sheet is made (RFC 3339). */
  readonly made: string;
  /** Merkle root over the entries. */
  readonly root: string;
  /** Thumbprint of the key that sealed the record; null where it is not sealed. */
  readonly thumbprint: string | null;
}

/** The sheet of a record, as far as the record can be trusted. */
export function recordSheet(record: SessionRecord, { timeZone, made, root, thumbprint }: SheetOptions): RecordSheet {
  const { entries, procedure, verification } = record;
  const end = stateAfter(record, entries.length);
  const [first, last] = [entries[0], entries.findLast(isOfWork)];
  const steps = stepsOf(record, end, timeZone);
  return {
    title: procedure.title,
    approvedData: [
      [sheetFacts.document, procedure.source.document],
      [sheetFacts.revision, procedure.source.revision],
      [sheetFacts.issued, procedure.source.issued ?? sheetFacts.notStated],
      [sheetFacts.procedureFile, procedure.id],
    ],
    isInvented: procedure.invented,
    isIntact: verification.kind === 'intact',
    verification:
      verification.kind === 'intact'
        ? sheetFacts.intact(entries.length)
        : sheetFacts.broken(verification.at, verification.why, record.found, entries.length),
    isClosed: end.phase === 'closed',
    component: componentOf(record),
    parts: partsOf(procedure, end),
    people: peopleOf(record, timeZone),
    opened: first ? sheetTime(first.at.utc, timeZone) : null,
    ended: last ? sheetTime(last.at.utc, timeZone) : null,
    interruptions: interruptionsOf(record, timeZone),
    sound: soundAgreement(record),
    preparation: preparationOf(record, timeZone),
    conditions: conditionsOf(end),
    tools: toolsOf(end),
    steps,
    tables: torqueTables(entries, end, timeZone),
    holds: holdsOf(record, timeZone),
    values: valuesOf(end, timeZone),
    signatures: signaturesOf(end, timeZone),
    openPoints: openPointsOf(end, steps),
    openings: openingsOf(procedure, steps),
    points: pointsOnSheet(record, end, timeZone),
    hashes: hashesOf(record, root, thumbprint),
    made: sheetTime(made, timeZone),
  };
}

function componentOf({ procedure: { component } }: SessionRecord): readonly Fact[] {
  const { name, partNumber, dryMass, fluid, drains, retains } = component;
  const ofFluid = (volume: Volume): string => sheetFacts.ofFluid(asWritten(volume), fluid?.name ?? null);
  return [
    [sheetFacts.component, name],
    [sheetFacts.partNumber, partNumber ?? sheetFacts.notStated],
    [sheetFacts.dryMass, asWritten(dryMass)],
    ...(drains ? [[sheetFacts.drained, ofFluid(drains)] as const] : []),
    ...(retains ? [[sheetFacts.stayedInside, ofFluid(retains)] as const] : []),
  ];
}

function hashesOf({ id, entries }: SessionRecord, root: string, thumbprint: string | null): readonly Fact[] {
  const opening = entries[0]?.body;
  return [
    [sheetFacts.session, id],
    [sheetFacts.procedureHash, opening?.kind === 'opened' ? opening.procedureHash : sheetFacts.notKnown],
    [sheetFacts.head, entries.at(-1)?.hash ?? sheetFacts.noHead],
    [sheetFacts.root, root],
    [sheetFacts.key, thumbprint ?? sheetFacts.notSealed],
    [sheetFacts.writtenBy, opening?.kind === 'opened' ? opening.app : sheetFacts.notKnown],
  ];
}
