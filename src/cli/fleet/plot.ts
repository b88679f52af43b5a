/** Plots as SVG text, drawn without a library: they need no network, and take their colours from the page around them. */

export interface Dot {
  readonly x: number;
  readonly y: number;
  /** Ends of a bar through the dot. */
  readonly low?: number;
  readonly high?: number;
}

export interface DotPlot {
  /** What is read out in the place of the plot. */
  readonly summary: string;
  /** Names of the axes, with their units. */
  readonly xName: string;
  readonly yName: string;
  readonly dots: readonly Dot[];
  /** A straight line through the dots: y at the least x and at the greatest. */
  readonly line?: readonly [from: number, to: number];
}

export interface BarPlot {
  readonly summary: string;
  readonly xName: string;
  /** The greatest value that there can be. */
  readonly most: number;
  readonly bars: readonly { readonly label: string; readonly value: number; readonly text: string }[];
}

const [WIDTH, HEIGHT] = [720, 300];
const MARGIN = { left: 70, right: 16, top: 12, bottom: 48 } as const;
const INNER = { width: WIDTH - MARGIN.left - MARGIN.right, height: HEIGHT - MARGIN.top - MARGIN.bottom } as const;

/** Text in HTML and SVG. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`).replace(/\p{Cc}/gu, '\uFFFD');

/** Round numbers from below the least to above the greatest: steps of 1, 2 or 5 times a power of ten. */
export function ticksBetween(least: number, greatest: number, about = 6): readonly number[] {
  const span = greatest - least || Math.abs(least) || 1;
  const power = 10 ** Math.floor(Math.log10(span / about));
  const step = power * ([1, 2, 5].find((each) => each * power * about >= span) ?? 10);
  const [first, last] = [Math.floor(least / step), Math.ceil(greatest / step)];
  return Array.from({ length: Math.max(2, last - first + 1) }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A dot for each value, with a bar from its low to its high, and perhaps a line through all. Zero is always in it. */
export function dotPlot({ summary, xName, yName, dots, line }: DotPlot): string {
  const heights = [0, ...(line ?? []), ...dots.flatMap(({ y, low = y, high = y }) => [y, low, high])];
  const yTicks = ticksBetween(Math.min(...heights), Math.max(...heights));
  const xs = dots.map(({ x }) => x);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const room = (to - from || 1) * 0.04;
  const toX = scale(from - room, to + room, MARGIN.left, MARGIN.left + INNER.width);
  const toY = scale(yTicks[0] ?? 0, yTicks.at(-1) ?? 1, MARGIN.top + INNER.height, MARGIN.top);
  const xTicks = ticksBetween(from, to, 10).filter((tick) => Number.isInteger(tick) && tick >= from && tick <= to);
  const bottom = MARGIN.top + INNER.height;
  return svg(HEIGHT, summary, [
    ...yTicks.flatMap((tick) => [
      `<line class="${tick === 0 ? 'axis' : 'grid'}" x1="${MARGIN.left}" x2="${WIDTH - MARGIN.right}" y1="${toY(tick)}" y2="${toY(tick)}"/>`,
      text(MARGIN.left - 8, Number(toY(tick)) + 4, `${tick}`.replace('-', '−'), 'end'),
    ]),
    ...xTicks.map((tick) => text(Number(toX(tick)), bottom + 18, `${tick}`, 'middle')),
    text(MARGIN.left + INNER.width / 2, HEIGHT - 8, xName, 'middle'),
    `<text transform="translate(16 ${MARGIN.top + INNER.height / 2}) rotate(-90)" text-anchor="middle">${escaped(yName)}</text>`,
    ...dots.flatMap(({ x, low, high }) =>
      low === undefined || high === undefined
        ? []
        : [`<line class="span" x1="${toX(x)}" x2="${toX(x)}" y1="${toY(low)}" y2="${toY(high)}"/>`],
    ),
    ...(line
      ? [`<line class="trend" x1="${toX(from)}" y1="${toY(line[0])}" x2="${toX(to)}" y2="${toY(line[1])}"/>`]
      : []),
    ...dots.map(({ x, y }) => `<circle class="dot" cx="${toX(x)}" cy="${toY(y)}" r="4"/>`),
  ]);
}

const ROW = 26;
const LABELS = 300;

/** A lying bar for each value, from zero, with its label before and its value behind it. */
export function barPlot({ summary, xName, most, bars }: BarPlot): string {
  const toX = scale(0, most, LABELS, WIDTH - 90);
  const bottom = bars.length * ROW + 8;
  return svg(bottom + 30, summary, [
    ...bars.flatMap(({ label, value, text: shown }, i) => [
      text(LABELS - 8, i * ROW + 21, shortened(label), 'end'),
      `<rect class="bar" x="${LABELS}" y="${i * ROW + 6}" width="${(Number(toX(value)) - LABELS).toFixed(1)}" height="${ROW - 8}"/>`,
      text(Number(toX(value)) + 6, i * ROW + 21, shown, 'start'),
    ]),
    `<line class="axis" x1="${LABELS}" x2="${LABELS}" y1="2" y2="${bottom}"/>`,
    text(LABELS, bottom + 20, xName, 'start'),
  ]);
}

/** From a stretch of numbers to a stretch of the picture, as the text of a coordinate. */
const scale =
  (least: number, greatest: number, from: number, to: number) =>
  (value: number): string =>
    (from + ((value - least) / (greatest - least || 1)) * (to - from)).toFixed(1);

const text = (x: number, y: number, content: string, anchor: 'start' | 'middle' | 'end'): string =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}">${escaped(content)}</text>`;

const LONGEST_LABEL = 44;
const shortened = (label: string): string =>
  label.length > LONGEST_LABEL ? `${label.slice(0, LONGEST_LABEL - 1)}…` : label;

const svg = (height: number, summary: string, content: readonly string[]): string =>
  `<svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${escaped(summary)}">\n${content.join('\n')}\n</svg>`;
