/** The scores of a manifest, as text. */
import { intentInWords, intentLine } from './intent.ts';
import type { Judge } from './judge.ts';
import { confusionsIn, falseAcceptsIn, isInPhrases, scoreOf, type Score, type Trial } from './score.ts';

/** Tables by kind of recording and of all, confusions, and false accepts one by one. */
export function reportOf(trials: readonly Trial[], judge: Judge): readonly string[] {
  const kinds = [...new Set(trials.flatMap(({ kind }) => kind ?? []))];
  const within = trials.filter((trial) => isInPhrases(trial, judge));
  const outside = trials.filter((trial) => !isInPhrases(trial, judge));
  const groups = [
    ...kinds.map((kind) => [kind, trials.filter((trial) => trial.kind === kind)] as const),
    ['all', trials] as const,
    [WITHIN, within] as const,
  ];
  const accepts = trials.flatMap((trial) => falseAcceptsIn(trial, judge));
  return [
    ...table([HEADER, ...groups.map(([name, some]) => row(name, scoreOf(some, judge)))]),
    '',
    ...confusions(`Confused ${WITHIN} (said → heard, how often):`, within),
    ...confusions('Confused where other words were said, which can only be refused:', outside),
    '',
    accepts.length === 0 ? 'Nothing was accepted that was not said.' : 'Accepted though it was not said:',
    ...accepts.map(
      ({ file, said, heard, meaning }) =>
        `  ${file}: said: ${said || '(nothing for us)'}; heard: ${heard}; taken as: ${intentInWords(intentLine(meaning, judge.situation))}`,
    ),
  ];
}

/** The recordings that can be heard right at all. */
const WITHIN = 'in words of the phrases';

function confusions(title: string, trials: readonly Trial[]): readonly string[] {
  const found = confusionsIn(trials);
  const lines = found.map(({ pair, count }) => `  ${pair.said ?? NOTHING} → ${pair.heard ?? NOTHING}  ${count}`);
  return found.length === 0 ? [] : [title, ...lines];
}

const NOTHING = '(nothing)';

const HEADER = [
  ...['', 'recordings', 'words right', 'changed', 'lost', 'added', 'sentences right', 'readings right', 'wrong'],
  ...['asked', 'missed', 'false accepts: other', 'of nothing', 'decided after, ms: median', '95 %'],
];

function row(name: string, score: Score): readonly string[] {
  const { words, sentences, readings, falseAccepts, decisionMs } = score;
  return [
    name,
    `${score.recordings}`,
    part(words.said - words.changed - words.lost, words.said),
    `${words.changed}`,
    `${words.lost}`,
    `${words.added}`,
    part(sentences.right, sentences.said),
    part(readings.right, readings.said),
    `${readings.wrong}`,
    `${readings.asked}`,
    `${readings.missed}`,
    `${falseAccepts.ofOther} of ${falseAccepts.amongMeant}`,
    `${falseAccepts.ofNothing} of ${falseAccepts.amongNothing}`,
    quantile(decisionMs, 0.5),
    quantile(decisionMs, 0.95),
  ];
}

const part = (right: number, all: number): string =>
  all === 0 ? '–' : `${((100 * right) / all).toFixed(1)} % (${right}/${all})`;

/** The smallest value that at least this part of all does not exceed. */
function quantile(values: readonly number[], of: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return `${sorted[Math.max(0, Math.ceil(of * sorted.length) - 1)] ?? '–'}`;
}

/** Columns side by side, the first to the left and the others to the right. */
function table(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = HEADER.map((_, column) => Math.max(...rows.map((cells) => cells[column]?.length ?? 0)));
  return rows.map((cells) =>
    cells
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
