/** The figures as one page that needs nothing but itself: each with its plots, and the table of what is in them. */
import type { Answer } from './database.ts';
import type { Answered } from './figures.ts';
import { barPlot, dotPlot, escaped } from './plot.ts';
import { cellText } from './text.ts';

/** The text of the page. */
export function pageOf(figures: readonly Answered[]): string {
  const sections = figures.map((figure) => sectionOf(figure, plotsOf(figure, figures)));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Sessions of Bothhands</title>
<style>${STYLE}</style>
</head>
<body>
<h1>Sessions of Bothhands</h1>
<p>Only sealed files that were intact are in these figures. They say what was recorded; the approved manual, local rules and licensed people decide. No figure is of one person, and none should be made from them.</p>
${sections.join('\n')}
</body>
</html>
`;
}

const STYLE = `
:root { color-scheme: light dark; --ink: #1a1f1e; --paper: #fff; --faint: #c9d1cf; --mark: #0b5f8a; --soft: #8fb8cd; --trend: #a03a12; }
@media (prefers-color-scheme: dark) { :root { --ink: #eef2f1; --paper: #16211f; --faint: #3c4b48; --mark: #7cc7ee; --soft: #3f7591; --trend: #f2a27d; } }
body { font: 1rem/1.5 system-ui, sans-serif; color: var(--ink); background: var(--paper); max-width: 60rem; margin: 0 auto; padding: 1rem; }
figure { margin: 1rem 0; }
svg { width: 100%; height: auto; font-size: 13px; }
svg text { fill: var(--ink); }
.grid { stroke: var(--faint); }
.axis { stroke: var(--ink); }
.span { stroke: var(--soft); stroke-width: 6; stroke-linecap: round; }
.trend { stroke: var(--trend); stroke-width: 2; stroke-dasharray: 6 4; }
.dot { fill: var(--mark); }
.bar { fill: var(--soft); }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
th, td { padding: 0.2rem 0.7rem; border-bottom: 1px solid var(--faint); text-align: left; vertical-align: top; }
td.number, th.number { text-align: right; }
`;

function sectionOf({ id, title, about, columns, rows }: Answered, plots: readonly string[]): string {
  const isNumber = columns.map(({ name }) => rows.some((row) => typeof row[name] === 'number'));
  const row = (tag: 'td' | 'th', cells: readonly string[]): string =>
    `<tr>${cells.map((cell, i) => `<${tag}${isNumber[i] ? ' class="number"' : ''}${tag === 'th' ? ' scope="col"' : ''}>${escaped(cell)}</${tag}>`).join('')}</tr>`;
  const head = row(
    'th',
    columns.map((column) => column.head),
  );
  const body = rows.map((each) =>
    row(
      'td',
      columns.map((column) => cellText(each[column.name], column)),
    ),
  );
  return `<section aria-labelledby="${id}">
<h2 id="${id}">${escaped(title)}</h2>
<p>${escaped(about)}</p>
${plots.join('\n')}
${rows.length === 0 ? '<p>None.</p>' : `<div class="wide" tabindex="0" role="region" aria-labelledby="${id}"><table>\n<thead>${head}</thead>\n<tbody>\n${body.join('\n')}\n</tbody>\n</table></div>`}
</section>`;
}

/** The plots of a figure. What they show is in the table below them as well. */
function plotsOf(figure: Answered, all: readonly Answered[]): readonly string[] {
  switch (figure.id) {
    case 'first-time-right':
      return figure.rows.length === 0 ? [] : [firstTimeRight(figure.rows)];
    case 'spread':
      return groupsOf(figure.rows, ['procedure', 'step', 'pass']).map(spread);
    case 'tool-weeks': {
      const trends = all.find(({ id }) => id === 'tools')?.rows ?? [];
      return groupsOf(figure.rows, ['procedure', 'tool']).map((weeks) => toolWeeks(weeks, trends));
    }
    default:
      return [];
  }
}

type Group = Answer;

/** Rows that agree in some columns, in their order. */
function groupsOf(rows: Answer, by: readonly string[]): readonly Group[] {
  const groups = new Map<string, Answer[number][]>();
  for (const row of rows) {
    const key = JSON.stringify(by.map((name) => row[name]));
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

const figureOf = (caption: string, plot: string): string =>
  `<figure>\n<figcaption>${escaped(caption)}</figcaption>\n${plot}\n</figure>`;

const passText = (row: Answer[number] | undefined): string =>
  `${cellText(row?.procedure)}, ${cellText(row?.step)}, pass ${cellText(row?.pass)}`;

function firstTimeRight(rows: Answer): string {
  const caption = 'First time right, by step and pass';
  const bars = rows.map((row) => {
    const value = Number(row.right_percent);
    return { label: passText(row), value, text: `${cellText(value, { digits: 1 })} %` };
  });
  const summary = `${caption}: ${bars.map(({ label, text }) => `${label}: ${text}`).join('; ')}`;
  return figureOf(caption, barPlot({ summary, xName: 'share of fasteners, %', most: 100, bars }));
}

function spread(rows: Group): string {
  const caption = `${passText(rows[0])}: mean, and 5th to 95th percentile`;
  const dots = rows.map(({ fastener, mean, p05, p95 }) => ({
    x: Number(fastener),
    y: Number(mean),
    low: Number(p05),
    high: Number(p95),
  }));
  const lowest = Math.min(...dots.map(({ low }) => low)).toFixed(2);
  const highest = Math.max(...dots.map(({ high }) => high)).toFixed(2);
  const summary = `${caption}. ${dots.length} fasteners; the percentiles lie from ${lowest} to ${highest} per cent.`;
  return figureOf(caption, dotPlot({ summary, xName: 'fastener', yName: 'deviation from the setting, %', dots }));
}

const DAYS = 7;

function toolWeeks(weeks: Group, trends: Answer): string {
  const [first] = weeks;
  const trend = trends.find(({ procedure, tool }) => procedure === first?.procedure && tool === first?.tool);
  const caption = `${cellText(first?.procedure)}, ${cellText(first?.tool)}: mean of each week, and the line through the sessions`;
  const dots = weeks.map(({ week, mean }) => ({ x: (Number(week) - 0.5) * DAYS, y: Number(mean) }));
  const at = (x: number | undefined): number => Number(trend?.intercept) + Number(trend?.slope) * (x ?? 0);
  const hasLine = typeof trend?.slope === 'number' && dots.length > 1;
  const slope = cellText(trend?.slope_30, { digits: 3 });
  const summary = `${caption}. ${dots.length} weeks; slope ${slope} per cent in 30 days${trend?.drifts === true ? '; it drifts' : ''}.`;
  return figureOf(
    caption,
    dotPlot({
      summary,
      xName: 'days since the first session',
      yName: 'mean deviation, %',
      dots,
      ...(hasLine ? { line: [at(dots[0]?.x), at(dots.at(-1)?.x)] as const } : {}),
    }),
  );
}
