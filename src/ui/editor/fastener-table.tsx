import { createSignal, Show, untrack, type JSX } from 'solid-js';
import { type Path, put } from '../../procedure/edit/draft.ts';
import { fastenersFromCsv } from '../../procedure/import/fasteners-csv.ts';
import { messageOf } from '../message.ts';
import { FileButton } from '../parts/file-button.tsx';
import { useEditor } from './editor.ts';

/** Takes the places of a pattern out of a table, and says what came of it. */
export function FastenerTable(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const [outcome, setOutcome] = createSignal<{ readonly isRead: boolean; readonly lines: readonly string[] } | null>(
    null,
  );

  async function read(file: File): Promise<void> {
    let text: string;
    try {
      text = await file.text();
    } catch (error) {
      setOutcome({ isRead: false, lines: [`${file.name} cannot be read: ${messageOf(error)}`] });
      return;
    }
    const found = fastenersFromCsv(text);
    if (found.kind === 'faulty') {
      const lines = found.faults.map(
        ({ line, column, message }) => `Line ${line}${column === null ? '' : `, column ${column}`}: ${message}.`,
      );
      setOutcome({ isRead: false, lines: [`${file.name} is not taken over.`, ...lines] });
      return;
    }
    const { layout, thread, count, decimalCommas } = found;
    const path = untrack(() => props.path);
    editor.edit((draft) => {
      const laid = put(draft, [...path, 'layout'], layout);
      return thread === null ? laid : put(laid, [...path, 'thread'], thread);
    });
    const commas =
      decimalCommas > 0 ? [`${decimalCommas} decimal commas were read as points: look at the drawing.`] : [];
    setOutcome({ isRead: true, lines: [`${count} fasteners were taken from ${file.name}.`, ...commas] });
  }

  return (
    <div class="table-import">
      <FileButton label="Take places from a table (CSV)" accept=".csv,.txt" onFile={(file) => void read(file)} />
      <p class="hint">Its header names number, x and y, and perhaps thread. X goes to the right, y down.</p>
      <Show when={outcome()}>
        {(found) => (
          <p role={found().isRead ? 'status' : 'alert'} classList={{ trouble: !found().isRead }} class="lines-of">
            {found().lines.join('\n')}
          </p>
        )}
      </Show>
    </div>
  );
}
