/** One session as rows of the tables: the record is folded once more, as it was live, and looked at entry by entry. */
import type { Entry } from '../../record/entry.ts';
import { heldWeights } from '../../record/holds.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { begin, fold } from '../../session/fold.ts';
import type { SessionState } from '../../session/state.ts';
import { readingRows, type Asked } from './reading-rows.ts';
import { inNewtonMetres } from './measure.ts';
import { StepVisits, Stops } from './spans.ts';
import type { Row, Rows } from './tables.ts';

/** How a session is laid out. */
export interface LayoutOptions {
  /** Whether names of people, and what they dictated, go into the tables. */
  readonly names: boolean;
}

/** The rows of a session that is whole. */
export function rowsOf(record: SessionRecord, options: LayoutOptions): Omit<Rows, 'files'> {
  const { entries, procedure, people } = record;
  const visits = new StepVisits(record.id);
  const stops = new Stops(record.id);
  const asked = new QuestionCount();
  let state = begin(procedure, people);
  for (const entry of entries) {
    const before = state;
    state = fold(before, entry);
    visits.see(before, entry, state);
    stops.see(before, entry, state);
    asked.see(entry);
  }
  return {
    sessions: [sessionRow(record, asked, options)],
    steps: visits.rows(state),
    stops: stops.rows(),
    holds: holdRows(record),
    ...readingRows(record, state, asked, options),
    deviations: deviationRows(record.id, state, options),
    tools: toolRows(record),
  };
}

/** What was asked, and about which reading: one row of entries looked at in their order. */
class QuestionCount implements Asked {
  unclear = 0;
  refused = 0;
  readonly aboutReading = new Map<number, number>();
  readonly confirmedAt = new Map<number, Date>();
  #sinceReading = 0;

  see({ seq, at, body }: Entry): void {
    if (body.kind === 'refused') {
      if (body.reason.code === 'unclear') {
        this.unclear += 1;
        this.#sinceReading += 1;
      } else this.refused += 1;
    } else if (body.kind === 'reading captured') {
      this.aboutReading.set(seq, this.#sinceReading + ((body.doubts?.length ?? 0) > 0 ? 1 : 0));
      this.#sinceReading = 0;
    } else if (body.kind === 'timed out') {
      this.aboutReading.set(body.of, (this.aboutReading.get(body.of) ?? 0) + 1);
    } else if (body.kind === 'reading confirmed') this.confirmedAt.set(body.of, new Date(at.utc));
  }
}

function sessionRow(
  { id, entries, procedure, people }: SessionRecord,
  { unclear, refused }: QuestionCount,
  { names }: LayoutOptions,
): Row<'sessions'> {
  const first = entries[0];
  const opened = first?.body.kind === 'opened' ? first.body : null;
  const closed = entries.find(({ body }) => body.kind === 'closed');
  return {
    session: id,
    procedure: procedure.id,
    procedure_title: procedure.title,
    procedure_sha256: opened?.procedureHash ?? null,
    document: procedure.source.document,
    revision: procedure.source.revision,
    component: procedure.component.name,
    app: opened?.app ?? null,
    opened_at: first ? new Date(first.at.utc) : null,
    closed_at: closed ? new Date(closed.at.utc) : null,
    mechanic: names ? people.mechanic : null,
    second_person: names ? people.second : null,
    unclear,
    refused,
  };
}

const holdRows = ({ id, entries }: SessionRecord): Row<'holds'>[] =>
  heldWeights(entries).map(({ step, from, to, seconds, helps }) => ({
    session: id,
    step,
    began_at: new Date(from),
    ended_at: to === null ? null : new Date(to),
    seconds,
    helps,
  }));

const deviationRows = (session: string, { deviations }: SessionState, { names }: LayoutOptions): Row<'deviations'>[] =>
  deviations.map(({ seq, step, pass, fastener, what, reading, reason, status, leftOpen }) => ({
    session,
    entry: seq,
    step,
    pass,
    fastener,
    what,
    reading,
    reason: names ? reason : null,
    status,
    left_open: leftOpen,
  }));

const toolRows = ({ id, procedure }: SessionRecord): Row<'tools'>[] =>
  procedure.tools.map((tool) => ({
    session: id,
    tool: tool.id,
    name: tool.name,
    type: tool.type,
    class: tool.class ?? null,
    range_min_nm: inNewtonMetres(tool.range.min),
    range_max_nm: inNewtonMetres(tool.range.max),
    resolution_nm: inNewtonMetres(tool.resolution),
    maximum_error_percent: tool.maximumError ?? null,
    calibration_due: tool.calibrationDue ?? null,
  }));
