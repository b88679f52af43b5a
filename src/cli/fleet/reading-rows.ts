/** The readings of a session as rows: all that were ever captured, with what became of each. */
import type { SessionRecord } from '../../record/session-record.ts';
import { planOf } from '../../session/calls.ts';
import { callKey, standingIn, type Reading } from '../../session/reading.ts';
import type { SessionState } from '../../session/state.ts';
import { deviationPercent, writtenInNewtonMetres } from './measure.ts';
import type { LayoutOptions } from './rows.ts';
import type { Row } from './tables.ts';

/** What the entries say about readings beside the readings themselves, by the entry that each was captured in. */
export interface Asked {
  /** Questions beyond the usual read-back. */
  readonly aboutReading: ReadonlyMap<number, number>;
  readonly confirmedAt: ReadonlyMap<number, Date>;
}

/** The readings of the state at the end of a record, and the doubts about them. */
export function readingRows(
  { id, procedure }: SessionRecord,
  { readings }: SessionState,
  asked: Asked,
  { names }: LayoutOptions,
): { readonly readings: readonly Row<'readings'>[]; readonly doubts: readonly Row<'doubts'>[] } {
  const standing = standingIn(readings);
  const attempts = new Map<string, number>();
  const valued = new Set<string>();
  const steps = new Map(procedure.steps.map((step) => [step.id, planOf(procedure, step)]));
  const rows = readings.map((reading): Row<'readings'> => {
    const { seq, step, pass, fastener, basis, witnessed } = reading;
    const key = callKey(step, pass, fastener);
    const attempt = (attempts.get(key) ?? 0) + 1;
    attempts.set(key, attempt);
    const isFirstValue = isValue(reading) && !valued.has(key);
    if (isFirstValue) valued.add(key);
    const plan = steps.get(step);
    const rounds = plan?.running ? [plan.running, ...plan.passes] : plan?.passes;
    return {
      session: id,
      entry: seq,
      captured_at: new Date(reading.at.utc),
      confirmed_at: asked.confirmedAt.get(seq) ?? null,
      person: names ? reading.person : null,
      step,
      pass,
      pass_name: rounds?.find(({ index }) => index === pass)?.name ?? null,
      fastener,
      label: plan?.calls[0]?.label ?? null,
      tool: basis.tool,
      kind: basis.of,
      evidence: reading.evidence,
      value: reading.reading.value,
      unit: reading.reading.unit,
      value_nm: writtenInNewtonMetres(reading.reading),
      ...judgedBy(reading),
      verdict: reading.verdict,
      status: reading.status,
      corrects: reading.corrects,
      attempt,
      stands: standing.get(key) === reading,
      first_value: isFirstValue,
      questions: asked.aboutReading.get(seq) ?? 0,
      witness: names ? (witnessed?.person ?? null) : null,
      witness_nm: witnessed ? writtenInNewtonMetres(witnessed.reading) : null,
    };
  });
  return { readings: rows, doubts: readings.flatMap((reading) => doubtRows(id, reading)) };
}

/** Whether the tool did show this, as far as the record can tell: also where its pass was begun again later. */
const isValue = ({ status }: Reading): boolean => status === 'confirmed' || status === 'set aside';

type Judged = Pick<
  Row<'readings'>,
  'target_nm' | 'setting_nm' | 'window_min_nm' | 'window_max_nm' | 'deviation_percent'
>;

function judgedBy({ basis, reading }: Reading): Judged {
  if (basis.of === 'running torque')
    return {
      target_nm: null,
      setting_nm: null,
      window_min_nm: basis.minimum && writtenInNewtonMetres(basis.minimum),
      window_max_nm: null,
      deviation_percent: null,
    };
  return {
    target_nm: writtenInNewtonMetres(basis.target),
    setting_nm: writtenInNewtonMetres(basis.setting),
    window_min_nm: writtenInNewtonMetres(basis.window.min),
    window_max_nm: writtenInNewtonMetres(basis.window.max),
    deviation_percent: deviationPercent(reading, basis.setting),
  };
}

const doubtRows = (session: string, { seq, doubts = [] }: Reading): Row<'doubts'>[] =>
  doubts.map((doubt, i) => ({ session, entry: seq, doubt, rank: i + 1 }));
