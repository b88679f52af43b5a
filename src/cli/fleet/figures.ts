/** What is asked of a fleet of sessions, in SQL over its tables. */
import type { Answer, FleetDatabase } from './database.ts';

export interface FigureColumn {
  readonly name: string;
  /** As a person reads it, with its unit. */
  readonly head: string;
  /** Places after the point. */
  readonly digits?: number;
}

export interface Figure {
  readonly id: string;
  readonly title: string;
  /** What is counted, and what it cannot tell. */
  readonly about: string;
  readonly columns: readonly FigureColumn[];
  readonly sql: string;
}

export interface Answered extends Figure {
  readonly rows: Answer;
}

/** Count, mean, standard deviation of a sample, and the 5th and 95th percentile (between two values, by their distance). */
export const spreadOf = (x: string): string =>
  `count(${x})::INTEGER AS n, avg(${x}) AS mean, stddev_samp(${x}) AS s,
   quantile_cont(${x}, 0.05) AS p05, quantile_cont(${x}, 0.95) AS p95`;

/** The straight line of least squares: count, slope, its standard error (from three points on), value at x = 0. */
export function lineThrough(y: string, x: string): string {
  const of = (what: string): string => `regr_${what}(${y}, ${x})`;
  const residual = `greatest(0, ${of('syy')} - ${of('sxy')} ** 2 / ${of('sxx')})`;
  return `${of('count')}::INTEGER AS points,
   CASE WHEN ${of('sxx')} > 0 THEN ${of('slope')} END AS slope,
   CASE WHEN ${of('sxx')} > 0 THEN ${of('intercept')} END AS intercept,
   CASE WHEN ${of('sxx')} > 0 AND ${of('count')} > 2
     THEN sqrt(${residual} / (${of('count')} - 2) / ${of('sxx')}) END AS slope_error`;
}

/** The first value of each fastener in each pass, read off a scale. A click only ever shows what was set. */
const FIRST_VALUES = `readings JOIN sessions USING (session)
  WHERE first_value AND readings.kind = 'torque' AND evidence = 'read' AND deviation_percent IS NOT NULL`;

const FIRST_VALUES_ABOUT =
  'Of the values that were read off a scale, the first that was confirmed of each fastener in each pass, inside its window or not.';

/** When a trend is called a drift: all three. */
export const DRIFT = { sessions: 10, errors: 3, percent: 1 } as const;

const group = { name: 'procedure', head: 'procedure' } as const;
const step = { name: 'step', head: 'step' } as const;
const pass = { name: 'pass', head: 'pass' } as const;
const n = { name: 'n', head: 'n' } as const;

export const FIGURES: readonly Figure[] = [
  {
    id: 'sessions',
    title: 'Sessions',
    about: 'What is in the figures below.',
    columns: [
      group,
      { name: 'sessions', head: 'sessions' },
      { name: 'closed', head: 'of these closed' },
      { name: 'readings', head: 'readings' },
      { name: 'first_opened', head: 'first opened (UTC)' },
      { name: 'last_opened', head: 'last opened (UTC)' },
    ],
    sql: `SELECT procedure, count(*)::INTEGER AS sessions, count(closed_at)::INTEGER AS closed,
            coalesce(sum(captured), 0)::INTEGER AS readings, min(opened_at) AS first_opened, max(opened_at) AS last_opened
          FROM sessions LEFT JOIN (SELECT session, count(*) AS captured FROM readings GROUP BY session) USING (session)
          GROUP BY procedure ORDER BY procedure`,
  },
  {
    id: 'first-time-right',
    title: 'First time right, and questions asked',
    about:
      'First time right: the first reading of a fastener in a pass was inside its window, was confirmed, and stands. Questions are those beyond the usual read-back: words that were unclear before the reading, a doubt about it, a silence after it. A value outside its window and a misheard one both count against it.',
    columns: [
      group,
      step,
      pass,
      { name: 'called', head: 'fasteners read' },
      { name: 'right_percent', head: 'first time right, %', digits: 1 },
      { name: 'readings', head: 'readings' },
      { name: 'questions', head: 'questions per reading', digits: 3 },
    ],
    sql: `SELECT procedure, step, pass, count(*) FILTER (attempt = 1)::INTEGER AS called,
            100.0 * count(*) FILTER (attempt = 1 AND stands AND verdict = 'in') / count(*) FILTER (attempt = 1)
              AS right_percent,
            count(*)::INTEGER AS readings, sum(questions)::DOUBLE / count(*) AS questions
          FROM readings JOIN sessions USING (session) WHERE readings.kind = 'torque'
          GROUP BY ALL ORDER BY procedure, step, pass`,
  },
  {
    id: 'spread',
    title: 'Spread of the values, relative to what was called out',
    about: `${FIRST_VALUES_ABOUT} Deviation: (value − setting) / setting, in per cent. s is the standard deviation of a sample. A mechanic stops pulling at the setting, so this shows how close the work came, not what the joint got.`,
    columns: [
      group,
      step,
      pass,
      { name: 'fastener', head: 'fastener' },
      n,
      { name: 'mean', head: 'mean, %', digits: 2 },
      { name: 's', head: 's, %', digits: 2 },
      { name: 'p05', head: '5th percentile, %', digits: 2 },
      { name: 'p95', head: '95th percentile, %', digits: 2 },
    ],
    sql: `SELECT procedure, step, pass, fastener, ${spreadOf('deviation_percent')} FROM ${FIRST_VALUES}
          GROUP BY ALL ORDER BY procedure, step, pass, fastener`,
  },
  {
    id: 'tools',
    title: 'Trend of each tool',
    about: `${FIRST_VALUES_ABOUT} One point for each session: its mean deviation, against the day; a straight line of least squares through them. “drifts” is said with ${DRIFT.sessions} sessions or more, a slope of more than ${DRIFT.errors} of its standard errors, and a change of ${DRIFT.percent} % or more over the days seen. What it cannot tell: a mechanic pulls until the scale shows the setting, so a tool that shows too much or too little leaves no trace here, and only its calibration finds it. A trend may as well come from people, parts or weather. A tool is a name in a procedure: several of that name are taken for one.`,
    columns: [
      group,
      { name: 'tool', head: 'tool' },
      { name: 'points', head: 'sessions' },
      n,
      { name: 'days', head: 'days seen', digits: 0 },
      { name: 'mean', head: 'mean, %', digits: 2 },
      { name: 'slope_30', head: 'slope, % in 30 days', digits: 3 },
      { name: 'error_30', head: 'its standard error', digits: 3 },
      { name: 'change', head: 'change over the days, %', digits: 2 },
      { name: 'drifts', head: 'drifts' },
    ],
    sql: `WITH means AS (
            SELECT procedure, tool, session, min(captured_at) AS began, avg(deviation_percent) AS mean, count(*) AS n
            FROM ${FIRST_VALUES} GROUP BY ALL),
          dated AS (
            SELECT *, (epoch_ms(began) - min(epoch_ms(began)) OVER (PARTITION BY procedure, tool)) / 86400000.0 AS day FROM means),
          lines AS (
            SELECT procedure, tool, sum(n)::INTEGER AS n, max(day) AS days, sum(mean * n) / sum(n) AS mean,
              ${lineThrough('mean', 'day')}
            FROM dated GROUP BY procedure, tool)
          SELECT procedure, tool, points, n, days, mean, slope, intercept, slope * 30 AS slope_30,
            slope_error * 30 AS error_30, slope * days AS change,
            coalesce(points >= ${DRIFT.sessions} AND abs(slope) > ${DRIFT.errors} * slope_error
              AND abs(slope * days) >= ${DRIFT.percent}, FALSE) AS drifts
          FROM lines ORDER BY procedure, tool`,
  },
  {
    id: 'tool-weeks',
    title: 'Mean deviation of each tool by the week',
    about: 'The same values, in weeks from the first session of each tool: the points of the plot.',
    columns: [
      group,
      { name: 'tool', head: 'tool' },
      { name: 'week', head: 'week' },
      n,
      { name: 'mean', head: 'mean, %', digits: 2 },
    ],
    sql: `WITH dated AS (
            SELECT procedure, tool, deviation_percent, floor((epoch_ms(captured_at)
              - min(epoch_ms(captured_at)) OVER (PARTITION BY procedure, tool)) / 604800000.0)::INTEGER + 1 AS week
            FROM ${FIRST_VALUES})
          SELECT procedure, tool, week, count(*)::INTEGER AS n, avg(deviation_percent) AS mean
          FROM dated GROUP BY ALL ORDER BY procedure, tool, week`,
  },
  {
    id: 'holds',
    title: 'Weights held',
    about:
      'From the word “held” to the words “set down”, by the wall clock. Records from before these were said are not in it.',
    columns: [
      group,
      step,
      n,
      { name: 'p05', head: '5th percentile, s', digits: 0 },
      { name: 'median', head: 'median, s', digits: 0 },
      { name: 'p95', head: '95th percentile, s', digits: 0 },
      { name: 'longest', head: 'longest, s', digits: 0 },
    ],
    sql: `SELECT procedure, step, ${timesOf('seconds')} FROM holds JOIN sessions USING (session)
          WHERE seconds IS NOT NULL
          GROUP BY ALL ORDER BY procedure, step`,
  },
  {
    id: 'stops',
    title: 'Stand-bys, handovers and breaks',
    about:
      'A break is a time in which nothing was done for so long that it was asked about. Stops that were not over when the record ended are not in it.',
    columns: [
      { name: 'kind', head: 'kind' },
      { name: 'sessions', head: 'sessions' },
      n,
      { name: 'p05', head: '5th percentile, s', digits: 0 },
      { name: 'median', head: 'median, s', digits: 0 },
      { name: 'p95', head: '95th percentile, s', digits: 0 },
      { name: 'longest', head: 'longest, s', digits: 0 },
    ],
    sql: `SELECT kind, count(DISTINCT session)::INTEGER AS sessions, ${timesOf('seconds')} FROM stops
          WHERE seconds IS NOT NULL GROUP BY kind ORDER BY kind`,
  },
  {
    id: 'doubts',
    title: 'Doubts about readings',
    about: 'A reading may be doubted for several reasons.',
    columns: [
      { name: 'doubt', head: 'doubt' },
      { name: 'n', head: 'readings' },
      { name: 'percent', head: 'of all readings, %', digits: 2 },
    ],
    sql: `SELECT doubt, count(*)::INTEGER AS n, 100.0 * count(*) / (SELECT count(*) FROM readings) AS percent
          FROM doubts GROUP BY doubt ORDER BY n DESC, doubt`,
  },
  {
    id: 'deviations',
    title: 'Deviations',
    about: 'Those that were not disregarded.',
    columns: [
      group,
      { name: 'what', head: 'what' },
      n,
      { name: 'sessions', head: 'sessions' },
      { name: 'left_open', head: 'fasteners left open' },
    ],
    sql: `SELECT procedure, what, count(*)::INTEGER AS n, count(DISTINCT session)::INTEGER AS sessions,
            count(*) FILTER (left_open)::INTEGER AS left_open
          FROM deviations JOIN sessions USING (session) WHERE status <> 'disregarded'
          GROUP BY ALL ORDER BY procedure, what`,
  },
];

function timesOf(x: string): string {
  return `count(${x})::INTEGER AS n, quantile_cont(${x}, 0.05) AS p05, median(${x}) AS median,
    quantile_cont(${x}, 0.95) AS p95, max(${x}) AS longest`;
}

/** All figures, asked one after another. */
export async function askAll(database: FleetDatabase): Promise<readonly Answered[]> {
  const answered: Answered[] = [];
  for (const figure of FIGURES) answered.push({ ...figure, rows: await database.ask(figure.sql) });
  return answered;
}
