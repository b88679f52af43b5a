/** Figures against what was said in the sessions, worked out without the record and without SQL; and against NIST. */
import { copyFile, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Answer } from '../../../src/cli/fleet/database.ts';
import { DEMO_SESSION_FILE } from '../../../src/cli/demo-session.ts';
import { TABLES } from '../../../src/cli/fleet/tables.ts';
import { run, type Run } from '../verify-run.ts';
import { BREAK, calls, played, STOOD_BY, writeFleet, type Call } from './made-fleet.ts';
import { sealedFile } from './made-sessions.ts';

let folder: string;
let out: string;
let ran: Run;
let said: readonly Record<string, unknown>[];
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'fleet-test-'));
  out = path.join(folder, 'out');
  await writeFleet(folder);
  await faults();
  ran = await run('fleet', ['--json', '--out', out, folder]);
  said = ran.out.map((line) => JSON.parse(line) as Record<string, unknown>);
});
afterAll(() => rm(folder, { recursive: true }));

/** What else may lie in such a folder. */
async function faults(): Promise<void> {
  const whole = await readFile(path.join(folder, 'ring/ring-0.bhsession'));
  await writeFile(path.join(folder, 'cut.bhsession'), whole.subarray(0, 4000));
  await writeFile(path.join(folder, 'letter.bhsession'), 'Dear all');
  await writeFile(path.join(folder, 'letter.txt'), 'Dear all');
  await symlink(folder, path.join(folder, 'round'));
  const entries = played[1]?.entries ?? [];
  await writeFile(path.join(folder, 'under-way.bhsession'), await sealedFile(entries.slice(0, 6)));
  await copyFile(DEMO_SESSION_FILE, path.join(folder, 'demo.bhsession'));
}

const figure = (id: string): Answer => said.find((each) => each.kind === 'figure' && each.id === id)?.rows as Answer;
const leftOut = () => said.filter(({ kind }) => kind === 'left out');

const LBF_IN = 0.1129848290276167; // N·m, exact: 0.0254 × 0.45359237 × 9.80665
const SETTING = { 'small-cover': 12, 'inch-cover': 120 } as const;
const LIMITS = { 'small-cover': [11, 13], 'inch-cover': [108, 132] } as const;

const deviation = ({ procedure }: Call, value: number): number => (value / SETTING[procedure] - 1) * 100;
const firstValue = (call: Call): number =>
  deviation(call, call.said.find(({ affirmed }) => affirmed)?.value ?? Number.NaN);
const isRight = ({ procedure, said: [first, ...more] }: Call): boolean =>
  first !== undefined &&
  more.length === 0 &&
  first.affirmed &&
  first.value >= LIMITS[procedure][0] &&
  first.value <= LIMITS[procedure][1];

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;
const deviationOf = (values: readonly number[]): number =>
  Math.sqrt(sum(values.map((each) => (each - mean(values)) ** 2)) / (values.length - 1));
function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  const place = share * (sorted.length - 1);
  const [low, high] = [sorted[Math.floor(place)] ?? 0, sorted[Math.ceil(place)] ?? 0];
  return low + (high - low) * (place - Math.floor(place));
}

describe('figures over a fleet, against what was said', () => {
  it('spread for each fastener', () => {
    const rows = figure('spread').filter(({ procedure }) => procedure !== 'ropeway-oil-cooler');
    expect(rows).toHaveLength(6);
    for (const row of rows) {
      const values = calls
        .filter((call) => call.procedure === row.procedure && call.pass === row.pass && call.fastener === row.fastener)
        .map(firstValue);
      expect(row.n).toBe(values.length);
      expect(row.mean).toBeCloseTo(mean(values), 9);
      expect(row.s).toBeCloseTo(deviationOf(values), 9);
      expect(row.p05).toBeCloseTo(percentile(values, 0.05), 9);
      expect(row.p95).toBeCloseTo(percentile(values, 0.95), 9);
    }
  });

  it.each(['small-cover', 'inch-cover'])('first time right and questions: %s', (procedure) => {
    const [row, ...more] = figure('first-time-right').filter((each) => each.procedure === procedure);
    const own = calls.filter((call) => call.procedure === procedure);
    const readings = own.flatMap((call) => call.said).length;
    expect(more).toEqual([]);
    expect(row).toMatchObject({ called: own.length, readings });
    expect(row?.right_percent).toBeCloseTo((100 * own.filter(isRight).length) / own.length, 9);
    expect(row?.questions).toBeCloseTo(sum(own.map(({ questions }) => questions)) / readings, 9);
  });

  it('trend of a tool: the line through the means of the sessions', () => {
    const row = figure('tools').find(({ procedure }) => procedure === 'small-cover');
    const own = calls.filter(({ procedure }) => procedure === 'small-cover');
    const days = [...new Set(own.map(({ day }) => day))];
    const points = days.map((day) => [day, mean(own.filter((call) => call.day === day).map(firstValue))] as const);
    const [midX, midY] = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
    const sxx = sum(points.map(([x]) => (x - midX) ** 2));
    const slope = sum(points.map(([x, y]) => (x - midX) * (y - midY))) / sxx;
    const rest = sum(points.map(([x, y]) => (y - midY - slope * (x - midX)) ** 2));
    expect(row?.points).toBe(12);
    // Sessions begin at the same time of day; their first readings a minute earlier or later.
    expect(row?.slope_30).toBeCloseTo(slope * 30, 2);
    expect(row?.error_30).toBeCloseTo(Math.sqrt(rest / 10 / sxx) * 30, 2);
    expect(row?.drifts).toBe(true);
    expect(figure('tools').find(({ procedure }) => procedure === 'inch-cover')).toMatchObject({
      points: 3,
      drifts: false,
    });
  });

  it('stops and holds', () => {
    const own = figure('stops');
    expect(own.find(({ kind }) => kind === 'break')).toMatchObject({ sessions: 1, n: 1, longest: BREAK });
    expect(own.find(({ kind }) => kind === 'stand by')).toMatchObject({ n: 2, longest: STOOD_BY });
    expect(figure('holds')).toEqual([
      expect.objectContaining({ procedure: 'inch-cover', step: 'rest', n: 3, median: 20 }),
      // The demonstration holds its cooler twice.
      expect.objectContaining({ procedure: 'ropeway-oil-cooler', step: 'carry-on', n: 1, median: 18 }),
      expect.objectContaining({ procedure: 'ropeway-oil-cooler', step: 'lift-off', n: 1, median: 18 }),
    ]);
  });
});

describe('files of a fleet', () => {
  it('lists those that are not intact or not readable, copies and links, leaves them out, and ends with 2', () => {
    expect(ran).toMatchObject({ code: 2, err: '' });
    expect(leftOut().map(({ file, verdict }) => [file, verdict])).toEqual([
      ['cut.bhsession', 'not intact'],
      ['letter.bhsession', 'not readable'],
      ['round', 'not readable'],
      ['under-way.bhsession', 'copy'],
    ]);
    expect(said.find(({ kind }) => kind === 'files')).toEqual({ kind: 'files', found: 20, counted: 16 });
  });

  it('writes tables that another program reads, with values in N·m by the exact factor, and without names', async () => {
    const connection = await (await DuckDBInstance.create()).connect();
    const ask = async (sql: string) => (await connection.runAndReadAll(sql)).getRowObjectsJS();
    const readings = path.join(out, 'readings.parquet');
    const inches = await ask(`SELECT * FROM '${readings}' WHERE session = 'inch-0' ORDER BY fastener`);
    expect(Object.keys(inches[0] ?? {})).toEqual(Object.keys(TABLES.readings));
    expect(inches.map(({ value, unit }) => [value, unit])).toEqual([
      ['119', 'lbf·in'],
      ['120', 'lbf·in'],
      ['121', 'lbf·in'],
    ]);
    expect(inches[0]).toMatchObject({
      person: null,
      pass_name: '10 lbf·ft',
      kind: 'torque',
      stands: true,
      label: 'bolt',
    });
    expect(inches[0]?.value_nm).toBeCloseTo(119 * LBF_IN, 12);
    expect(inches[0]?.target_nm).toBeCloseTo(120 * LBF_IN, 12);
    const [{ n } = {}] = await ask(`SELECT count(*)::INTEGER AS n FROM '${readings}' WHERE session LIKE 'ring%'`);
    expect(n).toBe(calls.filter(({ procedure }) => procedure === 'small-cover').flatMap((call) => call.said).length);
    connection.closeSync();
  });

  it('says beside them what every column means', async () => {
    const text = await readFile(path.join(out, 'README.txt'), 'utf8');
    for (const [table, columns] of Object.entries(TABLES)) {
      const from = text.indexOf(`\n${table}.parquet\n`);
      const own = text.slice(from, text.indexOf('\n\n', from));
      expect(from).toBeGreaterThan(0);
      for (const [column, [type]] of Object.entries(columns))
        expect(own).toMatch(new RegExp(`  ${column} +${type} +\\S`));
    }
  });

  it('writes one page that fetches nothing, each plot with words for whoever cannot see it', async () => {
    const page = await readFile(path.join(out, 'fleet.html'), 'utf8');
    expect(page).toContain(`default-src 'none'`);
    expect(page).not.toMatch(/(?:src|href)=|url\(|<script|NaN|undefined/);
    expect(page.match(/<svg /g)?.length).toBeGreaterThan(4);
    expect(page.match(/<svg /g)?.length).toBe(page.match(/<svg [^>]*role="img" aria-label="[^"]{20,}"/g)?.length);
  });
});
