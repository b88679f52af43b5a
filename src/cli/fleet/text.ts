/** Figures as plain text. */
import type { Cell } from './database.ts';
import type { Answered, FigureColumn } from './figures.ts';

/** A cell as a person reads it. */
export function cellText(cell: Cell | undefined, { digits }: Pick<FigureColumn, 'digits'> = {}): string {
  if (cell === null || cell === undefined) return '–';
  if (cell instanceof Date) return `${cell.toISOString().slice(0, 16).replace('T', ' ')}`;
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'string') return cell;
  const text = digits === undefined ? `${cell}` : cell.toFixed(digits);
  // What is rounded to nothing has no sign.
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}

/** A figure as lines: what it is, then its table. */
export function figureText({ title, about, columns, rows }: Answered): readonly string[] {
  const table = [
    columns.map(({ head }) => head),
    ...rows.map((row) => columns.map((column) => cellText(row[column.name], column))),
  ];
  const widths = columns.map((_, i) => Math.max(...table.map((cells) => cells[i]?.length ?? 0)));
  const isNumber = columns.map(({ name }) => rows.some((row) => typeof row[name] === 'number'));
  const lines = table.map((cells) =>
    cells
      .map((cell, i) => (isNumber[i] ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
  return [title, ...wrapped(about, 100).map((line) => `  ${line}`), ...(rows.length > 0 ? lines : ['  none'])];
}

/** Words in lines of some width. */
function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
